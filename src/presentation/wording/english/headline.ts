/** Words of the headline table. */
export const HEADLINE_WORDING = {
  explainRange: 'In brackets: one outcome in ten is expected below the first figure, one in ten above the second.',
  until: 'to',
  outOf: 'of',
  plannedHa: 'planned, hectares',
  seedHa: 'with seed, own or handed over, hectares',
  withoutSeedHa: 'without seed, hectares',
  inoculatedHa: 'inoculated, hectares',
  notInoculatedHa: 'with seed, not inoculated, hectares',
  reachedHa: 'inoculated alive and in time, hectares',
  nitrogenKg: 'nitrogen fixed, kg',
  programmeNitrogenKg: 'of it owed to the programme, kg',
  grainT: 'grain, t',
  communities: 'communities that are handed goods',
  unserved: 'loads of seed and inoculant not served',
  fertiliserUnserved: 'loads of fertiliser not served',
  goodsCost: 'goods handed over',
  deliveryCost: 'delivery',
  programmeGrainT: 'of the grain owed to the programme, t',
  phosphorusGrainT: (ha: string) => `of it by fertiliser on ${ha} ha, t`,
  residualWorth: 'worth of what the next cereal can do without',
  orders: (lines: string, cost: string, when: string) =>
    `to order for the land not served: ${lines} lines, ${cost}, ${when} (orders.csv)`,
  orderBy: (date: string) => `the first by ${date}`,
  orderNow: 'at once',
  ordersTooLate: 'nothing that could still be ordered would come in time (orders.csv)',
  unstated: 'not stated, a price is missing',
} as const;

/** Words of the lines that say why the plan gives no more; each line begins with a figure or a lot. */
export const WHY_WORDING = {
  short: { seed: 'hectares without seed', inoculant: 'hectares not inoculated' },
  unserved: 'hectares whose goods stay at the depot',
  fertiliserLeft: 'hectares whose fertiliser stays at the depot',
  lot: 'is not given',
  places: 'hand-over places not reached by vehicles like',
} as const;
