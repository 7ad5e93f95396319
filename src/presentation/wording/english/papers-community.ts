/** Words of the papers that stay in the community: said to a person with a basin, a pack and a bottle cap. */
export const COMMUNITY_PAPERS = {
  title: (community: string) => `Handover sheet, ${community}`,
  about: (zone: string, growers: string, hectares: string) =>
    `${zone}: ${growers} growers, ${hectares} ha of legumes planned.`,
  aboutUncounted: (zone: string, hectares: string) => `${zone}: ${hectares} ha of legumes planned.`,
  place: (place: string) => `Handed over at ${place}.`,
  worker: 'Community worker',
  phone: 'Phone of the zone officer',

  receiveTitle: 'What you receive: count it together',
  receiveHeads: {
    goods: 'goods',
    packs: 'packs, bags',
    lot: 'lot',
    expires: 'last day',
    note: 'note',
    counted: 'counted',
  },
  visit: (day: string, clock: string, vehicle: string) => `${day}, about ${clock}, brought by ${vehicle}`,
  packs: (crop: string, size: string) => `${crop} inoculant, ${size}`,
  bags: (crop: string, size: string) => `${crop} seed, ${size}`,
  fertiliser: (crops: string, size: string) => `fertiliser for ${crops}, ${size}`,
  fertiliserRate: (perHa: string, perSquare: string) =>
    `${perHa} kg on a hectare, ${perSquare} kg on 10 by 10 m. Into the soil, covered, beside and below the seed: coated seed and packs never touch it.`,
  other: (kind: string, size: string) => `${kind}, ${size}`,
  sowBefore: (date: string) => `Sow before ${date}.`,
  treatedNot: 'Treated and poisonous. Do NOT coat it. Sow it as it is, with gloves.',
  treatedMay: 'Treated and poisonous. Its label allows coating: gloves, and let the dressing dry fully first.',
  withheld: {
    expired: 'DO NOT USE: past its last day. Give it back.',
    'on-hold': 'DO NOT USE: on hold. Give it back.',
    heated: 'DO NOT USE: it met heat and is on hold. Give it back.',
  },
  allAsked: 'All that was asked for.',
  short: (given: string, asked: string) => `Short: ${given} of the ${asked} packs that all its seed would take.`,
  noSeedToCoat: 'No seed of this sheet may be coated with it. Keep it shut and give it back.',
  nothing: 'Nothing is brought to this community in this plan.',

  shareTitle: 'Who shares which packs',
  shareHeads: { crop: 'crop', picture: '', told: '' },
  growers: (count: string) => `${count} growers`,
  shared: (growers: string, isOneGrower: boolean, packs: string, isOnePack: boolean) =>
    `${growers} ${isOneGrower ? 'grower' : 'growers'} to ${packs} ${isOnePack ? 'pack' : 'packs'}.`,
  sharedLot: (lot: string) => `Lot ${lot}.`,
  eachCoats: (kg: string) => `Each coats about ${kg} kg.`,
  uncounted: 'Nobody counted the growers: share the packs by the kilograms of seed that each has.',
  rest: (kg: string) => `The other ${kg} kg in all: sown uncoated, in rows of their own.`,
  opened: (days: string) => `Tied shut and kept cool, an opened pack is good for ${days} days.`,
  noPacks: (crops: string) => `No inoculant comes for ${crops}: that seed is sown as it is.`,
  sharePicture: (growers: string, packs: string) => `${growers} growers, ${packs} packs`,

  coatTitle: 'How much: only what you sow today',
  ladderOf: (crops: string, size: string) => `${crops}, pack of ${size}.`,
  batch: (kg: string) => `${kg} kg of seed`,
  capFills: (caps: string, grams: string) =>
    `A pack of this product fills about ${caps} level caps of ${grams} g. Caps differ: weigh ten of them once. Strike it flat; never heaped, never pressed.`,
  capFillsLiquid: (caps: string, millilitres: string) =>
    `A bottle of this product fills about ${caps} caps of ${millilitres} mL. Caps differ: measure ten of them once. Shake the bottle first.`,
  ladderHeads: {
    caps: 'level caps of powder',
    grams: 'powder, g',
    liquidCaps: 'caps of inoculant',
    millilitres: 'inoculant, mL',
    waterCaps: 'caps of clean water',
    water: 'water, mL',
    sticker: 'sticker, sachets',
  },
  eachGrower: (crop: string, kg: string) => `${crop}, each grower: ${kg} kg`,
  noCap: 'weigh it',
  doseUnknown: (crop: string) => `${crop}: the label’s dose is not in the data. Follow the label on the pack.`,
  ownPacks: 'Each crop from its own packs, never another’s.',
  never: 'Never more: the label sets it.',

  stepsTitle: 'Coat on the morning you sow, in this order',
  steps: {
    soil: 'Soil wet a finger deep. Shade, no wind. Coat only what you sow today.',
    label: (lots: string) =>
      `The pack names the crop in the basin; its last day has not passed. Only lots ${lots}. A wet finger takes off dye: treated seed, not coated unless this sheet names its lot.`,
    water:
      'Clean water, not from a chlorinated tap. Wet the seed little by little and turn it: damp all over, nothing dripping.',
    sticker:
      'Dissolve the sticker in the clean water first. Wet the seed with it little by little: damp all over, nothing dripping.',
    liquid: 'Shake the bottle. Stir its caps into the clean water, then wet the seed with it little by little.',
    powder: 'Shake on the powder, turn until every seed is evenly dark.',
    groundnut: 'Groundnut skins tear: lift, do not rub.',
    wet: 'Too wet? Coat less next time. Seed once coated is never wetted or coated again.',
    dry: (least: string, most: string) => `Dry in the shade on a clean sheet, ${least} to ${most} minutes.`,
    sow: 'Sow at once into moist soil and cover. Not together with fertiliser.',
  },

  careTitle: 'Take care',
  care: {
    poison: 'Coloured seed is poisoned seed.',
    poisonSaid:
      'Never eat, cook, brew or feed it. Gloves. Away from children, animals and water. Bury spills. Bags are never used again.',
    dust: 'Dust.',
    dustSaid: 'Coat outdoors, wind behind you, cloth over nose and mouth. Wash hands before eating.',
    keep: 'Keep packs',
    keepSaid:
      'shut, cool and dark, away from sprays and fertiliser. A household fridge is good: closed box, apart from food. Never a freezer, never a vaccine fridge.',
    food: 'Not food, not medicine.',
    foodSaid: 'Bottle, cap and basin never again for food or drink. Out of reach of children.',
    back: 'Give back',
    backSaid: 'what is torn, wet, past its last day, or stood at 40 °C. Already sown: give all packs back, unopened.',
  },
  signs: { worker: 'Community worker, received and shown how', driver: 'Driver, time', box: 'Box, °C' },

  listTitle: (community: string) => `Distribution list, ${community}`,
  listAbout:
    'Each grower signs, or gives a thumbprint, for what is in hand. Whoever cannot come names who takes it. This list stays with the programme: no copy on a wall.',
  listPlan: 'Planned for the community',
  listPlanHeads: {
    crop: 'crop',
    packs: 'packs',
    seed: 'bags of seed',
    kg: 'seed, kg',
    growers: 'growers',
    each: 'each',
  },
  listBags: (count: string, kg: string) => `${count} of ${kg} kg`,
  listEach: (packs: string, kg: string) => `${packs} packs, ${kg} kg`,
  listHeads: {
    number: 'no.',
    name: 'name',
    sex: 'F / M',
    packs: (crop: string) => `${crop}, packs`,
    kg: (crop: string) => `${crop}, kg`,
    mark: 'signature or thumbprint',
  },
  listSum: 'Handed out',
  listLeft: 'Left, and where it is kept',
  listSigns: { worker: 'Community worker', witness: 'Witness', officer: 'Zone officer, seen' },
} as const;
