import { CROP_FACTS } from '../../reference/crops.ts';
import { CROPS } from '../../vocabulary/crops.ts';
import type { TableRecords } from '../../vocabulary/records.ts';
import type { PackUnit, Product, ProductKind } from '../../vocabulary/supply.ts';
import { byContent, byNumber, byText, inOrder, type Order } from './canonical-order.ts';
import { number, TEXT, whole, word, wordList, YES_NO } from './cell-kinds.ts';
import {
  MIN_COUNT_CARRIER,
  MIN_COUNT_LIQUID,
  MIN_GERMINATION_PERCENT,
  NOT_TREATED,
  ORDER_MULTIPLE,
  WATER_ML_PER_KG,
} from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepOnePerId } from './keep-one-per-id.ts';
import { keepRows, openTable } from './open-records.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

const FORMAT =
  'product_id*, kind*, crops*, carrier, carrier_sterile, pack_size*, pack_unit*, dose_g_per_kg, dose_ml_per_kg, ' +
  'count_per_g, count_per_ml, min_count_per_g, max_storage_c, opened_pack_days, water_ml_per_kg, grams_per_level_cap, ' +
  'thousand_seed_g, seed_rate_kg_ha, min_germination, shelled, treated_seed, inoculant_allowed, sow_within_h, rate_kg_ha, ' +
  'p_percent, price_per_pack, lead_days, order_multiple, litres_per_pack';

const KINDS: readonly ProductKind[] = ['inoculant', 'seed', 'sticker', 'fertiliser'];
const GRAMS_PER_UNIT: Readonly<Record<PackUnit, number>> = { g: 1, kg: 1000, mL: 1, L: 1000 };
const POSITIVE = number({ above: 0 });
const AMOUNT = number({ atLeast: 0 });
const PERCENT = number({ atLeast: 0, atMost: 100 });

/** products.csv. A dose or count per millilitre, or a pack in mL or L, takes 1 g per mL. */
export function readProducts(report: IntakeReport, records: TableRecords | null): KeptRow<Product>[] {
  return keepOnePerId(report, 'product_id', keepRows(openTable(report, records, FORMAT), readProduct));
}

function readProduct(row: RowReader): KeptRow<Product> | null {
  const kind = row.required('kind', word(KINDS));
  const crops = row.required('crops', wordList(CROPS));
  const packSize = row.required('pack_size', POSITIVE);
  const packUnit = row.required('pack_unit', word(['g', 'kg', 'mL', 'L']));
  noteMillilitres(row, packUnit);
  return row.kept<Product>({
    id: row.required('product_id', TEXT),
    kind,
    crops,
    carrier: row.orNull('carrier', TEXT),
    carrierSterile: row.orNull('carrier_sterile', YES_NO),
    packSize,
    packUnit,
    packG: packSize * GRAMS_PER_UNIT[packUnit],
    ...readInoculant(row, kind, packUnit),
    ...readSeed(row, kind, crops),
    maxStorageC: row.orNull('max_storage_c', number({ atLeast: -20, atMost: 60 })),
    openedPackDays: row.orNull('opened_pack_days', AMOUNT),
    gramsPerLevelCap: row.orNull('grams_per_level_cap', POSITIVE),
    sowWithinH: row.orNull('sow_within_h', POSITIVE),
    rateKgPerHa: readFertiliserRate(row, kind),
    phosphorusPercent: kind === 'fertiliser' ? readPhosphorus(row) : null,
    pricePerPack: row.orNull('price_per_pack', AMOUNT),
    leadDays: row.orNull('lead_days', AMOUNT),
    orderMultiple: row.orDefault('order_multiple', whole({ atLeast: 1 }), ORDER_MULTIPLE),
    litresPerPack: row.orNull('litres_per_pack', POSITIVE),
  });
}

/** What an inoculant's or a sticker's label says of the dose; of the count only inoculants speak. */
function readInoculant(row: RowReader, kind: ProductKind, packUnit: PackUnit) {
  const dosed = kind === 'inoculant' || kind === 'sticker';
  const doseGPerKg = dosed ? gramsBeforeMillilitres(row, 'dose_g_per_kg', 'dose_ml_per_kg') : null;
  if (dosed && doseGPerKg === null && !row.isRejected) row.reject('E1602', { column: 'dose_g_per_kg' });
  if (kind !== 'inoculant') return { doseGPerKg, countPerG: null, minCountPerG: 0, waterMlPerKg: 0 };
  const countPerG = gramsBeforeMillilitres(row, 'count_per_g', 'count_per_ml');
  if (countPerG === null) row.note('E1603', { column: 'count_per_g' });
  const liquid = row.text('carrier').toLowerCase() === 'liquid' || packUnit === 'mL' || packUnit === 'L';
  return {
    doseGPerKg,
    countPerG,
    minCountPerG: row.orDefault('min_count_per_g', POSITIVE, liquid ? MIN_COUNT_LIQUID : MIN_COUNT_CARRIER),
    waterMlPerKg: row.orDefault('water_ml_per_kg', AMOUNT, WATER_ML_PER_KG),
  };
}

function gramsBeforeMillilitres(row: RowReader, perG: string, perMl: string): number | null {
  const grams = row.orNull(perG, POSITIVE);
  const millilitres = row.orNull(perMl, POSITIVE);
  if (grams !== null && millilitres !== null) row.note('E1605', { column: perMl, value: row.text(perMl) });
  return grams ?? millilitres;
}

/** A treated-seed mark that cannot be read sets the row aside: it decides whether people may handle the seed. */
function readSeed(row: RowReader, kind: ProductKind, crops: Product['crops']) {
  const thousandSeedG = row.orNull('thousand_seed_g', POSITIVE);
  const weights = { thousandSeedG, seedRateKgPerHa: row.orNull('seed_rate_kg_ha', POSITIVE) };
  if (kind !== 'seed') {
    return { ...weights, minGerminationPercent: 0, shelled: null, treatedSeed: false, inoculantAllowed: null };
  }
  if (thousandSeedG !== null) noteHundredSeedWeight(row, thousandSeedG, crops);
  return {
    ...weights,
    minGerminationPercent: row.orDefault('min_germination', PERCENT, MIN_GERMINATION_PERCENT),
    shelled: row.orNull('shelled', YES_NO),
    treatedSeed: row.orDefault('treated_seed', YES_NO, NOT_TREATED, 'row'),
    inoculantAllowed: row.orNull('inoculant_allowed', YES_NO, 'row'),
  };
}

/** The weight of a hundred seeds is a tenth of that of a thousand: below a third of the lightest on record it is likely one. */
function noteHundredSeedWeight(row: RowReader, thousandSeedG: number, crops: Product['crops']): void {
  for (const crop of crops) {
    const usualLow = CROP_FACTS[crop].thousandSeedLowG.value;
    if (thousandSeedG * 3 >= usualLow) continue;
    row.note('E1601', { column: 'thousand_seed_g', value: row.text('thousand_seed_g'), facts: { crop, usualLow } });
  }
}

function readFertiliserRate(row: RowReader, kind: ProductKind): number | null {
  if (kind !== 'fertiliser') return null;
  const rate = row.orNull('rate_kg_ha', POSITIVE);
  if (rate === null && !row.isRejected) row.reject('E1604', { column: 'rate_kg_ha', value: row.text('rate_kg_ha') });
  return rate;
}

/** Pure monoammonium phosphate is 30.974 / 115.03 = 26.9 % phosphorus (IUPAC atomic masses): more is likely P2O5. */
const MOST_PHOSPHORUS_PERCENT = 27;

function readPhosphorus(row: RowReader): number | null {
  const percent = row.orNull('p_percent', PERCENT);
  if (percent !== null && percent > MOST_PHOSPHORUS_PERCENT)
    row.note('E1606', { column: 'p_percent', value: row.text('p_percent') });
  return percent;
}

function noteMillilitres(row: RowReader, packUnit: PackUnit): void {
  const perMl = ['dose_ml_per_kg', 'count_per_ml'].filter((column) => row.text(column) !== '');
  const columns = packUnit === 'mL' || packUnit === 'L' ? ['pack_unit', ...perMl] : perMl;
  if (columns.length > 0) row.note('E1600', { column: columns.join(', '), value: row.text('product_id') });
}

export const PRODUCT_ORDER: Order<Product> = inOrder(
  byNumber((product) => KINDS.indexOf(product.kind)),
  byText((product) => product.crops.map((crop) => CROPS.indexOf(crop)).join()),
  byContent(({ id, ...content }) => content),
  byText((product) => product.id),
);
