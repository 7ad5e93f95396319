import type { SeasonCost, SpreadTotal, Unknown, ZoneLoss } from '../../../engine/index.ts';

const seasonsOf = (count: number | string) => `${count} ${String(count) === '1' ? 'season' : 'seasons'}`;

/** Words of a plan played in past seasons. */
export const REPLAY_WORDING = {
  title: (name: string, seasons: number, draws: number) =>
    `${name}: this plan in the rain, heat and roads of ${seasons} past ${seasons === 1 ? 'season' : 'seasons'}${draws > 0 ? `, each with ${draws} draws of what is not known` : ''}`,
  honest:
    'What such seasons would have made of this plan. It promises no yield, and nothing is reached before it is signed for and sown.',
  sameSeasons:
    'The days of this plan were chosen on the same seasons that it is played in here, so it may look better than it will do.',
  noSeasons: 'No past season is recorded well enough to play the plan in.',
  head: {
    season: 'season',
    printed: 'as printed, ha',
    value: 'value kept',
    waited: 'trips that waited',
    released: 'with release rules, ha',
    cost: 'what cost most, as printed',
  },
  cost: {
    little: 'little',
    'no-onset': 'no planting rains',
    late: 'goods after the window',
    hot: 'packs too hot on the road',
    waiting: 'died waiting for rain',
    weak: 'packs too weak',
  } satisfies Record<SeasonCost, string>,
  worstTitle: 'The worst of them, as printed',
  worst: (season: string, ha: string, of: string, value: string) =>
    `${season}: ${ha} of ${of} ha inoculated would have been sown in time with live rhizobia; ${value} percent of their value kept.`,
  lost: {
    noOnset: (ha: string) => `no planting rains came for ${ha} ha`,
    late: (ha: string) => `the goods for ${ha} ha came after the sowing window`,
    hot: (ha: string) => `packs for ${ha} ha may have reached 40 °C on the road and stay on hold`,
    waiting: (ha: string) => `packs for ${ha} ha fell below the floor in the wait for rain`,
    weak: (ha: string) => `packs for ${ha} ha were below the floor from the start`,
  } satisfies Record<ZoneLoss['cause'], (ha: string) => string>,
  where: (places: string) => `most of it in ${places}`,
  inZone: (zone: string, ha: string) => `${zone} (${ha} ha)`,
  outside: 'land outside all zones',
  moved: (trips: number, days: number) =>
    `${trips} ${trips === 1 ? 'trip waited' : 'trips waited'} for the road, ${days} ${days === 1 ? 'day' : 'days'} in all`,
  never: (trips: number) => `${trips} ${trips === 1 ? 'trip' : 'trips'} could not go at all`,
  noneLost: 'nothing was lost.',
  rangesTitle: 'Ranges over seasons and draws; in brackets how far each end may be off by the number of draws alone',
  ranges: {
    reachedHa: 'inoculated alive and in time, ha',
    farmersReached: 'growers, in proportion to their land',
    nitrogenKg: 'nitrogen fixed on all land sown, kg',
    programmeNitrogenKg: 'of it owed to the programme, kg',
    inoculationNitrogenKg: 'of it by inoculation, through larger yields, kg',
    inoculationAtMostKg: 'the same where no field held the right rhizobia, at most, kg',
    netNitrogenKg: 'fixed less what leaves with the grain, kg',
    grainT: 'grain, t',
    programmeGrainT: 'of it owed to the programme, t',
    inoculationGrainT: 'of it by inoculation, t',
    phosphorusNitrogenKg: 'nitrogen by the phosphorus of fertiliser, through larger yields, kg',
    phosphorusGrainT: 'grain by the phosphorus of fertiliser, t',
  } satisfies Record<SpreadTotal, string>,
  sure: (share: string, ofRange: string, mayBeNought: readonly string[]) =>
    `By the number of draws alone no end is off by more than ${share} percent of itself. These may be nought, so theirs is told against the range from P10 to P90, at most ${ofRange} percent of it: ${mayBeNought.join('; ')}.`,
  rangeHead: ['', 'P10', '', 'P50', 'P90', ''],
  unknownsTitle:
    'Which unknowns matter most: share of the spread that each explains alone, and with all it does with others',
  unknownsOf: { reachedHa: 'hectares alive and in time', programmeNitrogenKg: 'nitrogen owed to the programme' },
  unknowns: {
    season: 'the season: rain, heat, roads',
    nitrogenMethod: 'the nitrogen method beyond the share from the air',
    shareFromAir: 'share of nitrogen from the air',
    yield: 'yield',
    response: 'how fields answer to inoculation and phosphorus',
    survivalInPacks: 'how fast rhizobia die in packs',
    survivalOnSeed: 'how fast rhizobia die on the seed',
    roadLoss: 'boxes on the road',
    delays: 'delays',
    breakdowns: 'breakdowns',
  } satisfies Record<Unknown, string>,
  unknownHead: ['', 'alone', 'in all'],
  compareTitle: (other: string) => `Beside ${other}, season by season: what it has more or less`,
  compareHead: { season: 'season', ha: 'ha', value: 'value kept' },
  compare: (better: number, worse: number, same: number, mean: string) =>
    `More hectares in ${seasonsOf(better)}, fewer in ${worse}, as many in ${same}; ${mean} ha in the mean.`,
  page: {
    worstTitle: 'The worst of the past seasons, and why',
    asking: 'Playing the plan in past seasons …',
    noAnswer: 'These seasons cannot be played again from the files that are open.',
    rankTitle: 'Which unknowns matter most',
    rankWhy:
      'Each bar is a share of the spread: filled, what one unknown explains alone; the frame, with all it does together with others.',
    rank: 'Work it out',
    ranking: 'Working out which unknowns matter',
    cancel: 'Cancel',
    rankOf: 'Spread of',
    unknown: 'what is not known',
    alone: 'alone, %',
    inAll: 'in all, %',
    most: (name: string, share: string) => `Most of the spread comes of ${name}: ${share} of it.`,
    mostTwo: (first: string, second: string, share: string) =>
      `Most of the spread comes of ${first} and ${second}: ${share} of it.`,
    others: (names: string) => `Under 1 % each: ${names}.`,
    noSpread: 'This does not vary over the seasons and draws.',
    rankMethod: (rows: string) =>
      `First-order and total shares of the variance (Saltelli and others 2010), from two samples of ${rows} draws, so that each is known to a few percent. More is learnt by measuring what stands first.`,
    compareTitle: 'Beside another plan, season by season',
    compareBefore: 'Compare with the plan before this one',
    compareReleased: 'Compare with holding for rain',
    released: 'the same plan with each place’s inoculant held for planting rain',
    compareFile: 'Choose a plan.json …',
    comparing: (name: string) => `Beside ${name}: what this plan has more or less, season by season.`,
    before: 'the plan before',
    compareSame: 'Both give the same hectares in every season.',
    compareSum: (more: string, fewer: string, same: string, mean: string) =>
      `This plan has more hectares in ${seasonsOf(more)}, fewer in ${fewer}, as many in ${same}; ${mean} ha in the mean.`,
    compareHonest:
      'Each plan was chosen on these same seasons; a difference of a few hectares says little about the next.',
    unfit: (name: string) => `${name} does not hold for the files and decisions that are open, so it is not played.`,
    notJson: (name: string) => `${name} is not JSON, so it is not a plan.`,
    thisHa: 'this plan, ha',
    otherHa: 'other, ha',
    moreHa: 'more or less, ha',
    season: 'season',
  },
} as const;
