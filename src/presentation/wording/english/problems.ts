import type { Problem, ProblemCode, UnreachableReason } from '../../../engine/index.ts';
import { inPlan } from './in-plan.ts';
import { UNREACHABLE_WORDING } from './reasons.ts';

/** What is said of a problem, and what to do about it. */
export interface ProblemWording {
  readonly what: (problem: Problem) => string;
  readonly remedy: string;
}

/** A code without words is a type error. */
export const PROBLEM_WORDING: Readonly<Record<ProblemCode, ProblemWording>> = {
  // 1-intake
  // 2-places
  E2001: { what: (p) => `The polygon of ${p.facts['kind']} ${p.facts['id']} crosses itself. It was repaired: ${p.facts['beforeHa']} ha as sent, ${p.facts['afterHa']} ha after.`, remedy: 'Look at the repaired outline on the map; correct the polygon where it is wrong.' },
  E2002: { what: (p) => `The polygon of ${p.facts['kind']} ${p.facts['id']} covers no ground. It is taken as a point.`, remedy: 'Draw the polygon, or give a point.' },
  E2003: { what: (p) => `${p.facts['outsidePercent']} percent of community ${p.facts['id']} lies outside all zones; that part belongs to no zone.`, remedy: 'Name the zone in zone_id, or correct the outline of the community or the zones.' },
  E2004: { what: (p) => `Community ${p.facts['id']} names zone ${p.value}, but only ${p.facts['sharePercent']} percent of it lies there. The zone named is used.`, remedy: 'Check zone_id and the outlines.' },
  E2005: { what: (p) => `Community ${p.facts['id']} is named by more than one hand-over point; ${p.value} is not used for it.`, remedy: 'Name each community at one hand-over point only.' },
  E2006: { what: (p) => `The road closure at latitude ${p.facts['lat']}, longitude ${p.facts['lon']} from ${p.facts['from']} to ${p.facts['to']} is not used: no road within 2 km, or a date that cannot be read.`, remedy: 'Place the closure on a road and give its dates as YYYY-MM-DD.' },
  E2007: { what: (p) => `Zones overlap in community ${p.facts['id']}: their parts add up to ${p.facts['percent']} percent of it. They are scaled to 100.`, remedy: 'Correct the outlines of the zones so that none covers another.' },
  E2008: { what: (p) => `The roads lie in ${p.facts['pieces']} pieces that do not join; the longest holds ${p.facts['longestKm']} of ${p.facts['totalKm']} km.`, remedy: 'Join road lines by a shared vertex where one can drive from one to the other.' },
  E2009: { what: (p) => `Depot ${p.facts['id']} (latitude ${p.facts['lat']}, longitude ${p.facts['lon']}) joins no road that its vehicles may use; the nearest road is ${p.facts['km']} km away. No vehicle leaves it.`, remedy: 'Check that latitude and longitude are not swapped; place the depot on land within 2 km of a road, or add its road.' },
  E2010: { what: (p) => `No vehicle reaches community ${p.facts['id']}: ${UNREACHABLE_WORDING[p.facts['reason'] as UnreachableReason]}.`, remedy: 'Give a hand-over point that can be reached, add the missing road, or use a vehicle that may use it.' },
  E2011: { what: () => 'No roads are given: no place can be reached.', remedy: 'Give roads.geojson.' },
  E2012: { what: (p) => `Community ${p.facts['id']} plans ${p.facts['plannedHa']} ha of legume on ${p.facts['areaHa']} ha of land. The plan is used as given.`, remedy: 'Check the planned hectares and the outline.' },
  // 3-season
  E3001: { what: () => 'No weather is given: the air is taken as 20 °C at its coolest and 34 °C at its hottest every day, roads as passable, and no onset of rains is expected.', remedy: 'Give daily weather of the nearest station, best of twenty years and more, or sowing windows by date.' },
  E3002: { what: (p) => `The nearest weather station, ${p.facts['station']}, is ${p.facts['km']} km from ${p.facts['zone'] || 'the communities outside all zones'}; beyond ${p.facts['limitKm']} km rain may differ.`, remedy: 'Add a nearer station, or read onset and roads there with care.' },
  E3003: { what: () => 'No past season is recorded on nine days in ten at every station used: no onset can be expected from the past.', remedy: 'Give more years of daily rain, or sowing windows by date.' },
  E3004: { what: (p) => `The season's chances rest on ${p.facts['seasons']} past seasons; ${p.facts['enough']} or more give steady ones.`, remedy: 'Give more years of daily rain; read the chances as rough.' },
  E3005: { what: () => 'No season is named: the onset of rains is looked for in the planning period itself.', remedy: 'Name the season with searchFrom and searchTo in scenario.json.' },
  E3006: { what: (p) => `In every one of the ${p.facts['seasons']} past seasons the rains had come by now; all of them count, though this season is already later.`, remedy: 'Expect a later onset than the chances say; follow the forecast.' },
  E3007: { what: (p) => `On ${p.facts['days']} station days neither record, forecast nor past years tell the air: 20 and 34 °C are taken.`, remedy: 'Give tmin_c and tmax_c for past years.' },
  E3008: { what: (p) => `No sowing day can be given for ${p.value} in ${p.facts['zones']} zones: no onset or end of season is known there.`, remedy: 'Give more years of daily rain, or a sowing window by date in crop-windows.csv.' },
  E3009: { what: (p) => `Station ${p.facts['station']} has no complete past season and is not used.`, remedy: 'Give its earlier years, or leave it out.' },
  E3010: { what: (p) => `On ${p.facts['days']} planning days neither forecast nor past seasons tell the rain: roads are taken as passable.`, remedy: 'Give rain of past years; ask the road keepers before leaving.' },
  // 4-needs
  E4001: {
    what: ({ facts }) =>
      `No inoculant names ${facts['crop']} on its label: ${facts['hectares']} planned hectares cannot be inoculated.${
        facts['similar'] ? ` ${facts['similar']} is for legumes of the same group of rhizobia.` : ''
      }`,
    remedy: 'Add an inoculant for this crop, or ask the maker or the regulator whether one at hand serves it.',
  },
  E4002: {
    what: ({ facts }) =>
      `Growers of ${facts['community']} hold ${facts['ownKg']} kg of ${facts['crop']} seed; their planned land takes ${facts['needKg']} kg.`,
    remedy: 'Check both figures. They are used as given, and no seed is planned for this crop there.',
  },
  E4003: {
    what: ({ facts }) =>
      `${facts['product']} puts ${facts['cells']} rhizobia on a seed of ${facts['crop']} by its label, fewer than ${facts['floor']}.`,
    remedy:
      'Check the count, the dose and the thousand-seed weight; ask for a richer product, or for consent to a higher dose.',
  },
  // 5-allocation
  // 6-delivery
  // 7-outcomes
  E7001: { what: () => 'No past season is recorded well enough to play the plan in: nothing is counted as in time, reached or fixed.', remedy: 'Send a weather file with at least one past season.' },
  E7002: { what: ({ facts }) => `No on-farm mean of the response of ${facts['crop']} to inoculation was found: no gain in grain or nitrogen is counted for its inoculant.`, remedy: 'Take the nitrogen owed to its inoculant as not known, or send trial results.' },
  E7003: { what: ({ facts }) => `${facts['communities']} communities are expected to sow ${facts['crop']} with fewer than ${facts['floor']} living rhizobia per seed.`, remedy: 'Deliver later or to a cooler store, give packs with a higher count, or agree on a higher dose in writing.' },
  E7004: { what: ({ facts }) => `For ${facts['communities']} communities nobody can say how many rhizobia are alive when ${facts['crop']} is sown: a count, a dose or a sowing day is not known.`, remedy: 'State count and dose of the product, or have the lot tested.' },
  // checker
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
};
