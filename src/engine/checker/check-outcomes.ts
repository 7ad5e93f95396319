import { quantile } from '../numerics/quantile.ts';
import type { Problem, ProblemCode } from '../vocabulary/problems.ts';
import type { Range } from '../vocabulary/stage-results/outcomes.ts';
import { checkMoney } from './check-money.ts';
import { plannedOf } from './check-needs.ts';
import { checkRanges } from './check-ranges.ts';
import { at, type CheckedCase } from './checked-case.ts';
import { finding, type Tell } from './finding.ts';
import type { OwnAir } from './own-heat.ts';
import { coverLand, type Handed, handedGoods, type OwnLand } from './own-land.ts';
import { noTotals, type OwnTotals, playLand, type VisitIn } from './own-replay.ts';
import { TOLERANCE } from './tolerances.ts';

/** The central headline and the figures under it, played again from deliveries, members and reference data. */
export function checkOutcomes(c: CheckedCase, air: OwnAir, visitIn: VisitIn): readonly Problem[] {
  const found: Problem[] = [];
  const tell: Tell = (code, column, row, told, due, step) => {
    if (told === null || !(Math.abs(told - due) <= step + TOLERANCE.outcomesRelative * Math.abs(due)))
      found.push(finding(code, `outcomes.${column}`, row, told, due));
  };
  const goods = handedGoods(c);
  const sums = checkCrops(c, air, visitIn, goods, tell, found);
  checkZones(c, goods, tell);
  checkHeadline(c, goods, sums, tell, found);
  checkSeasons(c, sums, tell);
  return [...found, ...checkRanges(c)];
}

interface Sums {
  readonly nitrogenOfMember: number[];
  readonly reachedOfMember: number[];
  readonly totals: OwnTotals;
  /** Least and most, means over the members. */
  readonly reachedHa: [number, number];
  readonly atMostKg: [number, number];
  readonly farmers: [number, number];
  fertilisedHa: number;
  isWhole: boolean;
}

function checkCrops(
  c: CheckedCase,
  air: OwnAir,
  visitIn: VisitIn,
  goods: ReadonlyMap<number, readonly Handed[]>,
  tell: Tell,
  found: Problem[],
): Sums {
  const { shares } = c.plan.allocation;
  const { crops } = c.plan.outcomes;
  const members = c.plan.season.memberYears.length;
  const count = Math.max(1, members);
  const sums: Sums = {
    nitrogenOfMember: new Array<number>(members).fill(0),
    reachedOfMember: new Array<number>(members).fill(0),
    totals: noTotals(),
    reachedHa: [0, 0],
    atMostKg: [0, 0],
    farmers: [0, 0],
    fertilisedHa: 0,
    isWhole: true,
  };
  shares.community.forEach((community, row) => {
    const crop = at(shares.crop, row);
    const key = community * c.scenario.crops.length + crop;
    const land = landOf(c, row, goods.get(key) ?? []);
    tell('E8951', 'crops.seedHa', row, at(crops.seedHa, row), land.seedHa, TOLERANCE.outcomesHa);
    tell('E8951', 'crops.inoculatedHa', row, at(crops.inoculatedHa, row), land.inoculatedHa, TOLERANCE.outcomesHa);
    sums.fertilisedHa += land.fertilisedHa;
    const needRows = c.needsOf.get(key) ?? [];
    const planned = needRows.reduce((sum, need) => sum + at(c.plan.needs.plannedHa, need), 0);
    const zones = needRows.map((need) => ({
      zone: at(c.plan.needs.zone, need),
      part: at(c.plan.needs.plannedHa, need) / planned,
    }));
    const own = playLand(c, air, visitIn, community, crop, zones, land);
    if (!own) {
      sums.isWhole = false;
      return;
    }
    own.nitrogenOfMember.forEach((kg, m) => {
      sums.nitrogenOfMember[m] = at(sums.nitrogenOfMember, m) + kg;
      sums.reachedOfMember[m] = at(sums.reachedOfMember, m) + at(own.reachedOfMember, m);
    });
    for (const name of TOTALS) sums.totals[name] += own.totals[name];
    for (const end of [0, 1] as const) {
      sums.reachedHa[end] += own.reachedHa[end];
      sums.atMostKg[end] += own.atMostKg[end];
      sums.farmers[end] += own.reachedHa[end] * farmersPerHa(c, community);
    }
    tell('E8951', 'crops.seedInTimeHa', row, at(crops.seedInTimeHa, row), own.seedInTimeHa, TOLERANCE.outcomesHa);
    const [least, most] = own.reachedHa;
    const reached = at(crops.reachedHa, row);
    const slack = TOLERANCE.outcomesHa + TOLERANCE.outcomesRelative * most;
    if (reached < least - slack || reached > most + slack)
      found.push(finding('E8951', 'outcomes.crops.reachedHa', row, reached, most));
    tell(
      'E8952',
      'crops.nitrogenKg',
      row,
      at(crops.nitrogenKg, row),
      own.totals.nitrogenKg / count,
      TOLERANCE.outcomesHa * 100,
    );
    tell('E8952', 'crops.grainT', row, at(crops.grainT, row), own.totals.grainT / count, TOLERANCE.outcomesHa);
    const told = crops.log10PerSeed[row] ?? null;
    if (land.inoculatedHa > TOLERANCE.outcomesHa && Number.isFinite(own.log10PerSeed))
      tell('E8956', 'crops.log10PerSeed', row, told, own.log10PerSeed, TOLERANCE.log10PerSeed);
  });
  return sums;
}

function landOf(c: CheckedCase, row: number, goods: readonly Handed[]): OwnLand {
  const { shares } = c.plan.allocation;
  const { plannedHa, ownSeedKg } = plannedOf(c, at(shares.community, row), at(shares.crop, row));
  return coverLand(plannedHa, at(shares.seedNeedKg, row), ownSeedKg, at(shares.seedThereKg, row), goods);
}

/** Zones sum what lies in them: land, seed and packs handed over, hectares reached. */
function checkZones(c: CheckedCase, goods: ReadonlyMap<number, readonly Handed[]>, tell: Tell): void {
  const { zones, crops } = c.plan.outcomes;
  const { needs } = c.plan;
  const cropCount = c.scenario.crops.length;
  zones.zone.forEach((zone, row) => {
    let [planned, inoculated, seedKg, packs] = [0, 0, 0, 0];
    needs.zone.forEach((of, need) => {
      if (of !== zone) return;
      const key = at(needs.community, need) * cropCount + at(needs.crop, need);
      const whole = (c.needsOf.get(key) ?? []).reduce((sum, other) => sum + at(needs.plannedHa, other), 0);
      const part = at(needs.plannedHa, need) / whole;
      planned += at(needs.plannedHa, need);
      inoculated += part * at(crops.inoculatedHa, c.shareRowOf.get(key) ?? -1);
      for (const handed of goods.get(key) ?? []) {
        if (handed.kind === 'seed') seedKg += part * handed.kg;
        if (handed.kind === 'inoculant') packs += part * handed.packs;
      }
    });
    tell('E8954', 'zones.plannedHa', row, at(zones.plannedHa, row), planned, TOLERANCE.outcomesHa);
    tell('E8954', 'zones.seedKg', row, at(zones.seedKg, row), seedKg, TOLERANCE.outcomesHa * 100);
    tell('E8954', 'zones.inoculantPacks', row, at(zones.inoculantPacks, row), packs, TOLERANCE.outcomesHa * 100);
    tell('E8954', 'zones.shareMet', row, at(zones.shareMet, row), planned > 0 ? inoculated / planned : 0, 1e-5);
  });
  const due = new Set(needs.zone);
  const toldRows = zones.zone.filter((zone) => due.has(zone));
  tell('E8954', 'zones.zone', null, new Set(toldRows).size, due.size, 0);
  tell('E8954', 'zones.zone', null, toldRows.length, due.size, 0);
}

const total = (column: readonly number[]) => column.reduce((sum, value) => sum + value, 0);

function checkHeadline(
  c: CheckedCase,
  goods: ReadonlyMap<number, readonly Handed[]>,
  sums: Sums,
  tell: Tell,
  found: Problem[],
): void {
  const { headline, crops, zones } = c.plan.outcomes;
  const { shares } = c.plan.allocation;
  const step = TOLERANCE.outcomesHa * (1 + shares.community.length / 50);
  tell('E8954', 'headline.plannedHa', null, headline.plannedHa, total(zones.plannedHa), step);
  tell('E8954', 'headline.plannedHa', null, headline.plannedHa, total(shares.plannedHa), step);
  tell('E8954', 'headline.seedHa', null, headline.seedHa, total(crops.seedHa), step);
  tell('E8954', 'headline.inoculatedHa', null, headline.inoculatedHa, total(crops.inoculatedHa), step);
  tell('E8951', 'headline.fertilisedHa', null, headline.fertilisedHa, sums.fertilisedHa, step);
  tell('E8954', 'zones.reachedHa', null, total(zones.reachedHa), total(crops.reachedHa), step);
  const reached = new Set([...goods.keys()].map((key) => Math.floor(key / c.scenario.crops.length)));
  tell('E8954', 'headline.communitiesReached', null, headline.communitiesReached, reached.size, 0);
  tell('E8954', 'headline.communities', null, headline.communities, new Set(shares.community).size, 0);
  if (sums.isWhole && sums.nitrogenOfMember.length > 0) {
    checkMiddle(found, 'E8952', 'headline.nitrogenKg', headline.nitrogenKg, sums.nitrogenOfMember);
    checkMiddle(found, 'E8951', 'headline.reachedHa', headline.reachedHa, sums.reachedOfMember);
    checkCentral(c, sums, tell);
  }
  checkMoney(c, goods, tell, found);
}

/** A community's farmers over all that it plans. */
function farmersPerHa({ scenario, plan }: CheckedCase, community: number): number {
  const { shares } = plan.allocation;
  const planned = shares.plannedHa.reduce((sum, ha, row) => sum + (shares.community[row] === community ? ha : 0), 0);
  return planned > 0 ? (at(scenario.communities, community).farmers ?? 0) / planned : 0;
}

const TOTALS = Object.keys(noTotals()) as (keyof OwnTotals)[];

/** The headline at the central figures, mean over the members: within a thousandth of the checker's own. */
function checkCentral(c: CheckedCase, { totals, reachedHa, atMostKg, farmers }: Sums, tell: Tell): void {
  const { central } = c.plan.outcomes.headline;
  const members = c.plan.season.memberYears.length;
  for (const name of TOTALS) {
    const [told, due] = [central[name], totals[name] / members];
    // No price, no worth.
    if (Number.isNaN(due) && told === null) continue;
    const code = name.endsWith('Worth') ? 'E8955' : name.endsWith('Ha') ? 'E8951' : 'E8952';
    tell(code, `headline.central.${name}`, null, told, due, name.endsWith('Kg') ? 0.1 : 0.01);
  }
  // Land whose rhizobia are at the floor to within the tolerance may count or not.
  const within = (told: number | null, [least, most]: readonly [number, number]) =>
    Math.min(most, Math.max(least, told ?? 0));
  tell('E8951', 'headline.central.reachedHa', null, central.reachedHa, within(central.reachedHa, reachedHa), 0.01);
  const people = within(central.farmersReached, farmers);
  tell('E8951', 'headline.central.farmersReached', null, central.farmersReached, people, 0.1);
  const atMost = within(central.inoculationAtMostKg, atMostKg);
  tell('E8952', 'headline.central.inoculationAtMostKg', null, central.inoculationAtMostKg, atMost, 0.1);
}

/**
 * The middle of a range is taken over members and drawn parameters; the draws are centred on the central figures, so it
 * cannot lie far from the middle of the members at those figures.
 */
function checkMiddle(
  found: Problem[],
  code: ProblemCode,
  column: string,
  told: Range,
  members: readonly number[],
): void {
  const least = quantile(members, 0.25) * (1 - TOLERANCE.middleRelative) - TOLERANCE.outcomesHa;
  const most = quantile(members, 0.75) * (1 + TOLERANCE.middleRelative) + TOLERANCE.outcomesHa;
  if (told.p50 < least || told.p50 > most)
    found.push(finding(code, `outcomes.${column}.p50`, null, told.p50, quantile(members, 0.5)));
}

/**
 * Past seasons at the central figures: one row a member, its hectares as the checker's own replay finds them, and losses
 * that add up to what was supplied.
 */
function checkSeasons(c: CheckedCase, sums: Sums, tell: Tell): void {
  const { seasons, headline } = c.plan.outcomes;
  const { memberYears } = c.plan.season;
  tell('E8954', 'seasons.year', null, seasons.year.length, memberYears.length, 0);
  seasons.year.forEach((year, row) => {
    const reached = at(seasons.reachedHa, row);
    tell('E8954', 'seasons.year', row, year, memberYears[row] ?? Number.NaN, 0);
    const lost = ['noOnsetHa', 'lateHa', 'hotHa', 'waitingHa', 'weakHa'] as const;
    const supplied = lost.reduce((sum, name) => sum + at(seasons[name], row), reached);
    tell('E8954', 'seasons.reachedHa', row, supplied, headline.inoculatedHa, TOLERANCE.outcomesHa * 10);
    const own = at(sums.reachedOfMember, row);
    if (sums.isWhole)
      tell('E8951', 'seasons.reachedHa', row, reached, own, own * TOLERANCE.middleRelative + TOLERANCE.outcomesHa);
  });
}
