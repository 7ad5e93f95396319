import { inPlan } from './in-plan.ts';
import type { ProblemWordings } from './problem-wording.ts';

/** What the checker finds in a plan. */
export const CHECKER_PROBLEMS = {
  E8001: {
    what: inPlan('is not of the format {expected}'),
    remedy: 'Make the plan again with this version of the program.',
  },
  E8002: { what: inPlan('is missing'), remedy: 'Make the plan again; do not edit plan.json by hand.' },
  E8003: {
    what: inPlan('has {value} rows where {expected} are due'),
    remedy: 'Make the plan again; do not edit plan.json by hand.',
  },
  E8004: {
    what: inPlan('holds {value} where {expected} is due'),
    remedy: 'Make the plan again; do not edit plan.json by hand.',
  },
  E8005: {
    what: inPlan('points to {value}, outside its list of {expected}'),
    remedy: 'Make the plan again; do not edit plan.json by hand.',
  },
  E8011: {
    what: inPlan('was made from files with the hash {value}; these files have {expected}'),
    remedy: 'Plan these files again, or check against the files that were planned.',
  },
  E8012: {
    what: inPlan('was made under decisions with the hash {value}; these have {expected}'),
    remedy: 'Plan again with these decisions.',
  },
  E8013: { what: inPlan('does not list the ids of the scenario in their order'), remedy: 'Plan these files again.' },
  E8014: { what: inPlan('says {value}; the scenario says {expected}'), remedy: 'Plan these files again.' },
  E8101: {
    what: inPlan('says {value} ha; the polygon measures {expected} ha'),
    remedy: 'Plan again; report the polygon if the difference stays.',
  },
  E8102: {
    what: inPlan('sums to {value} for this community, not to 1'),
    remedy: "Plan again; report the community's polygon if the difference stays.",
  },
  E8103: {
    what: inPlan('says {value}; sampling the polygons gives {expected}'),
    remedy: 'Plan again; report the two polygons if the difference stays.',
  },
  E8104: {
    what: inPlan('lies {value}; it should lie {expected}'),
    remedy: 'Plan again with the hand-over points as given.',
  },
  E8105: {
    what: inPlan('sends the community to place {value}; the files say {expected}'),
    remedy: 'Plan again with the hand-over points as given.',
  },
  E8106: {
    what: inPlan('says that the place is out of reach; a way of {expected} km there and back exists'),
    remedy: 'Plan again; report the place if it stays.',
  },
  E8201: {
    what: inPlan('says {value}; the scenario gives {expected}'),
    remedy: 'Plan again; the season follows from scenario.json and weather.csv.',
  },
  E8202: {
    what: inPlan('counts {value}; the weather record gives {expected}'),
    remedy: 'Plan again with the same weather file.',
  },
  E8203: {
    what: inPlan('says {value}; the rain record gives {expected}'),
    remedy: 'Plan again with the same weather file.',
  },
  E8204: {
    what: inPlan('says {value}; the seasons give {expected}'),
    remedy: 'Plan again with the same weather file.',
  },
  E8205: {
    what: inPlan('says {value}; the onset and the offsets give {expected}'),
    remedy: 'Plan again with the same weather and crop windows.',
  },
  E8206: { what: inPlan('says {value}; the rain gives {expected}'), remedy: 'Plan again with the same weather file.' },
  E8207: {
    what: inPlan('says {value}; the calendar says {expected}'),
    remedy: 'Plan again with the workdays and holidays of scenario.json.',
  },
  E8208: {
    what: inPlan('says {value} °C; the weather file gives {expected} °C'),
    remedy: 'Plan again with the same weather file.',
  },
  E8301: {
    what: inPlan("says {value} ha; the community's file and its zone share give {expected} ha"),
    remedy: 'Plan again; planned land is used as given.',
  },
  E8302: { what: inPlan('has {value} rows for one zone, community and crop, not {expected}'), remedy: 'Plan again.' },
  E8303: { what: inPlan('says {value} kg; hectares and seed rate give {expected} kg'), remedy: 'Plan again.' },
  E8304: {
    what: inPlan("says {value} kg; the community's file gives {expected} kg"),
    remedy: 'Plan again; farmer-saved seed counts as given.',
  },
  E8305: { what: inPlan("says {value} g; seed and the pack's own dose give {expected} g"), remedy: 'Plan again.' },
  E8306: { what: inPlan('says {value} packs; the need and the pack give {expected}'), remedy: 'Plan again.' },
  E8307: { what: inPlan('says {value}; seed, land and the label give {expected}'), remedy: 'Plan again.' },
  E8401: {
    what: inPlan('gives {value} packs; the lot has {expected} to give'),
    remedy: 'Plan again; nobody can hand over packs that are not there.',
  },
  E8402: {
    what: inPlan('gives packs of a lot that is held back: {value}'),
    remedy: 'Do not hand these packs over. Plan again.',
  },
  E8403: {
    what: inPlan('gives {value} for {expected}'),
    remedy: 'Do not hand these packs over: match the legume on the label. Plan again.',
  },
  E8404: {
    what: inPlan('keeps {value} packs back; the policy asks for {expected}'),
    remedy: 'Plan again, or lower reservePercent in scenario.json.',
  },
  E8405: {
    what: inPlan("says {value}; the lot's own data say {expected}"),
    remedy: 'Plan again with the same lots file.',
  },
  E8406: { what: inPlan('says {value} kg; the packs weigh {expected} kg'), remedy: 'Plan again.' },
  E8407: {
    what: inPlan('says {value} kg of seed; the packs serve {expected} kg'),
    remedy: 'Plan again; the dose on the label holds.',
  },
  E8408: { what: inPlan('says {value}; the packs given make {expected}'), remedy: 'Plan again.' },
  E8409: {
    what: inPlan('gives {value} kg; the need rounded up to a pack is {expected} kg'),
    remedy: 'Plan again; the surplus belongs to others.',
  },
  E8410: { what: inPlan('says {value}; the decision asks for {expected}'), remedy: 'Plan again with these decisions.' },
  E8411: {
    what: inPlan('leaves the community {value} kg short while lot {expected} could serve it'),
    remedy: 'Plan again; stock that could serve someone has to be given.',
  },
  E8412: {
    what: inPlan('says {value} kg; the shares leave {expected} kg short'),
    remedy: 'Plan again; every shortfall is shown with its reason.',
  },
  E8413: { what: inPlan('says {value}; {expected}'), remedy: 'Plan again.' },
  E8414: { what: inPlan('an order of {value} is dated wrongly or comes too late: {expected}'), remedy: 'Plan again.' },
  E8415: { what: inPlan('orders {value}; price, multiple and budget give {expected}'), remedy: 'Plan again.' },
  E8416: { what: inPlan('puts {value} L into a cool store that has room for {expected} L'), remedy: 'Plan again.' },
  E8417: { what: inPlan('orders {value}; short is {expected}'), remedy: 'Plan again.' },
  E8418: {
    what: inPlan('sends {value}, fertiliser, where nothing it could ride with goes: {expected}'),
    remedy: 'Plan again.',
  },
  E8421: { what: inPlan('sends {value} packs of a grant of {expected}'), remedy: 'Plan again.' },
  E8422: { what: inPlan('says {value}; its packs give {expected}'), remedy: 'Plan again.' },
  E8423: { what: inPlan('loads {value} packs of {expected}'), remedy: 'Plan again.' },
  E8424: {
    what: inPlan('is handled {value} times, not {expected}'),
    remedy: 'Plan again; what is allocated is delivered or shown as unserved.',
  },
  E8425: {
    what: inPlan('hands the load over at place {value}; it belongs to place {expected}'),
    remedy: 'Plan again.',
  },
  E8426: { what: inPlan('says {value}; its packs give {expected}'), remedy: 'Plan again.' },
  E8501: { what: inPlan('says {value}; stock and need give {expected}'), remedy: 'Plan again.' },
  E8502: { what: inPlan('fails at {value}: {expected} is due'), remedy: 'Plan again.' },
  E8503: { what: inPlan('says {value}; the prices give {expected}'), remedy: 'Plan again.' },
  E8504: {
    what: inPlan('gets {value} of its need; the fair share leaves nobody below {expected}'),
    remedy: 'Plan again, or record a decision that says why.',
  },
  E8601: { what: inPlan('sends vehicle {value}; the goods lie at depot {expected}'), remedy: 'Plan again.' },
  E8602: {
    what: inPlan('drives on {value}; the vehicle is away'),
    remedy: "Plan again, or change the vehicle's dates.",
  },
  E8603: {
    what: inPlan('drives on {value}, which is no workday'),
    remedy: 'Plan again, or change workdays and holidays.',
  },
  E8604: {
    what: inPlan('carries {value} kg; the vehicle carries {expected} kg'),
    remedy: 'Do not load it so. Plan again.',
  },
  E8605: { what: inPlan('takes {value} L; the box holds {expected} L'), remedy: 'Do not load it so. Plan again.' },
  E8606: { what: inPlan('draws {value} kg of ice; there are {expected} kg'), remedy: 'Plan again.' },
  E8607: { what: inPlan('says {value}; its stops give {expected}'), remedy: 'Plan again.' },
  E8608: { what: inPlan('starts at minute {value}; the vehicle is ready at {expected}'), remedy: 'Plan again.' },
  E8609: { what: inPlan('says {value}; the decision asks for {expected}'), remedy: 'Plan again with these decisions.' },
  E8701: {
    what: inPlan('leaves at minute {value}; it may leave at {expected}'),
    remedy: 'Plan again; shift, depot hours, loading, daylight and road hours bind.',
  },
  E8702: {
    what: inPlan('returns at minute {value}; it must be back by {expected}'),
    remedy: 'Plan again; shift, depot hours, daylight and road hours bind.',
  },
  E8703: { what: inPlan('starts or ends at minute {value}; the place is open {expected}'), remedy: 'Plan again.' },
  E8704: { what: inPlan('stops on {value}, when the community or its zone is closed'), remedy: 'Plan again.' },
  E8705: {
    what: inPlan('stops on weekday {value}; market day is {expected}'),
    remedy: 'Plan again, or set marketDays to prefer.',
  },
  E8706: { what: inPlan('hands inoculant over on {value}; the seed comes on {expected}'), remedy: 'Plan again.' },
  E8707: { what: inPlan('hands over on {value}; the goods serve {expected}'), remedy: 'Plan again.' },
  E8709: {
    what: inPlan('says it may leave as late as minute {value}; {expected} would break then'),
    remedy: 'Plan again.',
  },
  E8710: {
    what: inPlan('hands over on {value}; the fertiliser or the seed that go with it: {expected}'),
    remedy: 'Plan again.',
  },
  E8711: { what: inPlan('drives {value} minutes without a rest; {expected} are allowed'), remedy: 'Plan again.' },
  E8708: { what: inPlan('says minute {value}; the times before it give {expected}'), remedy: 'Plan again.' },
  E8801: { what: inPlan('breaks or ends {value} km away from where it should be'), remedy: 'Plan again.' },
  E8802: { what: inPlan('drives road {value} against its direction'), remedy: 'Plan again.' },
  E8803: { what: inPlan('drives road {value}, closed that day'), remedy: 'Plan again.' },
  E8804: { what: inPlan('drives a road of class {value}; the vehicle may use {expected}'), remedy: 'Plan again.' },
  E8805: { what: inPlan('says {value} km; the path measures {expected} km'), remedy: 'Plan again.' },
  E8806: { what: inPlan('says {value} minutes; the roads allow it in {expected}'), remedy: 'Plan again.' },
  E8807: { what: inPlan('lies {value} km from its path; at most {expected} km is allowed'), remedy: 'Plan again.' },
  E8808: { what: inPlan('uses a leg {value}; the trip needs {expected}'), remedy: 'Plan again.' },
  E8901: {
    what: inPlan('reaches {value} °C in the hot band; below {expected} °C is required'),
    remedy: 'Do not send the packs this way. Plan again, with ice, a better box or an earlier hour.',
  },
  E8902: {
    what: inPlan('says {value} °C; the box model gives {expected} °C'),
    remedy: 'Plan again; expect the higher figure.',
  },
  E8903: {
    what: inPlan('says {value} log10; the temperatures give {expected}'),
    remedy: 'Plan again; expect the larger loss.',
  },
  E8904: {
    what: inPlan('says {value} h; the temperatures give {expected} h'),
    remedy: 'Plan again, with ice, a better box or an earlier hour.',
  },
  E8905: { what: inPlan('is empty where inoculant rides'), remedy: 'Plan again.' },
  E8911: {
    what: inPlan('is left behind ({value}); an idle vehicle could take it: {expected}'),
    remedy: 'Plan again; try more iterations.',
  },
  E8912: { what: inPlan('says {value}; {expected}'), remedy: 'Plan again.' },
  E8951: { what: inPlan('says {value} ha; what is handed over gives at most {expected} ha'), remedy: 'Plan again.' },
  E8952: {
    what: inPlan('says {value} kg; hectares, yield and the published coefficients give {expected} kg'),
    remedy: 'Plan again.',
  },
  E8953: { what: inPlan('runs {value}; the three figures must rise'), remedy: 'Plan again.' },
  E8954: { what: inPlan('says {value}; the rows sum to {expected}'), remedy: 'Plan again.' },
  E8955: { what: inPlan('says {value}; prices and amounts give {expected}'), remedy: 'Plan again.' },
  E8956: { what: inPlan('says {value} log10 per seed; dose and losses give {expected}'), remedy: 'Plan again.' },
} as const satisfies ProblemWordings;
