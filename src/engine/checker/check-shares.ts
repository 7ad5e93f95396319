import type { Problem } from '../vocabulary/problems.ts';
import { askedKg, givenKg } from './check-fairness.ts';
import { plannedOf } from './check-needs.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { finding } from './finding.ts';
import { haOfLot, seedPerHa } from './own-bags.ts';
import { holdOn, isForbidden } from './own-decisions.ts';
import { handedKg, toldHandedKg } from './own-handed.ts';
import { seedKgOfLot, seedKgOfPack } from './own-stock.ts';
import { TOLERANCE } from './tolerances.ts';

/** Shares, shortfalls and decisions, from the grants. */
export function checkShares(c: CheckedCase): readonly Problem[] {
  const { shares } = c.plan.allocation;
  return [
    ...checkServes(c),
    ...shares.community.flatMap((_, row) => [...checkRow(c, row), ...checkShortfall(c, row), ...checkHolds(c, row)]),
    ...checkEveryRow(c),
  ];
}

/** Sums of rounded rows: half a step for each term, told once more. */
const STEP = TOLERANCE.kilograms * 3;
const differs = (told: number, due: number, step = STEP) =>
  Math.abs(told - due) > step + TOLERANCE.relative * Math.abs(due);

function checkServes(c: CheckedCase): readonly Problem[] {
  const { grants } = c.plan.allocation;
  return grants.lot.flatMap((lot, grant) => {
    const row = c.shareRowOf.get(at(grants.community, grant) * c.scenario.crops.length + at(grants.crop, grant));
    const land = haOfLot(c, lot);
    const perPack = land > 0 && row !== undefined ? land * seedPerHa(c, row) : seedKgOfLot(c, lot);
    const most = at(grants.packs, grant) * perPack;
    const told = at(grants.servesSeedKg, grant);
    return told > most + STEP + TOLERANCE.relative * most
      ? [finding('E8407', 'allocation.grants.servesSeedKg', grant, told, most)]
      : [];
  });
}

function servedKg(c: CheckedCase, row: number, kind: 'seed' | 'inoculant'): number {
  const { shares, grants } = c.plan.allocation;
  const rows = c.grantsOf.get(at(shares.community, row) * c.scenario.crops.length + at(shares.crop, row)) ?? [];
  return rows.reduce((sum, grant) => {
    const isKind = lotAndProduct(c, at(grants.lot, grant))?.product.kind === kind;
    return isKind ? sum + at(grants.servesSeedKg, grant) : sum;
  }, 0);
}

function checkRow(c: CheckedCase, row: number): readonly Problem[] {
  const { shares } = c.plan.allocation;
  const found: Problem[] = [];
  const [community, crop] = [at(shares.community, row), at(shares.crop, row)];
  const planned = plannedOf(c, community, crop);
  const need = needSum(c, community, crop);
  const [seedKg, coatedKg] = [servedKg(c, row, 'seed'), servedKg(c, row, 'inoculant')];
  const toCoatKg = Math.min(need, seedKg + planned.ownSeedKg + toldHandedKg(c, row, 'seed'));
  const compare = (column: keyof typeof shares, due: number, step = STEP) => {
    const told = at(shares[column], row);
    if (differs(told, due, step)) found.push(finding('E8408', `allocation.shares.${column}`, row, told, due));
  };
  compare('plannedHa', planned.plannedHa, TOLERANCE.hectares);
  compare('seedNeedKg', need);
  compare('ownSeedKg', planned.ownSeedKg);
  compare('seedGivenKg', seedKg);
  // Between what the need still lacks of it and all that can be there: whole bags may reach beyond the need.
  const there = at(shares.seedThereKg, row);
  compare('seedThereKg', Math.min(Math.max(there, toldHandedKg(c, row, 'seed')), handedKg(c, row, 'seed')));
  compare('inoculantGivenSeedKg', coatedKg);
  if (!isOutOfSeason(c, row)) compare('inoculantNeedSeedKg', toCoatKg);
  compare('seedShare', need > 0 ? Math.min(1, (seedKg + planned.ownSeedKg) / need) : 1, TOLERANCE.share * 5);
  compare('inoculantShare', need > 0 ? Math.min(1, coatedKg / need) : 1, TOLERANCE.share * 5);
  for (const kind of ['seed', 'inoculant'] as const) {
    const asked = askedKg(c, row, kind) * (1 + c.scenario.policy.contingencyPercent / 100);
    const most = Math.max(asked, heldLowKg(c, row, kind), kind === 'inoculant' ? promisedKg(c, row) : 0);
    const before = toldHandedKg(c, row, kind);
    if (before > handedKg(c, row, kind) + STEP)
      found.push(
        finding('E8413', 'allocation.shortfalls', row, `${before} kg handed over before`, handedKg(c, row, kind)),
      );
    const given = givenKg(c, row, kind) + before;
    if (given > most + largestPackKg(c, row, kind) + STEP)
      found.push(finding('E8409', 'allocation.grants', row, given, most + largestPackKg(c, row, kind)));
  }
  return found;
}

/** In a second round packs that were served stay as promised, though the seed they were meant for is left behind. */
function promisedKg(c: CheckedCase, row: number): number {
  const { shortfalls, shares } = c.plan.allocation;
  const isLeftBehind = shortfalls.shareRow.some(
    (of, i) => of === row && at(shortfalls.commodity, i) === 'seed' && at(shortfalls.reason, i) === 'not-delivered',
  );
  return c.plan.rounds > 1 && isLeftBehind ? at(shares.seedNeedKg, row) : 0;
}

function needSum(c: CheckedCase, community: number, crop: number): number {
  const { needs } = c.plan;
  return (c.needsOf.get(community * c.scenario.crops.length + crop) ?? []).reduce(
    (sum, row) => sum + at(needs.seedKg, row),
    0,
  );
}

function isOutOfSeason(c: CheckedCase, row: number): boolean {
  const { shortfalls } = c.plan.allocation;
  return shortfalls.shareRow.some((of, i) => of === row && at(shortfalls.reason, i) === 'window-missed');
}

function largestPackKg(c: CheckedCase, row: number, kind: string): number {
  const crop = at(c.scenario.crops, at(c.plan.allocation.shares.crop, row));
  const packs = c.scenario.products.filter((product) => product.kind === kind && product.crops.includes(crop));
  return Math.max(0, ...packs.map(seedKgOfPack));
}

/** What remains of the need after the packs given is shown, to the kilogram. */
function checkShortfall(c: CheckedCase, row: number): readonly Problem[] {
  const { shares, shortfalls } = c.plan.allocation;
  const found: Problem[] = [];
  for (const commodity of ['seed', 'inoculant'] as const) {
    const told = shortfalls.shareRow.reduce(
      (sum, of, i) => (of === row && at(shortfalls.commodity, i) === commodity ? sum + at(shortfalls.shortKg, i) : sum),
      0,
    );
    const due =
      commodity === 'seed'
        ? askedKg(c, row, 'seed') - servedKg(c, row, 'seed')
        : at(shares.seedNeedKg, row) - servedKg(c, row, 'inoculant');
    if (differs(told, Math.max(0, due), STEP * 3))
      found.push(finding('E8412', 'allocation.shortfalls.shortKg', row, told, Math.max(0, due)));
  }
  return found;
}

/** Seed that a floor or fix asks for, which may be more than the need. */
function heldLowKg(c: CheckedCase, row: number, kind: 'seed' | 'inoculant'): number {
  const { shares } = c.plan.allocation;
  const hold = holdOn(c, at(shares.community, row), at(shares.crop, row), kind);
  return hold ? hold.low * at(shares.seedNeedKg, row) : 0;
}

function checkHolds(c: CheckedCase, row: number): readonly Problem[] {
  const { shares, grants } = c.plan.allocation;
  const [community, crop] = [at(shares.community, row), at(shares.crop, row)];
  const found: Problem[] = [];
  for (const grant of c.grantsOf.get(community * c.scenario.crops.length + crop) ?? []) {
    const lot = at(grants.lot, grant);
    const kind = lotAndProduct(c, lot)?.product.kind ?? 'seed';
    if (isForbidden(c, community, crop, kind, lot))
      found.push(finding('E8410', 'allocation.grants', grant, at(c.scenario.lots, lot).id, 'none of it'));
  }
  for (const kind of ['seed', 'inoculant'] as const) {
    const hold = holdOn(c, community, crop, kind);
    if (!hold) continue;
    const own = kind === 'seed' ? at(shares.ownSeedKg, row) : 0;
    const most = Math.max(0, hold.high * at(shares.seedNeedKg, row) - own);
    const before = toldHandedKg(c, row, kind);
    if (before > handedKg(c, row, kind) + STEP)
      found.push(
        finding('E8413', 'allocation.shortfalls', row, `${before} kg handed over before`, handedKg(c, row, kind)),
      );
    // What was handed over before a decision cannot be undone by it: only what is given now is judged.
    const given = givenKg(c, row, kind);
    const more = Math.max(0, most - before);
    if (given > more + largestPackKg(c, row, kind) + STEP || (more === 0 && given > 0))
      found.push(finding('E8410', 'allocation.grants', row, `${given} kg`, `at most ${more} kg`));
    const least = Math.min(askedKg(c, row, kind), hold.low * at(shares.seedNeedKg, row) - own);
    const isTold = c.plan.problems.some(({ code }) => code === 'E5021');
    const short = given + before < least - largestPackKg(c, row, kind) - STEP;
    if (short && !isTold) found.push(finding('E8410', 'allocation.grants', row, `${given} kg`, `at least ${least} kg`));
  }
  return found;
}

/** One row for each community and crop with planned land, and no grant outside them. */
function checkEveryRow(c: CheckedCase): readonly Problem[] {
  const found: Problem[] = [];
  const crops = c.scenario.crops.length;
  let due = 0;
  c.scenario.communities.forEach((_, community) => {
    for (let crop = 0; crop < crops; crop++) {
      const planned = plannedOf(c, community, crop).plannedHa > 0;
      const key = community * crops + crop;
      if (planned) due++;
      if (planned !== c.shareRowOf.has(key))
        found.push(
          finding(
            'E8408',
            'allocation.shares',
            null,
            planned ? 'no row' : 'a row',
            c.scenario.communities[community]?.id,
          ),
        );
      if (!planned && c.grantsOf.has(key)) found.push(finding('E8409', 'allocation.grants', null, 'packs', 0));
    }
  });
  if (c.plan.allocation.shares.community.length !== due)
    found.push(finding('E8408', 'allocation.shares', null, `${c.plan.allocation.shares.community.length} rows`, due));
  return found;
}
