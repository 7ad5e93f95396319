/**
 * Every column of the plan document, with the kind of its values and the list its indexes point into. Kinds:
 * `number`, `amount` (a number from nought up), `minute` (of the day or the night after it), `number?` (or null), `date`, `date?`, `text`, `anything`, `index LIST`
 * (an index into LIST), `index? LIST` (or -1), `indexes LIST` (a list of them), `amounts` (a list of amounts), `range`, `range?`, `bounds`, `bounds?`.
 */
export interface TableRule {
  readonly table: string;
  /** Where the number of rows is fixed by another list: its name, or a product of two. */
  readonly rows: readonly string[] | null;
  readonly columns: Readonly<Record<string, string>>;
}

const columns = (kind: string, ...names: readonly string[]): Record<string, string> =>
  Object.fromEntries(names.map((name) => [name, kind]));

export const TABLES: readonly TableRule[] = [
  {
    table: 'handovers',
    rows: null,
    columns: {
      date: 'date',
      community: 'index communities',
      lot: 'index lots',
      ...columns('amount', 'packs', 'returnedPacks'),
      sownOn: 'date?',
    },
  },
  {
    table: 'places.shares',
    rows: null,
    columns: { community: 'index communities', zone: 'index? zones', share: 'amount' },
  },
  { table: 'places', rows: ['communities'], columns: { communityAreaHa: 'number?', communityPlace: 'index places' } },
  { table: 'places', rows: ['zones'], columns: { zoneAreaHa: 'number?' } },
  { table: 'places', rows: ['places'], columns: columns('number', 'placeLon', 'placeLat', 'placeGiven') },
  {
    table: 'places.unreachable',
    rows: null,
    columns: { place: 'index places', vehicle: 'index vehicles', reason: 'text' },
  },
  {
    table: 'season',
    rows: ['zonesAndOutside'],
    columns: { zoneStation: 'index stations', zoneStationKm: 'number?' },
  },
  {
    table: 'season.onset',
    rows: ['zonesAndOutside'],
    columns: {
      status: 'text',
      p20: 'date?',
      p50: 'date?',
      p80: 'date?',
      falseStartShare: 'number?',
      pastSeasons: 'amount',
    },
  },
  { table: 'season', rows: ['members'], columns: { memberYears: 'number' } },
  { table: 'season', rows: ['members', 'stations'], columns: { memberOnset: 'date?' } },
  {
    table: 'season.windows',
    rows: null,
    columns: {
      zone: 'index zonesAndOutside',
      crop: 'index crops',
      anchor: 'text',
      ...columns('number', 'firstOffsetDays', 'lastOffsetDays'),
      ...columns('date?', 'firstP20', 'firstP50', 'firstP80', 'lastP50', 'latestSafe'),
    },
  },
  { table: 'season', rows: ['planningDays'], columns: { roadState: 'index roadStates', workday: 'index twoStates' } },
  { table: 'season', rows: ['stations', 'planningDays'], columns: columns('number?', 'tminC', 'tmaxC', 'hotTmaxC') },
  { table: 'season', rows: ['stations'], columns: { stationRiseM: 'number' } },
  {
    table: 'needs',
    rows: null,
    columns: {
      zone: 'index? zones',
      community: 'index communities',
      crop: 'index crops',
      product: 'index? products',
      ...columns('amount', 'plannedHa', 'seedKg', 'ownSeedKg', 'inoculantG', 'packsNeeded', 'stickerPacks'),
      ...columns('amount', 'waterL', 'fertiliserKg'),
    },
  },
  {
    table: 'allocation.lots',
    rows: ['lots'],
    columns: {
      reasons: 'texts',
      packsReserved: 'amount',
      packsHeld: 'amount',
      packsOffered: 'amount',
      chanceSownBeforeExpiry: 'number?',
      countPerG: 'number?',
    },
  },
  {
    table: 'allocation.grants',
    rows: null,
    columns: {
      community: 'index communities',
      crop: 'index crops',
      lot: 'index lots',
      packs: 'whole',
      ...columns('amount', 'kg', 'servesSeedKg'),
    },
  },
  {
    table: 'allocation.shares',
    rows: null,
    columns: {
      community: 'index communities',
      crop: 'index crops',
      ...columns('amount', 'plannedHa', 'seedNeedKg', 'ownSeedKg', 'seedThereKg', 'seedGivenKg'),
      ...columns('amount', 'inoculantNeedSeedKg'),
      ...columns('amount', 'inoculantGivenSeedKg', 'seedShare', 'inoculantShare'),
    },
  },
  {
    table: 'allocation.shortfalls',
    rows: null,
    columns: {
      shareRow: 'index shares',
      commodity: 'commodity',
      ...columns('amount', 'shortKg', 'hectares'),
      reason: 'text',
      product: 'index? products',
    },
  },
  {
    table: 'allocation.orders',
    rows: null,
    columns: {
      product: 'index products',
      depot: 'index depots',
      verdict: 'text',
      ...columns('whole', 'packs', 'packsWanted'),
      ...columns('amount', 'hectares', 'hectaresWanted', 'chanceInTime'),
      ...columns('number?', 'cost', 'packsAtOnce'),
      ...columns('date', 'orderBy', 'arrives', 'usefulUntil', 'lastOrderDay'),
    },
  },
  {
    table: 'allocation.packShares',
    rows: null,
    columns: {
      grant: 'index grants',
      ...columns('number?', 'growers', 'growersPerPack'),
      ...columns('amount', 'openedPackDays', 'sowTogether'),
    },
  },
  {
    table: 'allocation.consignments',
    rows: null,
    columns: {
      community: 'index communities',
      place: 'index places',
      depot: 'index depots',
      group: 'group',
      grants: 'indexes grants',
      ...columns('amount', 'kg', 'coolLitres', 'inoculantKg', 'hectares', 'bestReach'),
      ...columns('number?', 'maxStorageC', 'worth'),
      ...columns('date', 'earliest', 'latest', 'bestDay'),
    },
  },
  {
    table: 'delivery.loads',
    rows: null,
    columns: {
      consignment: 'index consignments',
      grants: 'indexes grants',
      packs: 'wholes',
      ...columns('amount', 'kg', 'coolLitres', 'inoculantKg', 'hectares'),
    },
  },
  {
    table: 'delivery.trips',
    rows: null,
    columns: {
      vehicle: 'index vehicles',
      date: 'date',
      trip: 'whole',
      ...columns('minute', 'leaveMinute', 'latestLeaveMinute', 'returnMinute'),
      ...columns('amount', 'iceKg', 'loadKg', 'coolLitres', 'kilometres'),
      ...columns('number?', 'meanKineticC', 'degreeHours30', 'hoursAbove30', 'hoursAbove35', 'hoursAbove40'),
      returnLeg: 'index legs',
    },
  },
  {
    table: 'delivery.stops',
    rows: null,
    columns: {
      trip: 'index trips',
      place: 'index places',
      loads: 'indexes loads',
      leg: 'index legs',
      ...columns('minute', 'arriveMinute', 'startMinute', 'departMinute', 'restMinutes'),
      loadKg: 'amount',
      ...columns('number?', 'packC', 'packMaxC', 'hotBandMaxC', 'log10Loss', 'hoursAboveStorage'),
    },
  },
  { table: 'delivery.unserved', rows: null, columns: { load: 'index loads', reason: 'text', hectares: 'amount' } },
  {
    table: 'outcomes.crops',
    rows: ['shares'],
    columns: {
      ...columns('amount', 'seedHa', 'seedInTimeHa', 'inoculatedHa', 'reachedHa', 'nitrogenKg', 'grainT'),
      ...columns('number?', 'log10PerSeed', 'storeLog10', 'roadLog10', 'communityLog10', 'seedLog10'),
    },
  },
  {
    table: 'outcomes.zones',
    rows: null,
    columns: {
      zone: 'index? zones',
      ...columns('amount', 'communities', 'farmers', 'plannedHa', 'seedKg', 'inoculantPacks', 'shareMet', 'reachedHa'),
      reachedRange: 'range',
      nitrogenKg: 'range',
      inTimeChance: 'number?',
    },
  },
  {
    table: 'outcomes.seasons',
    rows: null,
    columns: {
      year: 'number',
      ...columns('amount', 'reachedHa', 'noOnsetHa', 'lateHa', 'hotHa', 'waitingHa', 'weakHa'),
      cost: 'text',
    },
  },
];

/** Lists of objects: the kind of each member of each object. */
export const OBJECT_LISTS: readonly { readonly list: string; readonly members: Readonly<Record<string, string>> }[] = [
  {
    list: 'delivery.legs',
    members: {
      fromSite: 'index sites',
      toSite: 'index sites',
      vehicle: 'index vehicles',
      date: 'date',
      minutes: 'amount',
      kilometres: 'amount',
      pieces: 'pieces',
    },
  },
  {
    list: 'allocation.proofs',
    members: {
      commodity: 'commodity',
      crops: 'indexes crops',
      shareRows: 'indexes shares',
      needKg: 'amounts',
      keptKg: 'amounts',
      communityPrices: 'amounts',
      lots: 'indexes lots',
      offeredKg: 'amounts',
      lotPrices: 'amounts',
      ...columns('number', 'capPrice', 'leastShare', 'bound', 'roundingKg'),
    },
  },
];

/** Single values. */
export const VALUES: Readonly<Record<string, string>> = {
  scenarioSha256: 'text',
  decisionsSha256: 'text',
  seed: 'number',
  iterations: 'number',
  rounds: 'number',
  problems: 'list',

  'scenario.name': 'text',
  'scenario.seasonYear': 'number',
  'scenario.asOf': 'date',
  'scenario.currency': 'text',
  'scenario.planningFrom': 'date',
  'scenario.planningTo': 'date',
  'season.seasonName': 'text',
  'season.onsetDefinition': 'text',
  'season.stations': 'texts',
  'delivery.cost': 'number?',
  'delivery.promisePrice': 'amount',
  ...Object.fromEntries(
    ['crops', 'zones', 'communities', 'depots', 'products', 'lots', 'vehicles', 'places'].map((name) => [
      `ids.${name}`,
      'texts',
    ]),
  ),
  ...Object.fromEntries(
    ['plannedHa', 'seedHa', 'inoculatedHa', 'fertilisedHa', 'communitiesReached', 'communities'].map((name) => [
      `outcomes.headline.${name}`,
      'amount',
    ]),
  ),
  ...Object.fromEntries(
    [
      ...['reachedHa', 'nitrogenKg', 'programmeNitrogenKg', 'inoculationNitrogenKg', 'inoculationAtMostKg'],
      ...['netNitrogenKg', 'grainT', 'programmeGrainT', 'inoculationGrainT', 'farmersReached'],
      ...['phosphorusNitrogenKg', 'phosphorusGrainT'],
    ].map((name) => [`outcomes.headline.${name}`, 'range']),
  ),
  ...Object.fromEntries(['goodsCost', 'deliveryCost'].map((name) => [`outcomes.headline.${name}`, 'number?'])),
  ...Object.fromEntries(
    [
      ...['reachedHa', 'valueHa', 'farmersReached', 'nitrogenKg', 'programmeNitrogenKg', 'inoculationNitrogenKg'],
      ...['inoculationAtMostKg', 'netNitrogenKg', 'residueNitrogenKg', 'earlierNitrogenKg', 'grainT'],
      ...['programmeGrainT', 'inoculationGrainT', 'programmeGrainWorth', 'inoculationGrainWorth'],
      ...['phosphorusNitrogenKg', 'phosphorusGrainT'],
    ].map((name) => [`outcomes.headline.central.${name}`, 'number?']),
  ),
  ...Object.fromEntries(
    ['inoculant', 'otherGoods', 'kilometres', 'vehicleDays', 'crews', 'ice', 'training', 'testing'].map((name) => [
      `outcomes.headline.cost.${name}`,
      'number?',
    ]),
  ),
  ...columns('amount', 'outcomes.headline.broughtSeedHa'),
  'outcomes.headline.residualNitrogenKg': 'bounds',
  'outcomes.headline.residualWorth': 'bounds?',
  ...Object.fromEntries(
    ['costPerHectare', 'programmeGrainWorth', 'inoculationGrainWorth', 'valueCostRatio', 'inoculantValueCostRatio'].map(
      (name) => [`outcomes.headline.${name}`, 'range?'],
    ),
  ),
};
