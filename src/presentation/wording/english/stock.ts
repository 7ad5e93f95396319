/**
 * Words of the stock view. Sentences take figures as text; the page hands in `{0}`, `{1}` where a figure is to open, so a
 * translation may put it anywhere.
 */
export const STOCK_WORDING = {
  // the answer
  seedForAll: 'Enough seed for all planned land.',
  seedFor: (share: string) => `Enough seed for ${share} of planned land.`,
  nothingPlanned: 'No land is planned.',
  nothingShort: 'Nothing runs out: all of it is inoculated too.',
  isShort: (what: string, amount: string) => `${what} is ${amount} short;`,
  isNotThere: (what: string, hectares: string) => `${what}: none in stock, ${hectares} wait for it.`,
  others: (what: string, hectares: string) => `${what}: ${hectares} get less than planned.`,
  seedShareTitle: 'Share of planned land with seed',
  shortTitle: (what: string) => `${what}, short by`,
  zoneShareTitle: (what: string) => `${what}, share of planned land`,

  // seed rates
  seedRates: 'Seed rate, kg/ha',
  atTheseRates: (need: string, share: string) =>
    `At these rates ${need} of seed is needed; stock and farmer-saved seed cover ${share}.`,

  // where
  allZones: (share: string) => `all zones get ${share}`,
  someZones: (count: string, isOne: boolean, share: string) => `${count} ${isOne ? 'zone gets' : 'zones get'} ${share}`,
  counts: ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
  between: (low: string, high: string) => `${low} to ${high} %`,
  percent: (value: string) => `${value} %`,

  // what runs out
  whatRunsOut: 'What runs out',
  shortBy: 'short by',
  land: 'land',
  why: 'why',
  worthMost: 'worth most',
  commodity: { seed: 'seed', inoculant: 'inoculant' },
  kinds: { seed: 'seed', inoculant: 'inoculant', sticker: 'sticker', fertiliser: 'fertiliser' },
  goods: (crop: string, commodity: string) => `${crop} ${commodity}`,
  withoutSeed: 'without seed',
  notInoculated: 'seed, not inoculated',
  packs: (count: string, isOne: boolean) => `${count} ${isOne ? 'pack' : 'packs'}`,
  bags: (count: string, isOne: boolean) => `${count} ${isOne ? 'bag' : 'bags'}`,
  ofSize: (bags: string, kilograms: string) => `${bags} of ${kilograms}`,
  bagNote: (size: string, kilograms: string) => `of ${size}; ${kilograms}`,
  uncoated: (kilograms: string) => `${kilograms} of seed not coated`,
  inCommunities: (count: string, isOne: boolean) => `${count} ${isOne ? 'community' : 'communities'}`,
  noRemedy: 'More stock would not help.',
  together: (hectares: string, planned: string) => `Together ${hectares} of ${planned} planned.`,
  hectaresTitle: (what: string) => `${what}, land that gets less than planned`,
  otherWays: {
    'not-reachable': 'Cut-off communities',
    'window-missed': 'Too late to sow',
    decision: 'Held back by decision',
    'no-seed-to-inoculate': 'No seed to inoculate',
    'handed-over-before': 'Handed over before',
    unserved: 'Goods left at depots',
  },
  lotKept: (lot: string, amount: string, reason: string) => `Lot ${lot} (${amount}): ${reason}.`,
  lotsKept: (count: string, amount: string, reason: string) => `${count} lots (${amount}): ${reason}.`,

  // what would help
  remedies: {
    'more-packs': (amount: string, date: string) => `Order ${amount}, there by ${date}`,
    'release-lot': (lot: string) => `Settle the hold on lot ${lot}`,
    'await-lot': (lot: string) => `Ask for the test result of lot ${lot}`,
    'replace-lot': (lot: string, amount: string, date: string) => `Replace lot ${lot}, ${amount}, by ${date}`,
    'lower-reserve': (amount: string) => `Give out the reserve, ${amount}`,
  },
  worthIfCleared: (hectares: string) => `${hectares} if it is cleared`,
  worthTitle: 'Land that this would serve',
  costTitle: 'What this costs',

  // the order list
  orderList: 'What to order',
  ordersTitle: 'What to order.',
  ordersHeads: {
    when: 'when',
    goods: 'goods, to',
    amount: 'amount',
    cost: 'cost',
    land: 'for',
    arrives: 'there, in time',
  },
  saveOrders: 'Save orders, CSV',
  orders: {
    goods: (amount: string, what: string, depot: string) => `${amount}, ${what}, to ${depot}`,
    of: (amount: string, product: string) => `${amount} (${product})`,
    byDate: (date: string) => `Order by ${date}`,
    overdue: (date: string) => `Order at once: the day to order by was ${date}`,
    noLeadTime: 'Ask the supplier for the lead time; without one it is taken to be there at once',
    arrives: (date: string, chance: string) => `there on ${date}, in time in ${chance} of seasons`,
    tooLate: (date: string, last: string) =>
      `Not bought: it would be there on ${date}, and nothing handed over after ${last} is of use`,
    cut: (wanted: string) => `wanted ${wanted}; the budget does not reach further`,
    noPrice: 'no price is known',
    room: (packs: string) => `the cool store has room for ${packs} at once: have the rest sent as it empties`,
    noRoom: 'no cool store has room for it: hand it out on the day it comes',
    serves: (hectares: string) => `for ${hectares}`,
    total: (cost: string, hectares: string) => `Together ${cost}, for ${hectares} of seed or inoculant.`,
    within: (spent: string, budget: string) => `${spent} of a budget of ${budget}.`,
    nothing: 'Nothing needs to be ordered: stock and saved seed serve all land that can be reached.',
  },

  // shares as growers meet them
  growers: {
    all: (share: string) => `Growers ${share}`,
    women: (share: string) => `women ${share}`,
    smallPlots: (hectares: string, share: string) => `plots below ${hectares} ${share}`,
  },

  // idle packs carried to another depot
  transfer: {
    carry: (amount: string, lot: string, depot: string, hectares: string) =>
      `Carry ${amount} of lot ${lot} to ${depot}: they serve ${hectares} more there`,
    pays: (cost: string, worth: string) => `the trip costs about ${cost}, the land is worth about ${worth}`,
    costs: (cost: string) => `the trip costs about ${cost}`,
  },

  // two allocations side by side
  differences: {
    none: 'Nothing differs.',
    land: (goods: string, more: string) => `${goods}: ${more}`,
    more: (hectares: string) => `${hectares} more`,
    less: (hectares: string) => `${hectares} less`,
    sameLand: 'as much land',
    least: (before: string, after: string) => `the smallest share goes from ${before} to ${after}`,
    leastStays: (share: string) => `the smallest share stays ${share}`,
    cell: (community: string, goods: string, before: string, after: string) =>
      `${community}, ${goods}: ${before} before, ${after} after`,
    price: (gained: string, winners: string, lost: string, losers: string) =>
      `${winners} would gain ${gained}; ${losers} would lose ${lost}`,
    onlyGain: (gained: string, winners: string) => `${winners} would gain ${gained}; nobody would lose`,
    onlyLose: (lost: string, losers: string) => `${losers} would lose ${lost}; nobody would gain`,
    lot: (lot: string, before: string, after: string) => `Lot ${lot}: ${before} packs given before, ${after} after`,
    others: (count: string) => `and ${count} more`,
  },

  // the smallest change that lifts a shortfall
  smallest: {
    buy: (amount: string, depot: string, date: string) =>
      `${amount} more at ${depot} by ${date} would serve it in full; one fewer would not`,
    buyFor: (cost: string) => `for ${cost}`,
    release: (kind: string) => `It is held by a decision (${kind}); taking that back would lift it`,
    decisions: { fix: 'fixed share', floor: 'least share', cap: 'most share', forbid: 'not to be given' },
    seedFirst: 'There is no seed to inoculate: the seed comes first',
    tooLate: (date: string) => `Nothing that is ordered today comes in time: the first would be there on ${date}`,
    noProduct: 'No product in the list fits this crop',
    notByStock: (reason: string) => `More stock would not help: ${reason}`,
    nothing: 'Nothing is short',
  },

  // questions before anything is decided
  whatIf: 'What if?',
  whatIfNote: 'Ask before deciding; nothing is kept.',
  suppose: {
    'lot-fails': 'this lot fails its test',
    'lot-cleared': 'this lot is cleared',
    'lot-replaced': 'this lot is replaced, ordered today',
    'more-packs': 'so many packs are ordered today',
  },
  ask: 'Ask',
  asking: 'The stock is being shared out again.',
  noAnswer: 'There is no answer while the season is being planned or the files block a plan.',
  beforeDelivery: 'By the sharing rule, before delivery. The next plan settles it.',
  priceElsewhere: 'Price elsewhere',
  packsInput: 'Packs',
  productInput: 'Product',
  depotInput: 'Depot',
  holdKind: 'How the share is held',
  holdKinds: { fix: 'exactly', floor: 'at least', cap: 'at most', forbid: 'give none' },
  holdAt: {
    fix: (share: string) => `Fix at ${share}`,
    floor: (share: string) => `At least ${share}`,
    cap: (share: string) => `At most ${share}`,
    forbid: () => 'Give none',
  },

  // the rule
  sharingRule: 'Sharing rule',
  fairness: {
    'equal-share': 'equal share',
    'most-hectares': 'most hectares',
    'priority-first': 'priority first',
  },
  equalOver: { community: 'between communities', zone: 'between zones', grower: 'between growers' },
  reserve: 'Reserve',
  equalOverLabel: 'Equal between whom',
  packsReserved: (count: string, isOne: boolean) => `${count} ${isOne ? 'pack or bag' : 'packs and bags'}`,
  reserveTitle: 'Kept back at the depots, share of each lot',
  floor: (cells: string) => `Floor ${cells} living rhizobia per seed`,
  asSent: 'as the scenario says',

  // zones by crops
  gridLabel: 'Zones by crops, share of planned land with seed and inoculant',
  gridHelp: 'Arrow keys move. Enter on a bar fixes a share by hand; Enter on a figure opens it.',
  zone: 'Zone',
  communities: ['commu-', 'nities'],
  planned: ['planned', 'ha'],
  packsHead: 'packs',
  needed: 'needed',
  given: 'given',
  allCrops: ['all', 'crops'],
  allZonesRow: 'All',
  outside: 'Outside all zones',
  cellTitle: (crop: string, place: string) => `${crop}, ${place}, share of planned land with seed and inoculant`,
  plannedTitle: (place: string) => `Planned land, ${place}`,
  communitiesTitle: (place: string) => `Communities, ${place}`,
  neededTitle: (what: string, place: string) => `${what} needed, packs, ${place}`,
  givenTitle: (what: string, place: string) => `${what} given, packs, ${place}`,
  allCropsTitle: (place: string) => `All crops, ${place}, share of planned land with seed and inoculant`,
  fixCell: (crop: string, place: string, share: string) => `Fix the share of ${crop} in ${place}, now ${share}`,
  fixedMark: 'fixed',
  fixedAt: (share: string) => `fixed ${share}`,
  partlyFixed: 'part fixed',
  keyBoth: 'seed and inoculant',
  dagger: (count: string, isOne: boolean) =>
    `† ${count} ${isOne ? 'community is' : 'communities are'} cut off and ${isOne ? 'gets' : 'get'} nothing. The columns count all planned land.`,

  // fixing a share
  editorTitle: (crop: string, place: string) => `${crop}, ${place}`,
  editorFor: (count: string, isOne: boolean) => `${count} ${isOne ? 'community' : 'communities'}`,
  shareOf: 'Share of planned land with',
  shareInput: 'Share, percent',
  fixAt: (share: string) => `Fix at ${share}`,
  leaveAt: (share: string) => `Leave at ${share}`,
  release: 'Release',
  releaseLater: 'Undo what was decided after it, then release.',
  takes: (amount: string) => `Takes about ${amount} more.`,
  frees: (amount: string) => `Frees about ${amount}.`,
  costsNothing: 'As planned now.',
  noMoreSeed: (share: string) => `Only ${share} of this land will have seed to inoculate.`,
  fromRest: 'The stock still has them.',
  othersFall: (from: string, to: string) => `The others would fall from ${from} to about ${to}.`,
  othersUnknown: 'Who gets less is settled when you replan.',
  badShare: 'Give a share from 0 to 100.',

  // lots along time
  lots: (goods: string) => `Lots: ${goods}`,
  allLots: 'All lots',
  and: (list: string, last: string) => `${list} and ${last}`,
  lotCount: (shown: string, all: string) => `${shown} of ${all} lots`,
  showAllLots: 'Show all',
  showFewLots: 'Show fewer',
  lot: 'lot',
  lotPacks: 'packs',
  lotGoods: 'goods, depot',
  lotStock: 'in stock',
  lotOffered: 'may be given',
  lotTest: 'per g at the start; germi\u00adnation',
  onLabel: 'on the label',
  tested: (count: string) => `${count} when tested`,
  testedOn: (count: string, day: string) => `${count} on ${day}`,
  countTitle: (lot: string) => `Lot ${lot}, rhizobia per gram as planning begins`,
  lotExpires: 'expires; sown before',
  lotTime: 'until its expiry date',
  today: 'today',
  sowingWindow: 'sowing starts',
  sowingWindowTitle: 'From the day by which 2 seasons in 10 have begun sowing to that of 8 in 10',
  thickness: 'thickness: packs; upright: expiry date',
  bagsCount: (count: string, size: string) => `${count} × ${size}`,
  keptBack: 'Kept back:',
  expires: (date: string) => `Expires ${date}`,
  soonExpires: (date: string, share: string) => `Expires ${date}: chance of being sown before ${share}.`,
  notYetThere: (date: string) => `There from ${date}.`,
  germinates: (percent: string, least: string) => `${percent} germinate, ${least} is the least`,
  counted: (count: string, least: string) => `${count} per g, ${least} is the least`,
  packsTitle: (lot: string) => `Lot ${lot}, packs that may be given`,
  chanceTitle: (lot: string) => `Lot ${lot}, chance of being sown before it expires`,
  noLots: 'No lots in stock.',

  // map and files
  legend: 'Share of land supplied',
  noLand: 'no land planned',
  depot: 'depot, sized by packs',
  saveTables: 'Save as CSV',
  saveAllocation: 'Allocation',
  saveShortfalls: 'Shortfalls',
} as const;
