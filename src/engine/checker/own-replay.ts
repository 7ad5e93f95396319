import { log10 } from '../numerics/elementary.ts';
import { RESPONSES_OVERLAP } from '../reference/phosphorus-response.ts';
import { at, type CheckedCase } from './checked-case.ts';
import {
  bagsResponseOf,
  earlierPerT,
  grainNitrogenPerT,
  keptWhenLate,
  nitrogenPerHa,
  residuePerHa,
  responseOf,
  yieldOf,
} from './own-harvest.ts';
import type { OwnAir } from './own-heat.ts';
import type { OwnLand } from './own-land.ts';
import { lifeWorth, rhizobiaLeft } from './own-pack-life.ts';
import { sowingDays } from './own-season.ts';
import type { OwnVisit } from './own-visits.ts';
import { TOLERANCE } from './tolerances.ts';

/** Sums over the members, to be divided by their number. Worth is NaN where a price it needs is missing. */
export interface OwnTotals {
  valueHa: number;
  nitrogenKg: number;
  programmeNitrogenKg: number;
  inoculationNitrogenKg: number;
  netNitrogenKg: number;
  residueNitrogenKg: number;
  earlierNitrogenKg: number;
  grainT: number;
  programmeGrainT: number;
  inoculationGrainT: number;
  programmeGrainWorth: number;
  inoculationGrainWorth: number;
  phosphorusNitrogenKg: number;
  phosphorusGrainT: number;
}

/** Grain that is left of nothing by rounding, t. */
const NOISE_T = 1e-9;

export const noTotals = (): OwnTotals => ({
  valueHa: 0,
  nitrogenKg: 0,
  programmeNitrogenKg: 0,
  inoculationNitrogenKg: 0,
  netNitrogenKg: 0,
  residueNitrogenKg: 0,
  earlierNitrogenKg: 0,
  grainT: 0,
  programmeGrainT: 0,
  inoculationGrainT: 0,
  programmeGrainWorth: 0,
  inoculationGrainWorth: 0,
  phosphorusNitrogenKg: 0,
  phosphorusGrainT: 0,
});

/** What one community and crop gives, expected over the members; per member the nitrogen and the hectares reached. */
export interface OwnYield {
  readonly seedInTimeHa: number;
  /** Least and most by the tolerance on rhizobia per seed. */
  readonly reachedHa: readonly [number, number];
  /** Nitrogen fixed on them. */
  readonly atMostKg: readonly [number, number];
  readonly log10PerSeed: number;
  readonly totals: OwnTotals;
  readonly nitrogenOfMember: readonly number[];
  readonly reachedOfMember: readonly number[];
}

export type VisitIn = (stop: number, member: number) => OwnVisit;

const BEFORE: OwnVisit = { day: Number.NEGATIVE_INFINITY, isHeld: false };

/**
 * Plays the land of a community and crop through every member at the central figures: sown on the first good day after
 * the last goods came in that member's weather, less yield when late, more with live inoculant, nitrogen from the grain.
 */
export function playLand(
  c: CheckedCase,
  air: OwnAir,
  visitIn: VisitIn,
  community: number,
  crop: number,
  zones: readonly { readonly zone: number; readonly part: number }[],
  land: OwnLand,
): OwnYield | null {
  const members = c.plan.season.memberYears.length;
  const name = at(c.scenario.crops, crop);
  const floor = log10(c.scenario.policy.cellsPerSeedFloor);
  const nitrogenOfMember = new Array<number>(members).fill(0);
  const reachedOfMember = new Array<number>(members).fill(0);
  const totals = noTotals();
  const response = responseOf(c, community, name);
  const base = yieldOf(c, name);
  const price = c.scenario.prices.grainPerT[name] ?? Number.NaN;
  let [inTime, least, most, leastKg, mostKg, logSum, logHa] = [0, 0, 0, 0, 0, 0, 0];
  for (const { zone, part } of zones) {
    const days = sowingDays(c, zone < 0 ? c.scenario.zones.length : zone, crop);
    if (!days) return null;
    for (let member = 0; member < members; member++) {
      const first = at(days.first, member) - c.scenario.planning.from;
      const last = at(days.last, member) - c.scenario.planning.from;
      if (Number.isNaN(first) || Number.isNaN(last)) continue;
      const come = (stop: number) => (stop < 0 ? BEFORE : visitIn(stop, member));
      for (const { hectares, stop } of land.seed)
        if (Math.max(first, come(stop).day + 1) <= last) inTime += hectares * part;
      const without = { ha: land.ownHa * part, kg: land.ownHa * part * nitrogenPerHa(name, base) };
      let [kg, grain] = [0, 0];
      for (const portion of land.portions) {
        const ha = portion.hectares * part;
        const { day, isHeld } = come(portion.stop);
        if (ha === 0 || Number.isNaN(day)) continue;
        const sown = Math.max(first, day + 1);
        const left = portion.inoculant
          ? rhizobiaLeft(c, air, member, community, crop, portion.inoculant, day, sown)
          : Number.NaN;
        const kept = keptWhenLate(c, name, sown - last);
        const worth = portion.inoculant && !isHeld ? lifeWorth(left, floor) : 0;
        const isFed = portion.bags !== null && come(portion.bags.stop).day + 1 <= sown;
        const fedT = portion.bags && isFed ? bagsResponseOf(c, portion.bags.lot, name) : 0;
        const unfed = Math.max(0, base + response * worth) * kept;
        const smaller = Math.max(0, Math.min(fedT, response * worth));
        const more = fedT - RESPONSES_OVERLAP.value * smaller;
        const perHa = fedT === 0 ? unfed : Math.max(0, base + response * worth + more) * kept;
        const fixed = ha * nitrogenPerHa(name, perHa);
        kg += fixed;
        grain += ha * perHa;
        totals.residueNitrogenKg += ha * residuePerHa(name, perHa);
        totals.phosphorusGrainT += ha * (perHa - unfed);
        totals.phosphorusNitrogenKg += fixed - ha * nitrogenPerHa(name, unfed);
        if (!portion.inoculant) continue;
        totals.valueHa += ha * kept * worth;
        const plain = (base + fedT) * kept;
        const moreT = ha * (perHa - plain);
        totals.inoculationGrainT += moreT;
        if (Math.abs(moreT) > NOISE_T) totals.inoculationGrainWorth += moreT * price;
        totals.inoculationNitrogenKg += fixed - ha * nitrogenPerHa(name, plain);
        [logSum, logHa] = [logSum + ha * left, logHa + ha];
        if (sown > last || isHeld) continue;
        if (left >= floor + TOLERANCE.log10PerSeed) [least, leastKg] = [least + ha, leastKg + fixed];
        if (left >= floor - TOLERANCE.log10PerSeed) [most, mostKg] = [most + ha, mostKg + fixed];
        if (left >= floor) reachedOfMember[member] = at(reachedOfMember, member) + ha;
      }
      nitrogenOfMember[member] = at(nitrogenOfMember, member) + kg;
      const moreGrain = grain - without.ha * base;
      totals.nitrogenKg += kg;
      totals.programmeNitrogenKg += kg - without.kg;
      totals.grainT += grain;
      totals.programmeGrainT += moreGrain;
      if (Math.abs(moreGrain) > NOISE_T) totals.programmeGrainWorth += moreGrain * price;
      totals.netNitrogenKg += kg - grain * grainNitrogenPerT(name);
      totals.earlierNitrogenKg += grain * earlierPerT(name);
    }
  }
  const mean = (sum: number) => (members > 0 ? sum / members : 0);
  return {
    seedInTimeHa: mean(inTime),
    reachedHa: [mean(least), mean(most)],
    atMostKg: [mean(leastKg), mean(mostKg)],
    log10PerSeed: logHa > 0 ? logSum / logHa : Number.NaN,
    totals,
    nitrogenOfMember,
    reachedOfMember,
  };
}
