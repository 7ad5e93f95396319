import type { Plan } from '../vocabulary/plan.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { finding } from './finding.ts';
import { isForbidden } from './own-decisions.ts';
import { handedKg, toldHandedKg } from './own-handed.ts';
import type { OwnReach } from './own-reach.ts';
import { seedKgOfLot, seedKgOfPack } from './own-stock.ts';
import { TOLERANCE } from './tolerances.ts';

type Proof = Plan['allocation']['proofs'][number];

/**
 * Proofs of the fair share. Any prices that satisfy the inequalities bound the least share from above (weak duality of
 * linear programs), so nothing has to be solved again: the prices are put in, and the shares are compared with the bound.
 */
export function checkFairness(c: CheckedCase, reach: OwnReach): readonly Problem[] {
  if (c.scenario.policy.fairness !== 'equal-share') return [];
  return [
    ...c.plan.allocation.proofs.flatMap((proof, i) => [
      ...checkData(c, proof, i),
      ...checkPrices(c, reach, proof, i),
      ...checkShares(c, proof, i),
    ]),
    ...checkCovered(c, reach),
  ];
}

/** Prices an absolute step may be off by, in shares. */
const PRICE_STEP = 1e-6;

function checkData(c: CheckedCase, proof: Proof, row: number): readonly Problem[] {
  const found: Problem[] = [];
  const { grants, lots } = c.plan.allocation;
  const contingency = 1 + c.scenario.policy.contingencyPercent / 100;
  if (c.scenario.policy.equalOver === 'community')
    proof.shareRows.forEach((shareRow, i) => {
      const need = askedKg(c, shareRow, proof.commodity) * contingency * priorityWeight(c, shareRow);
      if (Math.abs(at(proof.needKg, i) - need) > 0.01 + TOLERANCE.relative * need)
        found.push(finding('E8501', 'allocation.proofs.needKg', row, at(proof.needKg, i), need));
    });
  proof.keptKg.forEach((kept, i) => {
    const before = handedKg(c, at(proof.shareRows, i), proof.commodity);
    const given = before + (c.plan.rounds < 2 ? 0 : givenKg(c, at(proof.shareRows, i), proof.commodity));
    if (kept > given + 0.01) found.push(finding('E8501', 'allocation.proofs.keptKg', row, kept, given));
  });
  const rows = new Set(proof.shareRows);
  if (rows.size !== proof.shareRows.length || new Set(proof.lots).size !== proof.lots.length)
    found.push(finding('E8501', 'allocation.proofs.shareRows', row, 'a row or lot twice', 'each once'));
  const crops = c.scenario.crops.length;
  let [due, told, slack] = [0, 0, 0.01];
  proof.lots.forEach((lot, i) => {
    const kg = seedKgOfLot(c, lot);
    const offered = at(lots.packsOffered, lot) * kg;
    if (at(proof.offeredKg, i) > offered + 0.01 + TOLERANCE.relative * offered)
      found.push(finding('E8501', 'allocation.proofs.offeredKg', row, at(proof.offeredKg, i), offered));
    due += offered;
    told += at(proof.offeredKg, i);
    grants.lot.forEach((other, grant) => {
      const shareRow = c.shareRowOf.get(at(grants.community, grant) * crops + at(grants.crop, grant));
      if (other !== lot || shareRow === undefined || rows.has(shareRow)) return;
      due -= at(grants.packs, grant) * kg;
      slack += kg;
    });
  });
  due -= promisedKg(c, proof);
  if (told < due - slack - TOLERANCE.relative * due)
    found.push(finding('E8501', 'allocation.proofs.offeredKg', row, told, due));
  if (proof.roundingKg > largestRounding(c, proof) + 0.01)
    found.push(finding('E8501', 'allocation.proofs.roundingKg', row, proof.roundingKg, largestRounding(c, proof)));
  return found;
}

/** How much more than those who weigh least a community is to have by its priority. */
function priorityWeight(c: CheckedCase, shareRow: number): number {
  const weights = c.scenario.policy.priorityWeights;
  if (weights.length === 0) return 1;
  const { priority } = at(c.scenario.communities, at(c.plan.allocation.shares.community, shareRow));
  return at(weights, Math.min(weights.length, Math.max(1, priority)) - 1) / Math.min(...weights);
}

/** What the proof says was promised to its rows, at most what they are given; nothing is promised in a first round. */
function promisedKg(c: CheckedCase, proof: Proof): number {
  if (c.plan.rounds < 2) return 0;
  return proof.shareRows.reduce((sum, shareRow, i) => {
    const promised = at(proof.keptKg, i) - toldHandedKg(c, shareRow, proof.commodity);
    return sum + Math.min(Math.max(0, promised), givenKg(c, shareRow, proof.commodity));
  }, 0);
}

/** Seed that the programme is asked to bring, or seed to be coated, kg, without contingency. */
export function askedKg(c: CheckedCase, shareRow: number, commodity: 'seed' | 'inoculant'): number {
  const { shares } = c.plan.allocation;
  if (commodity === 'inoculant') return at(shares.inoculantNeedSeedKg, shareRow);
  const { needs } = c.plan;
  const key = at(shares.community, shareRow) * c.scenario.crops.length + at(shares.crop, shareRow);
  return (c.needsOf.get(key) ?? []).reduce(
    (sum, row) => sum + Math.max(0, at(needs.seedKg, row) - at(needs.ownSeedKg, row)),
    0,
  );
}

/** One largest pack for each depot and set of crops that the pool's lots make up. */
function largestRounding(c: CheckedCase, proof: Proof): number {
  const largest = new Map<string, number>();
  for (const lot of proof.lots) {
    const product = lotAndProduct(c, lot)?.product;
    if (!product) continue;
    const key = `${at(c.depotOfLot, lot)} ${product.crops.join(' ')}`;
    largest.set(key, Math.max(largest.get(key) ?? 0, seedKgOfLot(c, lot)));
  }
  return [...largest.values()].reduce((sum, kg) => sum + kg, 0);
}

function checkPrices(c: CheckedCase, reach: OwnReach, proof: Proof, row: number): readonly Problem[] {
  const found: Problem[] = [];
  const needs = proof.needKg.reduce((sum, kg, i) => sum + kg * at(proof.communityPrices, i), 0);
  if (needs + proof.capPrice < 1 - PRICE_STEP || proof.capPrice < 0)
    found.push(finding('E8502', 'allocation.proofs.communityPrices', row, needs + proof.capPrice, 'at least 1'));
  const { shares, lots } = c.plan.allocation;
  const priceOfLot = new Map(proof.lots.map((lot, i) => [lot, at(proof.lotPrices, i)]));
  proof.shareRows.forEach((shareRow, i) => {
    const [community, crop] = [at(shares.community, shareRow), at(shares.crop, shareRow)];
    const price = at(proof.communityPrices, i);
    c.scenario.lots.forEach((_, lot) => {
      if (at(lots.packsOffered, lot) === 0 || !mayGo(c, reach, lot, community, crop, proof.commodity)) return;
      const lotPrice = priceOfLot.get(lot);
      if (lotPrice === undefined) {
        if (price > PRICE_STEP)
          found.push(finding('E8501', 'allocation.proofs.lots', row, 'without it', c.plan.ids.lots[lot]));
      } else if (lotPrice < price * (1 - 1e-9))
        found.push(finding('E8502', 'allocation.proofs.lotPrices', row, lotPrice, `at least ${price}`));
    });
  });
  const bound =
    proof.lotPrices.reduce((sum, price, i) => sum + price * at(proof.offeredKg, i), 0) +
    proof.keptKg.reduce((sum, kg, i) => sum + kg * at(proof.communityPrices, i), 0) +
    proof.capPrice;
  if (Math.abs(proof.bound - bound) > PRICE_STEP + TOLERANCE.relative * bound)
    found.push(finding('E8503', 'allocation.proofs.bound', row, proof.bound, bound));
  return found;
}

/** May packs of a lot go to a community for a crop: label, decisions, and a way from its depot. */
export function mayGo(
  c: CheckedCase,
  reach: OwnReach,
  lot: number,
  community: number,
  crop: number,
  kind: 'seed' | 'inoculant',
): boolean {
  const product = lotAndProduct(c, lot)?.product;
  if (!product || product.kind !== kind || seedKgOfPack(product) <= 0) return false;
  if (!product.crops.includes(at(c.scenario.crops, crop)) || isForbidden(c, community, crop, kind, lot)) return false;
  return reach.depotReaches(at(c.depotOfLot, lot), at(c.plan.places.communityPlace, community));
}

/** Every share stands at the bound, up to whole packs. */
function checkShares(c: CheckedCase, proof: Proof, row: number): readonly Problem[] {
  const found: Problem[] = [];
  // Rows that are full before the others, by a decision or by their weight, take stock off the bound's tightness.
  const { equalOver, priorityWeights } = c.scenario.policy;
  const isHeldBack =
    equalOver === 'grower' ||
    priorityWeights.length > 0 ||
    c.decisions.decisions.some((d) => d.kind === 'floor' || d.kind === 'fix' || d.kind === 'cap');
  if (proof.leastShare > proof.bound + 1e-5 || (!isHeldBack && proof.leastShare < Math.min(1, proof.bound) - 1e-4))
    found.push(finding('E8503', 'allocation.proofs.leastShare', row, proof.leastShare, proof.bound));
  if (c.scenario.policy.equalOver !== 'community') return found;
  proof.shareRows.forEach((shareRow, i) => {
    const need = at(proof.needKg, i);
    const given = givenKg(c, shareRow, proof.commodity) + toldHandedKg(c, shareRow, proof.commodity);
    const least = proof.leastShare * need - proof.roundingKg;
    if (given < least - 0.01 - TOLERANCE.relative * need)
      found.push(
        finding(
          'E8504',
          'allocation.shares',
          shareRow,
          given / need,
          `${proof.leastShare} of ${need} kg, less one pack`,
        ),
      );
  });
  return found;
}

/** Seed that the packs given to a row are or coat, kg, whole packs counted in full. */
export function givenKg(c: CheckedCase, shareRow: number, kind: 'seed' | 'inoculant'): number {
  const { shares, grants } = c.plan.allocation;
  const rows =
    c.grantsOf.get(at(shares.community, shareRow) * c.scenario.crops.length + at(shares.crop, shareRow)) ?? [];
  return rows.reduce((sum, grant) => {
    const product = lotAndProduct(c, at(grants.lot, grant))?.product;
    return product?.kind === kind ? sum + at(grants.packs, grant) * seedKgOfLot(c, at(grants.lot, grant)) : sum;
  }, 0);
}

/** Whoever is short of stock that could reach him stands in a proof, unless a decision or the road holds him out of it. */
function checkCovered(c: CheckedCase, reach: OwnReach): readonly Problem[] {
  const { shares, shortfalls, proofs, lots } = c.plan.allocation;
  const found: Problem[] = [];
  shortfalls.shareRow.forEach((shareRow, i) => {
    const commodity = at(shortfalls.commodity, i);
    if (at(shortfalls.reason, i) !== 'stock-short' || at(shortfalls.shortKg, i) < 0.01) return;
    if (proofs.some((proof) => proof.commodity === commodity && proof.shareRows.includes(shareRow))) return;
    const [community, crop] = [at(shares.community, shareRow), at(shares.crop, shareRow)];
    const could = c.scenario.lots.some(
      (_, lot) => at(lots.packsOffered, lot) > 0 && mayGo(c, reach, lot, community, crop, commodity),
    );
    if (could && askedKg(c, shareRow, commodity) > 0.01)
      found.push(
        finding('E8501', 'allocation.proofs.shareRows', null, 'no proof', `row ${shareRow + 1} of the shares`),
      );
  });
  return found;
}
