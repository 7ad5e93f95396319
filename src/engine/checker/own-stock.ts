import { HOT_LIMIT_CELSIUS } from '../reference/boxes.ts';
import { cropFact } from '../reference/crops.ts';
import { parseIsoDate } from '../vocabulary/calendar.ts';
import type { LotReason } from '../vocabulary/reasons.ts';
import type { Product } from '../vocabulary/supply.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { sowingDays } from './own-season.ts';
import { LOT_REASON_LEAST_CHANCE } from './tolerances.ts';

/** Kilograms of seed that a pack is (seed) or coats (inoculant, sticker); 0 where the label states no dose. */
export function seedKgOfPack(product: Product): number {
  if (product.kind === 'seed') return product.packG / 1000;
  return product.doseGPerKg ? product.packG / product.doseGPerKg : 0;
}

/** The same for a lot: seed below the germination that rates reckon with is sown thicker and serves less. */
export function seedKgOfLot(c: CheckedCase, lotIndex: number): number {
  const pair = lotAndProduct(c, lotIndex);
  if (!pair) return 0;
  const { lot, product } = pair;
  const crop = c.scenario.crops.find((one) => product.crops.includes(one));
  if (product.kind !== 'seed' || lot.germinationPercent === null || !crop) return seedKgOfPack(product);
  const reference = 100 * cropFact(crop, 'referenceGermination', c.scenario.assumptions).value;
  return lot.germinationPercent >= reference
    ? seedKgOfPack(product)
    : (seedKgOfPack(product) * lot.germinationPercent) / reference;
}

/**
 * Why a lot may not be given, from its own data; empty where it may. `chance`: of sowing before it expires.
 *
 * @param count rhizobia per gram as planning begins; NaN where nobody tells
 */
export function reasonsAgainst(
  c: CheckedCase,
  lotIndex: number,
  count: number,
): { readonly reasons: readonly LotReason[]; readonly chance: number } {
  const pair = lotAndProduct(c, lotIndex);
  if (!pair) return { reasons: ['no-crop-planned'], chance: Number.NaN };
  const { lot, product } = pair;
  const { planning } = c.scenario;
  const planned = new Set(c.plan.needs.crop);
  const chance = chanceBefore(c, product, lot.expires);
  const reasons: LotReason[] = [];
  if (at(c.depotOfLot, lotIndex) < 0) reasons.push('unknown-depot');
  if (!c.scenario.crops.some((crop, i) => product.crops.includes(crop) && planned.has(i)))
    reasons.push('no-crop-planned');
  if (lot.expires < planning.from) reasons.push('expired');
  else if (chance < LOT_REASON_LEAST_CHANCE) reasons.push('expires-before-sowing');
  if (ownHold(c, lotIndex).isWhole) reasons.push('on-hold');
  if (lot.status === 'awaiting') reasons.push('awaiting');
  if (product.kind === 'inoculant' && !(count >= product.minCountPerG)) reasons.push('count-below-minimum');
  if (
    product.kind === 'seed' &&
    lot.germinationPercent !== null &&
    lot.germinationPercent < product.minGerminationPercent
  )
    reasons.push('germination-below-minimum');
  if (product.treatedSeed && product.inoculantAllowed !== true) reasons.push('treated-seed-not-for-inoculant');
  if (lot.availableFrom !== null && lot.availableFrom > planning.to) reasons.push('available-too-late');
  return { reasons, chance };
}

/** Packs of a lot that are on hold in the store, and whether all are: the decisions from their end back to the last clearing. */
export function ownHold(c: CheckedCase, lotIndex: number): { readonly isWhole: boolean; readonly packs: number } {
  const lot = at(c.scenario.lots, lotIndex);
  const own = c.decisions.decisions.filter(
    (d) => (d.kind === 'hold' || d.kind === 'flag-cleared') && d.lotId === lot.id,
  );
  const last = own.findLastIndex(({ kind }) => kind === 'flag-cleared');
  const since = own.slice(last + 1).flatMap((d) => (d.kind === 'hold' ? [d.packs ?? Number.POSITIVE_INFINITY] : []));
  const cleared = own.flatMap((d) =>
    d.kind === 'flag-cleared' && d.on !== undefined ? [parseIsoDate(d.on) ?? -1] : [],
  );
  const isLiving = lotAndProduct(c, lotIndex)?.product.kind === 'inoculant';
  const hot = c.scenario.handovers
    .filter(({ lotId, boxC }) => isLiving && lotId === lot.id && (boxC ?? 0) >= HOT_LIMIT_CELSIUS.value)
    .filter(({ date }) => cleared.every((day) => date > day));
  const packs = [...since, ...hot.map(({ returnedPacks }) => returnedPacks)].reduce((sum, one) => sum + one, 0);
  const isWhole = since.includes(Number.POSITIVE_INFINITY) || (lot.status === 'on_hold' && last < 0);
  return { isWhole, packs };
}

/** Share of seasons, over the land planned for the product's crops, whose first sowing day comes before a day. */
function chanceBefore(c: CheckedCase, product: Product, expires: number): number {
  const { needs } = c.plan;
  let whole = 0;
  let before = 0;
  const part = new Map<string, number>();
  needs.plannedHa.forEach((ha, row) => {
    const crop = at(needs.crop, row);
    if (!product.crops.includes(at(c.scenario.crops, crop))) return;
    const zone = at(needs.zone, row) < 0 ? c.scenario.zones.length : at(needs.zone, row);
    const key = `${zone} ${crop}`;
    part.set(key, (part.get(key) ?? 0) + ha);
  });
  for (const [key, ha] of part) {
    const [zone, crop] = key.split(' ').map(Number) as [number, number];
    const known = sowingDays(c, zone, crop)?.first.filter((day) => !Number.isNaN(day)) ?? [];
    if (known.length === 0) continue;
    whole += ha;
    before += (ha * known.filter((day) => day < expires).length) / known.length;
  }
  return whole > 0 ? before / whole : Number.NaN;
}
