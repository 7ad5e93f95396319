/** Words of the handover amounts: said to a person with a basin, a pack and a bottle cap. */
export const HANDOVER_WORDING = {
  chooseTitle: 'Whose handover?',
  chooseWhy: 'Amounts to coat and sow, community by community, as this plan hands them over.',
  choose: 'Community',
  nothing: (community: string) => `${community} gets nothing in this plan.`,
  nothingPlanned: 'No legume land is planned there.',
  answer: (community: string, goods: string) => `${community} gets ${goods}.`,
  packs: (count: string, isOne: boolean) => `${count} ${isOne ? 'pack' : 'packs'} of inoculant`,
  bags: (count: string, isOne: boolean) => `${count} ${isOne ? 'bag' : 'bags'} of seed`,
  and: (first: string, second: string) => `${first} and ${second}`,
  where: (zone: string, place: string) => `${zone}, handed over at ${place}.`,
  notDelivered: 'No vehicle of this plan brings it.',

  received: 'What comes, and when',
  when: 'day, about',
  lot: 'lot, last day',
  goods: 'goods',
  seedLot: (bags: string, kg: string, crop: string) =>
    `${bags} ${bags === '1' ? 'bag' : 'bags'} of ${kg} kg, ${crop} seed`,
  packLot: (packs: string, isOne: boolean, crop: string) => `${packs} ${isOne ? 'pack' : 'packs'}, ${crop}`,
  visit: (day: string, hour: string, vehicle: string) => `${day}, ${hour}, ${vehicle}`,

  cropsLabel: 'Crop',
  cropPacks: (packs: string, isOne: boolean) => `${packs} ${isOne ? 'pack' : 'packs'}`,
  noPacks: 'no packs',
  share: (growers: string, isOneGrower: boolean, packs: string, isOnePack: boolean) =>
    `${growers} ${isOneGrower ? 'grower' : 'growers'} share ${packs} ${isOnePack ? 'pack' : 'packs'}.`,
  aPackEach: 'A pack for each grower.',
  packsEach: (packs: string) => `${packs} packs for each grower.`,
  eachCoats: (kg: string) => `Each coats about ${kg} kg.`,
  together: (count: string) => `${count} growers open a pack together, coat on one morning and sow that day.`,
  openedDays: (days: string) => `An opened pack, tied shut and kept cool, is good for ${days} days.`,
  asked: (packs: string, given: string) => `${packs} packs would coat all its seed; ${given} are given.`,
  uncoated: (kg: string) => `The other ${kg} kg are sown uncoated, in rows of their own.`,
  notInoculated: (crop: string) => `No inoculant comes for ${crop}. The seed is sown as it is.`,
  doseUnknown: 'The label of this product states no dose in the data. Follow the label on the pack.',

  batch: 'Seed you coat now',
  less: 'less seed',
  more: 'more seed',
  kg: 'kg',
  caps: (isOne: boolean) => (isOne ? 'level cap of powder' : 'level caps of powder'),
  noCaps: 'less than half a level cap: weigh it, or coat more seed at once',
  grams: (grams: string, pack: string) => `${grams} g, ${pack} of a pack`,
  waterCaps: (isOne: boolean) => (isOne ? 'cap of clean water' : 'caps of clean water'),
  waterMl: (ml: string) => `${ml} mL, to moisten the seed`,
  stickerWater: (ml: string, sachets: string) =>
    `${ml} mL, in which ${sachets} of a sachet of sticker is dissolved first`,
  capFills: (caps: string, grams: string) =>
    `A pack fills about ${caps} level caps of ${grams} g. Caps differ: weigh ten of them once.`,
  ladder: 'Other batches',
  ladderHeads: { seed: 'seed, kg', caps: 'level caps', grams: 'powder, g', water: 'water, mL' },

  stepsTitle: 'On the morning you sow, in this order',
  stepSoil: 'The soil is moist. Work in the shade, out of the wind. Coat only what you sow today.',
  stepLabel: (crop: string, expires: string) =>
    `The pack names ${crop} and its last day, ${expires}, has not passed. It has been kept cool.`,
  stepWater: 'Moisten the seed little by little and turn it: damp all over, not wet.',
  stepSticker:
    'Dissolve the sticker in clean water in a bottle. Moisten the seed with a little of it: damp all over, not wet.',
  stepPowder:
    'Stir in the powder until every seed is evenly dark. Too wet: coat less next time, never again the same seed.',
  stepGroundnut: 'Lift groundnut, do not rub it: the skins tear.',
  stepDry: (least: string, most: string) => `Spread it in the shade on a clean sheet for ${least} to ${most} minutes.`,
  stepSow:
    'Sow at once, in the morning, the late afternoon or cool weather, into moist soil, and cover it. Not together with fertiliser.',

  careTitle: 'Take care',
  careLabel: 'Where the label on the pack or the national rules say otherwise, they win.',
  careTreated:
    'Coloured seed, or seed whose dye comes off on a wet finger, is treated and poisonous. Never eat, feed or brew it. It is not coated unless this page names its lot.',
  careTreatedLots: (lots: string) => `Treated seed that may be coated by its label: ${lots}.`,
  careKeep:
    'Keep packs closed in the coolest place of the house, or in a closed box in a household fridge apart from food. Never in a freezer, never in a vaccine fridge. Packs that met heat or passed their last day are given back, not used.',
  careDust:
    'The powder is alive and is no food and no medicine; its dust irritates. Cover nose and mouth, wash hands. Bottle, cap and basin never hold food or drink again.',
  of: (lot: string, expires: string) => `${lot}, ${expires}`,
} as const;
