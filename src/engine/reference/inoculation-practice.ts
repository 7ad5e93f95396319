import { type Sourced, sourced } from '../vocabulary/provenance.ts';

const PRACTICE = 'common practice, no source';
const GRDC = 'GRDC Back Pocket Guide, Inoculating Legumes 2013';

/** What is done at the growers' side. Everywhere a pack's own label comes first. */
export const INOCULATION_PRACTICE = {
  /** Shown beside a dose for comparison, never used as one: national practice runs from 1 to 10 g per kg. */
  usualDoseGPerKg: sourced(5, 'memory', `${PRACTICE}; 4-6 g per kg by manufacturers (FAO 1984 ch. 6, read)`),
  /** Clean water to moisten a kilogram of seed where no sticker is used. */
  waterMlPerKg: sourced(15, 'memory', PRACTICE),
  /** Clean water in which one sachet of sticker is dissolved; it moistens the seed in place of plain water. */
  waterMlPerStickerSachet: sourced(300, 'memory', PRACTICE),
  /** What a level bottle cap holds: weigh ten caps of the product at hand. */
  gramsPerLevelCap: sourced(5, 'memory', PRACTICE),
  millilitresPerLevelCap: sourced(5, 'memory', PRACTICE),
  /** Coated seed is spread in the shade on a clean sheet this long. */
  dryingMinutes: sourced({ least: 30, most: 60 }, 'memory', PRACTICE),
  /** Above it inoculant loses its force fast: a handling breach, whatever a model says. */
  damageCelsius: sourced(40, 'memory', PRACTICE),
  storageCelsius: sourced(30, 'read', `keep below, not frozen, out of the sun; ${GRDC}`),
  sowWithinHours: sourced(24, 'read', `${GRDC}; Embrapa`),
  openedPackDays: sourced(14, 'read', `peat, resealed; ${GRDC}`),
  /** Part of the cells that stay on the seed when it is coated. */
  adhesion: sourced(1, 'assumed', 'no loss at coating; an upper bound'),
} as const satisfies Readonly<Record<string, Sourced<unknown>>>;

/** Gain by inoculation as a part of the yield, for weighing purchases only, where no on-farm mean was published for a crop. */
export const UNPUBLISHED_RESPONSE: Sourced<number> = sourced(
  0.1,
  'assumed',
  'about the mean of soybean over 2082 on-farm trials (van Heerwaarden et al. 2018, 9.5 percent)',
);

/** Gain of inoculating again, as a part of the gain on land never inoculated: so much a year after, whole after so many years. */
export const GAIN_AFTER_ROTATION = sourced(
  { afterOneYear: 0.4, wholeAfterYears: 4 },
  'assumed',
  'rhizobia persist in the soil for some years after a crop that they nodulate; no published figure taken',
);
