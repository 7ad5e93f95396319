import { INOCULATION_PRACTICE } from '../../reference/inoculation-practice.ts';
import type { FigureInput, FigureProvenance, Sourced, Status } from '../../vocabulary/provenance.ts';
import type { CropPractice } from './settle-practice.ts';

const SHARE = input('share of the community in the zone', 'figure:places.shares.share', '1', 'derived');
const PLANNED = input('planned hectares', 'file:communities.geojson:<crop>_ha', 'ha', 'given');
const OWN_RATE = input(
  'seed rate of the community',
  'file:communities.geojson:<crop>_seed_rate_kg_ha',
  'kg/ha',
  'given',
);
const OWN_SEED = input('farmer-saved seed', 'file:communities.geojson:<crop>_own_seed_kg', 'kg', 'given');
const DOSE = input('dose on the label', 'file:products.csv:dose_g_per_kg', 'g/kg', 'given');
const PACK = input('pack size', 'file:products.csv:pack_size', 'g', 'given');
const CONTINGENCY = input('contingency', 'file:scenario.json:policy.contingencyPercent', 'percent', 'given');
const RATE = input('fertiliser rate', 'file:products.csv:rate_kg_ha', 'kg/ha', 'given');
const WATER = input('water on the label, else 15 mL', 'file:products.csv:water_ml_per_kg', 'mL/kg', 'given');
const STICKER_DOSE = input('dose of the sticker', 'file:products.csv:dose_g_per_kg', 'g/kg', 'given');

/** How every figure of this stage was made, one entry each. */
export function describeNeeds(practices: readonly CropPractice[]): readonly FigureProvenance[] {
  const rates = practices.map(({ crop, seedRate }) => reference(`seed rate, ${crop}`, 'kg/ha', seedRate));
  const weights = practices.map(({ crop, thousandSeedG }) =>
    reference(`thousand-seed weight, ${crop}`, 'g', thousandSeedG),
  );
  const sachet = reference('water for a sachet of sticker', 'mL', INOCULATION_PRACTICE.waterMlPerStickerSachet);
  const seed = input('seed to be sown', 'figure:needs.seedKg', 'kg', weakest(rates.map((rate) => rate.status)));
  return [
    figure('plannedHa', 'ha', 'planned hectares * share, parts adding up exactly', [PLANNED, SHARE]),
    figure('seedKg', 'kg', 'planned hectares * seed rate * share', [PLANNED, SHARE, OWN_RATE, ...rates]),
    figure('ownSeedKg', 'kg', 'farmer-saved seed * share', [OWN_SEED, SHARE]),
    figure('programmeSeedKg', 'kg', 'max(0, seed to be sown - farmer-saved seed)', [seed, OWN_SEED]),
    figure('product', 'index', 'inoculant for the crop whose cleared lots coat most seed', [
      DOSE,
      input('packs in cleared lots', 'file:lots.csv:packs', 'packs', 'given'),
    ]),
    figure('inoculantG', 'g', 'seed to be sown * dose', [seed, DOSE]),
    figure('packsNeeded', 'packs', 'seed * dose / pack size * (1 + contingency / 100)', [
      seed,
      DOSE,
      PACK,
      CONTINGENCY,
    ]),
    figure('stickerPacks', 'packs', 'seed * dose of the sticker / its pack size * (1 + contingency / 100)', [
      seed,
      STICKER_DOSE,
      PACK,
      CONTINGENCY,
    ]),
    figure('waterL', 'L', 'with sticker: sachets * 0.3 L; without: seed * water / 1000', [
      seed,
      WATER,
      STICKER_DOSE,
      sachet,
    ]),
    figure('fertiliserKg', 'kg', 'planned hectares * rate of the fertiliser', [PLANNED, SHARE, RATE]),
    figure('seedsPerKg', 'seeds/kg', '1 000 000 / thousand-seed weight', weights),
  ];
}

function figure(name: string, unit: string, formula: string, inputs: readonly FigureInput[]): FigureProvenance {
  const status = weakest(inputs.map((one) => one.status));
  return { figure: `needs.${name}`, unit, formula, inputs, status, source: 'arithmetic on the inputs named' };
}

function input(name: string, from: string, unit: string, status: Status): FigureInput {
  return { name, from, unit, status, source: from.replace(/^[a-z]+:/, '') };
}

function reference(name: string, unit: string, fact: Sourced<number>): FigureInput {
  const from = fact.status === 'given' ? `file:${fact.source}` : `reference:${name}`;
  return { name, from, unit, value: fact.value, status: fact.status, source: fact.source };
}

/** A figure made by arithmetic is at best derived, and no better known than its weakest input. */
function weakest(statuses: readonly Status[]): Status {
  return statuses.includes('assumed') ? 'assumed' : statuses.includes('memory') ? 'memory' : 'derived';
}
