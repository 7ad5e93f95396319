import { CROP_FACTS, cropFact } from '../reference/crops.ts';
import { INOCULATION_PRACTICE } from '../reference/inoculation-practice.ts';
import type { Crop } from '../vocabulary/crops.ts';
import type { Problem, ProblemCode } from '../vocabulary/problems.ts';
import type { Product } from '../vocabulary/supply.ts';
import { at, type CheckedCase } from './checked-case.ts';
import { finding } from './finding.ts';
import { TOLERANCE } from './tolerances.ts';

/** Hectares, seed, own seed, inoculant and the rest, from the community's file, its zone shares and the labels. */
export function checkNeeds(c: CheckedCase): readonly Problem[] {
  const { needs } = c.plan;
  const found: Problem[] = [];
  const practices = c.scenario.crops.map((crop) => practiceOf(c, crop));
  const seen = new Map<string, number>();
  needs.community.forEach((community, row) => {
    const [zone, crop] = [at(needs.zone, row), at(needs.crop, row)];
    const key = `${community} ${zone} ${crop}`;
    seen.set(key, (seen.get(key) ?? 0) + 1);
    const share = at(c.zonesOf, community).find((part) => part.zone === zone)?.share ?? 0;
    const planned = plannedOf(c, community, crop);
    const practice = at(practices, crop);
    const compare = (code: ProblemCode, column: keyof typeof needs, due: number, step: number) => {
      const told = at(needs[column], row);
      if (Math.abs(told - due) > step + TOLERANCE.relative * Math.abs(due))
        found.push(finding(code, `needs.${column}`, row, told, due));
    };
    const seedKg = planned.plannedHa * (planned.rate ?? practice.rate) * share;
    const contingency = 1 + c.scenario.policy.contingencyPercent / 100;
    compare('E8301', 'plannedHa', planned.plannedHa * share, TOLERANCE.hectares);
    compare('E8303', 'seedKg', seedKg, TOLERANCE.kilograms);
    compare('E8304', 'ownSeedKg', planned.ownSeedKg * share, TOLERANCE.kilograms);
    const product = c.scenario.products[at(needs.product, row)];
    const isReference = practice.inoculants.length === 0 ? !product : product && practice.inoculants.includes(product);
    if (!isReference)
      found.push(
        finding(
          'E8305',
          'needs.product',
          row,
          product?.id ?? 'none',
          practice.inoculants.map(({ id }) => id).join(' or '),
        ),
      );
    const doseG = product?.doseGPerKg ?? 0;
    compare('E8305', 'inoculantG', seedKg * doseG, 0.02);
    compare('E8306', 'packsNeeded', product ? ((seedKg * doseG) / product.packG) * contingency : 0, 2e-4);
    const sticker = product ? practice.sticker : null;
    const sachets = sticker ? (seedKg * (sticker.doseGPerKg ?? 0)) / sticker.packG : 0;
    compare('E8307', 'stickerPacks', sachets * contingency, 2e-4);
    const sachetL = INOCULATION_PRACTICE.waterMlPerStickerSachet.value / 1000;
    compare('E8307', 'waterL', sticker ? sachets * sachetL : (seedKg * (product?.waterMlPerKg ?? 0)) / 1000, 2e-3);
    compare('E8307', 'fertiliserKg', planned.plannedHa * share * practice.fertiliserKgPerHa, TOLERANCE.kilograms);
  });
  return [...found, ...checkRows(c, seen)];
}

/** Exactly one row for each community, zone and crop with planned land. */
function checkRows(c: CheckedCase, seen: ReadonlyMap<string, number>): readonly Problem[] {
  const found: Problem[] = [];
  c.scenario.communities.forEach((_, community) => {
    for (const { zone } of at(c.zonesOf, community))
      c.scenario.crops.forEach((__, crop) => {
        const due = plannedOf(c, community, crop).plannedHa > 0 ? 1 : 0;
        const told = seen.get(`${community} ${zone} ${crop}`) ?? 0;
        if (told !== due) found.push(finding('E8302', 'needs.community', null, told, due));
      });
  });
  return found;
}

export function plannedOf(c: CheckedCase, community: number, crop: number) {
  const plan = at(c.scenario.communities, community).crops.find((one) => one.crop === c.scenario.crops[crop]);
  return { plannedHa: plan?.plannedHa ?? 0, ownSeedKg: plan?.ownSeedKg ?? 0, rate: plan?.seedRateKgPerHa ?? null };
}

interface OwnPractice {
  readonly rate: number;
  /** Inoculants any of which may be the reference: those tied for the most seed coated by cleared stock. */
  readonly inoculants: readonly Product[];
  readonly sticker: Product | null;
  readonly fertiliserKgPerHa: number;
}

function practiceOf(c: CheckedCase, crop: Crop): OwnPractice {
  const coats = (kind: Product['kind']) => (product: Product) =>
    product.kind === kind && product.doseGPerKg ? product.packG / product.doseGPerKg : null;
  const fertiliser = mostStocked(c, crop, (product) =>
    product.kind === 'fertiliser' && product.rateKgPerHa !== null ? product.packG : null,
  );
  return {
    rate: rateOf(c, crop),
    inoculants: mostStocked(c, crop, coats('inoculant')),
    sticker: mostStocked(c, crop, coats('sticker'))[0] ?? null,
    fertiliserKgPerHa: fertiliser[0]?.rateKgPerHa ?? 0,
  };
}

/** Products for a crop with most in cleared, unexpired stock, by what a pack is worth; all of them where several tie. */
function mostStocked(c: CheckedCase, crop: Crop, worthOf: (product: Product) => number | null): readonly Product[] {
  const stock = c.scenario.products.map((product) => {
    const worth = product.crops.includes(crop) ? worthOf(product) : null;
    const packs = c.scenario.lots
      .filter(
        (lot) => lot.productId === product.id && lot.status === 'cleared' && lot.expires >= c.scenario.planning.from,
      )
      .reduce((sum, lot) => sum + lot.packs, 0);
    return worth === null ? -1 : worth * packs;
  });
  const most = Math.max(-1, ...stock);
  return most < 0 ? [] : c.scenario.products.filter((_, p) => stock[p] === most);
}

/** The programme's own rate, else its stand, else the rate on the seed most in stock, else the reference. */
function rateOf(c: CheckedCase, crop: Crop): number {
  const { assumptions } = c.scenario;
  const own = assumptions[`${crop}.seedRateKgPerHa`];
  if (own !== undefined) return own;
  const stand = assumptions[`${crop}.plantsPerM2`];
  if (stand !== undefined) {
    const percent =
      100 * cropFact(crop, 'referenceGermination', assumptions).value * cropFact(crop, 'emergence', assumptions).value;
    return (stand * thousandSeedG(c, crop)) / percent;
  }
  const seed = mostStocked(c, crop, (product) =>
    product.kind === 'seed' && product.seedRateKgPerHa !== null ? product.packG : null,
  );
  return seed[0]?.seedRateKgPerHa ?? CROP_FACTS[crop].seedRateKgPerHa.value;
}

/** Grams of a thousand seeds: the programme's own, else that of the seed most in stock, else the reference. */
export function thousandSeedG(c: CheckedCase, crop: Crop): number {
  const own = c.scenario.assumptions[`${crop}.thousandSeedG`];
  if (own !== undefined) return own;
  const seed = mostStocked(c, crop, (product) =>
    product.kind === 'seed' && product.thousandSeedG !== null ? product.packG : null,
  );
  return seed[0]?.thousandSeedG ?? CROP_FACTS[crop].thousandSeedG.value;
}
