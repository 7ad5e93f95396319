import { isoDate, parseIsoDate } from '../../../src/engine/vocabulary/calendar.ts';
import type { Decision, Decisions } from '../../../src/engine/vocabulary/decisions.ts';
import type { Plan } from '../../../src/engine/vocabulary/plan.ts';
import type { ProblemCode } from '../../../src/engine/vocabulary/problems.ts';
import type { Scenario } from '../../../src/engine/vocabulary/scenario.ts';
import { dayNumber, minuteOfDay } from '../../../src/engine/vocabulary/units.ts';

/**
 * Ways to spoil a plan that holds, and the code that must appear. Written for any plan: each looks for a row that suits it
 * and says no where there is none. The list stands in the README of the checker.
 */

export type Draft<T> = { -readonly [K in keyof T]: Draft<T[K]> };
export type PlanDraft = Draft<Plan>;

export interface Judged {
  readonly scenario: Scenario;
  readonly decisions: Decisions;
  readonly plan: unknown;
}

export interface Spoil {
  readonly name: string;
  readonly code: ProblemCode;
  /** Spoils a copy; false where the plan has no row that suits, an object where more than the plan changes. */
  readonly spoil: (plan: PlanDraft, scenario: Scenario, decisions: Decisions) => boolean | Partial<Judged>;
}

/** Spoils a copy of a plan; null where the plan has nothing to spoil in this way. */
export function applySpoil(spoil: Spoil, { scenario, decisions, plan }: Judged): Judged | null {
  const draft = structuredClone(plan) as PlanDraft;
  const done = spoil.spoil(draft, scenario, decisions);
  if (done === false) return null;
  return { scenario, decisions, plan: draft, ...(done === true ? {} : done) };
}

// ------------------------------------------------------------------------------------------------ looking for rows

const at = <T>(list: readonly T[], i: number): T => list[i] as T;
const where = <T>(list: readonly T[], is: (value: T, i: number) => boolean): number => list.findIndex(is);

/** Runs a spoil on the first row that suits. */
function onFirst<T>(list: readonly T[], is: (value: T, i: number) => boolean, spoil: (i: number) => void): boolean {
  const row = where(list, is);
  if (row < 0) return false;
  spoil(row);
  return true;
}

const set = <T>(list: T[], i: number, value: T): void => {
  list[i] = value;
};
/** Changes members of an object in place. */
const change = <T extends object>(target: T, patch: Partial<T>): true => {
  Object.assign(target, patch);
  return true;
};
const emptyTable = (table: object): true => {
  for (const column of Object.values(table) as unknown[][]) column.length = 0;
  return true;
};
const scale = (list: number[], i: number, by: number): void => {
  list[i] = at(list, i) * by;
};
const later = (date: string, days: number): string => isoDate(dayNumber((parseIsoDate(date) ?? 0) + days));

const productOf = (s: Scenario, lot: number) => s.products.find(({ id }) => id === at(s.lots, lot).productId);
const kindOf = (s: Scenario, lot: number) => productOf(s, lot)?.kind;
const lotWith = (p: PlanDraft, reason: string) =>
  where(p.allocation.lots.reasons, (reasons) => reasons.includes(reason as never));

/** Gives the first suited grant to another lot. */
function giveLot(p: PlanDraft, s: Scenario, lot: number): boolean {
  const kind = lot < 0 ? undefined : kindOf(s, lot);
  return (
    lot >= 0 &&
    onFirst(
      p.allocation.grants.lot,
      (other) => kindOf(s, other) === kind,
      (i) => set(p.allocation.grants.lot, i, lot),
    )
  );
}

const heldBack = (name: string, reason: string): Spoil => ({
  name,
  code: 'E8402',
  spoil: (p, s) => giveLot(p, s, lotWith(p, reason)),
});

/** First stop that hands inoculant over. */
const coolStop = (p: PlanDraft) =>
  where(p.delivery.stops.loads, (loads) => loads.some((load) => at(p.delivery.loads.inoculantKg, load) > 0));

/** Moves every trip of a row's day to another date. */
function moveTrip(p: PlanDraft, trip: number, date: string): void {
  set(p.delivery.trips.date, trip, date);
}

/** First date with a test, from planning.from on. */
function dateWith(s: Scenario, is: (offset: number) => boolean): string | null {
  for (let offset = 0; s.planning.from + offset <= s.planning.to; offset++)
    if (is(offset)) return isoDate(dayNumber(s.planning.from + offset));
  return null;
}

const decide = (d: Decisions, decision: Decision): Decisions => ({ ...d, decisions: [...d.decisions, decision] });

/** A community and crop that is given packs of a kind. */
function grantOf(p: PlanDraft, s: Scenario, kind: 'seed' | 'inoculant') {
  const grant = where(p.allocation.grants.lot, (lot) => kindOf(s, lot) === kind);
  if (grant < 0) return null;
  return {
    grant,
    communityId: at(s.communities, at(p.allocation.grants.community, grant)).id,
    crop: at(s.crops, at(p.allocation.grants.crop, grant)),
    commodity: kind,
  };
}

/** Takes everything that is driven out of a plan. */
function leaveAllBehind(p: PlanDraft): void {
  const { trips, stops, loads } = p.delivery;
  for (const column of [...Object.values(trips), ...Object.values(stops)] as unknown[][]) column.length = 0;
  p.delivery.legs = [];
  p.delivery.unserved = {
    load: loads.consignment.map((_, load) => load),
    reason: loads.consignment.map(() => 'no-vehicle-day-left'),
    hectares: [...loads.hectares],
  };
}

/** Takes everything that is given out of a plan, and says that roads and vehicles are to blame. */
function giveNothing(p: PlanDraft, reason: 'stock-short' | 'not-delivered'): void {
  leaveAllBehind(p);
  const { grants, consignments, shares, shortfalls, packShares } = p.allocation;
  const emptied = [grants, consignments, shortfalls, packShares, p.delivery.loads, p.delivery.unserved];
  for (const column of emptied.flatMap((table) => Object.values(table)) as unknown[][]) column.length = 0;
  shares.community.forEach((_, row) => {
    const own = Math.min(at(shares.seedNeedKg, row), at(shares.ownSeedKg, row));
    set(shares.seedGivenKg, row, 0);
    set(shares.inoculantGivenSeedKg, row, 0);
    set(shares.inoculantNeedSeedKg, row, own);
    set(shares.seedShare, row, own / at(shares.seedNeedKg, row));
    set(shares.inoculantShare, row, 0);
    for (const commodity of ['seed', 'inoculant'] as const) {
      const short = commodity === 'seed' ? at(shares.seedNeedKg, row) - own : at(shares.seedNeedKg, row);
      shortfalls.shareRow.push(row);
      shortfalls.commodity.push(commodity);
      shortfalls.shortKg.push(short);
      shortfalls.hectares.push(0);
      shortfalls.reason.push(reason);
      shortfalls.product.push(-1);
    }
  });
}

// ------------------------------------------------------------------------------------------------ shape and identity

const SHAPE: readonly Spoil[] = [
  { name: 'another format name', code: 'E8001', spoil: (p) => change(p, { format: 'another/1' as never }) },
  { name: 'nothing at all', code: 'E8001', spoil: () => ({ plan: null }) },
  { name: 'text instead of a plan', code: 'E8001', spoil: () => ({ plan: 'a plan' }) },
  { name: 'a list instead of a plan', code: 'E8001', spoil: () => ({ plan: [] }) },
  { name: 'a part missing', code: 'E8002', spoil: (p) => Reflect.deleteProperty(p, 'delivery') },
  { name: 'a column missing', code: 'E8002', spoil: (p) => Reflect.deleteProperty(p.allocation.grants, 'packs') },
  { name: 'columns of unequal length', code: 'E8003', spoil: (p) => p.needs.seedKg.pop() !== undefined },
  {
    name: 'NaN for a number',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.needs.seedKg,
        () => true,
        (i) => set(p.needs.seedKg, i, Number.NaN),
      ),
  },
  {
    name: 'text for a number',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.needs.seedKg,
        () => true,
        (i) => set(p.needs.seedKg, i, '600' as never),
      ),
  },
  {
    name: 'negative packs',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.packs,
        () => true,
        (i) => set(p.allocation.grants.packs, i, -1),
      ),
  },
  {
    name: 'half a pack',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.packs,
        () => true,
        (i) => set(p.allocation.grants.packs, i, 0.5),
      ),
  },
  {
    name: 'a date that does not exist',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.date,
        () => true,
        (i) => set(p.delivery.trips.date, i, '2026-02-30'),
      ),
  },
  {
    name: 'an index outside its list',
    code: 'E8005',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.lot,
        () => true,
        (i) => set(p.allocation.grants.lot, i, 9999),
      ),
  },
  {
    name: 'a negative index',
    code: 'E8005',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.trip,
        () => true,
        (i) => set(p.delivery.stops.trip, i, -1),
      ),
  },
  { name: 'hash of another scenario', code: 'E8011', spoil: (p) => change(p, { scenarioSha256: 'f'.repeat(64 })) },
  {
    name: 'decisions changed since',
    code: 'E8012',
    spoil: (_, __, d) => ({ decisions: { ...d, sha256: 'e'.repeat(64) } }),
  },
  {
    name: 'ids swapped',
    code: 'E8013',
    spoil: (p) => p.ids.communities.length > 1 && p.ids.communities.reverse().length > 0,
  },
  { name: 'another season year', code: 'E8014', spoil: (p) => change(p.scenario, { seasonYear: p.scenario.seasonYear + 1 }) },
];

// ------------------------------------------------------------------------------------------------ places and season

const PLACES: readonly Spoil[] = [
  {
    name: 'area 1 % too large',
    code: 'E8101',
    spoil: (p) =>
      onFirst(
        p.places.communityAreaHa,
        (ha) => ha !== null,
        (i) => set(p.places.communityAreaHa, i, (at(p.places.communityAreaHa, i) ?? 0) * 1.01),
      ),
  },
  {
    name: 'zone shares that sum to 0.9',
    code: 'E8102',
    spoil: (p) =>
      onFirst(
        p.places.shares.share,
        () => true,
        (i) => scale(p.places.shares.share, i, 0.9),
      ),
  },
  {
    name: 'a community moved to another zone',
    code: 'E8103',
    spoil: (p, s) =>
      s.zones.length > 1 &&
      onFirst(
        p.places.shares.zone,
        () => true,
        (i) => set(p.places.shares.zone, i, (at(p.places.shares.zone, i) + 1) % s.zones.length),
      ),
  },
  {
    name: 'a hand-over place moved',
    code: 'E8104',
    spoil: (p) =>
      onFirst(
        p.places.placeLon,
        () => true,
        (i) => set(p.places.placeLon, i, at(p.places.placeLon, i) + 1),
      ),
  },
  {
    name: 'a community sent to another place',
    code: 'E8105',
    spoil: (p) =>
      p.ids.places.length > 1 &&
      onFirst(
        p.places.communityPlace,
        () => true,
        (i) => set(p.places.communityPlace, i, (at(p.places.communityPlace, i) + 1) % p.ids.places.length),
      ),
  },
  {
    name: 'a place said to be out of reach',
    code: 'E8106',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.place,
        () => true,
        (stop) => {
          p.places.unreachable.place.push(at(p.delivery.stops.place, stop));
          p.places.unreachable.vehicle.push(at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, stop)));
          p.places.unreachable.reason.push('no-road-within-reach');
        },
      ),
  },
];

const SEASON: readonly Spoil[] = [
  { name: 'another season', code: 'E8201', spoil: (p) => change(p.season, { seasonName: 'another' }) },
  {
    name: 'a station not in the file',
    code: 'E8201',
    spoil: (p) =>
      onFirst(
        p.season.stations,
        () => true,
        (i) => set(p.season.stations, i, 'nowhere'),
      ),
  },
  {
    name: 'a past season left out',
    code: 'E8202',
    spoil: (p) => {
      if (p.season.memberYears.length < 2) return false;
      p.season.memberYears.pop();
      p.season.memberOnset.length -= p.season.stations.length;
      return true;
    },
  },
  {
    name: 'onset of a member moved by ten days',
    code: 'E8203',
    spoil: (p) =>
      onFirst(
        p.season.memberOnset,
        (date) => date !== null,
        (i) => set(p.season.memberOnset, i, later(at(p.season.memberOnset, i) ?? '', 10)),
      ),
  },
  {
    name: 'median onset moved by a week',
    code: 'E8204',
    spoil: (p) =>
      onFirst(
        p.season.onset.p50,
        (date) => date !== null,
        (i) => set(p.season.onset.p50, i, later(at(p.season.onset.p50, i) ?? '', 7)),
      ),
  },
  {
    name: 'onset said to be confirmed',
    code: 'E8204',
    spoil: (p) =>
      onFirst(
        p.season.onset.status,
        (status) => status !== 'confirmed',
        (i) => set(p.season.onset.status, i, 'confirmed'),
      ),
  },
  {
    name: 'sowing window moved by a week',
    code: 'E8205',
    spoil: (p) =>
      onFirst(
        p.season.windows.firstOffsetDays,
        () => true,
        (i) => set(p.season.windows.firstOffsetDays, i, at(p.season.windows.firstOffsetDays, i) + 7),
      ),
  },
  {
    name: 'first sowing day moved by a week',
    code: 'E8205',
    spoil: (p) =>
      onFirst(
        p.season.windows.firstP50,
        (date) => date !== null,
        (i) => set(p.season.windows.firstP50, i, later(at(p.season.windows.firstP50, i) ?? '', 7)),
      ),
  },
  {
    name: 'every road said to be passable',
    code: 'E8206',
    spoil: (p) => p.season.roadState.some((state) => state > 0) && p.season.roadState.fill(0).length > 0,
  },
  {
    name: 'a rest day said to be worked',
    code: 'E8207',
    spoil: (p) =>
      onFirst(
        p.season.workday,
        (worked) => worked === 0,
        (i) => set(p.season.workday, i, 1),
      ),
  },
  {
    name: 'maximum 5 K lower',
    code: 'E8208',
    spoil: (p) =>
      onFirst(
        p.season.tmaxC,
        () => true,
        (i) => set(p.season.tmaxC, i, at(p.season.tmaxC, i) - 5),
      ),
  },
];

// ------------------------------------------------------------------------------------------------ needs

const NEEDS: readonly Spoil[] = [
  {
    name: 'planned hectares changed',
    code: 'E8301',
    spoil: (p) =>
      onFirst(
        p.needs.plannedHa,
        (ha) => ha > 0,
        (i) => scale(p.needs.plannedHa, i, 0.99),
      ),
  },
  {
    name: 'a need left out',
    code: 'E8302',
    spoil: (p) =>
      p.needs.crop.length > 0 && (Object.values(p.needs) as unknown[][]).every((column) => column.pop() !== undefined),
  },
  {
    name: 'a need counted twice',
    code: 'E8302',
    spoil: (p) =>
      p.needs.crop.length > 0 && (Object.values(p.needs) as unknown[][]).every((column) => column.push(column[0]) > 0),
  },
  {
    name: 'seed need 1 % lower',
    code: 'E8303',
    spoil: (p) =>
      onFirst(
        p.needs.seedKg,
        (kg) => kg > 1,
        (i) => scale(p.needs.seedKg, i, 0.99),
      ),
  },
  {
    name: 'own seed ignored',
    code: 'E8304',
    spoil: (p) =>
      onFirst(
        p.needs.ownSeedKg,
        (kg) => kg > 0,
        (i) => set(p.needs.ownSeedKg, i, 0),
      ),
  },
  {
    name: 'inoculant need 1 % lower',
    code: 'E8305',
    spoil: (p) =>
      onFirst(
        p.needs.inoculantG,
        (g) => g > 10,
        (i) => scale(p.needs.inoculantG, i, 0.99),
      ),
  },
  {
    name: 'packs needed halved',
    code: 'E8306',
    spoil: (p) =>
      onFirst(
        p.needs.packsNeeded,
        (packs) => packs > 0,
        (i) => scale(p.needs.packsNeeded, i, 0.5),
      ),
  },
  {
    name: 'water nought',
    code: 'E8307',
    spoil: (p) =>
      onFirst(
        p.needs.waterL,
        (litres) => litres > 0,
        (i) => set(p.needs.waterL, i, 0),
      ),
  },
];

// ------------------------------------------------------------------------------------------------ stock

const STOCK: readonly Spoil[] = [
  {
    name: 'more packs than the lot holds',
    code: 'E8401',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.packs,
        () => true,
        (i) => set(p.allocation.grants.packs, i, at(s.lots, at(p.allocation.grants.lot, i)).packs + 1),
      ),
  },
  heldBack('packs of an expired lot', 'expired'),
  heldBack('packs of a lot that expires before sowing', 'expires-before-sowing'),
  heldBack('packs of a lot on hold', 'on-hold'),
  heldBack('packs of an awaited lot', 'awaiting'),
  heldBack('packs of a lot below the minimum count', 'count-below-minimum'),
  heldBack('packs of a lot below the minimum germination', 'germination-below-minimum'),
  heldBack('packs of treated seed', 'treated-seed-not-for-inoculant'),
  {
    name: 'packs of a product for another crop',
    code: 'E8403',
    spoil: (p, s) => {
      const { grants } = p.allocation;
      for (let lot = 0; lot < s.lots.length; lot++) {
        const product = productOf(s, lot);
        const isOther = (own: number, i: number) =>
          kindOf(s, own) === product?.kind && !product?.crops.includes(at(s.crops, at(grants.crop, i)));
        if (onFirst(grants.lot, isOther, (i) => set(grants.lot, i, lot))) return true;
      }
      return false;
    },
  },
  {
    name: 'reserve eaten',
    code: 'E8404',
    spoil: (p) => {
      const { packsReserved, packsOffered } = p.allocation.lots;
      return onFirst(
        packsReserved,
        (packs) => packs > 0,
        (i) => {
          set(packsOffered, i, at(packsOffered, i) + at(packsReserved, i));
          set(packsReserved, i, 0);
        },
      );
    },
  },
  {
    name: 'a sound lot said to be held back',
    code: 'E8405',
    spoil: (p) =>
      onFirst(
        p.allocation.lots.reasons,
        (reasons) => reasons.length === 0,
        (i) => set(p.allocation.lots.reasons, i, ['on-hold']),
      ),
  },
  {
    name: 'a lot on hold said to be sound',
    code: 'E8405',
    spoil: (p) =>
      onFirst(
        p.allocation.lots.reasons,
        (reasons) => reasons.length > 0,
        (i) => set(p.allocation.lots.reasons, i, []),
      ),
  },
  {
    name: 'kilograms of a grant doubled',
    code: 'E8406',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.kg,
        (kg) => kg > 0,
        (i) => scale(p.allocation.grants.kg, i, 2),
      ),
  },
  {
    name: 'packs said to coat twice the seed',
    code: 'E8407',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.lot,
        (lot) => kindOf(s, lot) === 'inoculant',
        (i) => scale(p.allocation.grants.servesSeedKg, i, 2),
      ),
  },
  {
    name: 'share met inflated',
    code: 'E8408',
    spoil: (p) =>
      onFirst(
        p.allocation.shares.seedShare,
        (share) => share < 0.99,
        (i) => set(p.allocation.shares.seedShare, i, 1),
      ),
  },
  {
    name: 'inoculated share inflated',
    code: 'E8408',
    spoil: (p) =>
      onFirst(
        p.allocation.shares.inoculantShare,
        (share) => share < 0.99,
        (i) => set(p.allocation.shares.inoculantShare, i, 1),
      ),
  },
  {
    name: 'one community given twice its need',
    code: 'E8409',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.lot,
        (lot, i) => kindOf(s, lot) === 'inoculant' && at(p.allocation.grants.packs, i) > 2,
        (i) => set(p.allocation.grants.packs, i, at(p.allocation.grants.packs, i) * 3),
      ),
  },
  {
    name: 'a forbidden commodity given',
    code: 'E8410',
    spoil: (p, s, d) => {
      const cell = grantOf(p, s, 'seed');
      return cell
        ? {
            decisions: decide(d, { kind: 'forbid', communityId: cell.communityId, crop: cell.crop, commodity: 'seed' }),
          }
        : false;
    },
  },
  {
    name: 'a forbidden lot given',
    code: 'E8410',
    spoil: (p, s, d) => {
      const cell = grantOf(p, s, 'inoculant');
      if (!cell) return false;
      const lotId = at(s.lots, at(p.allocation.grants.lot, cell.grant)).id;
      return {
        decisions: decide(d, {
          kind: 'forbid',
          communityId: cell.communityId,
          crop: cell.crop,
          commodity: 'inoculant',
          lotId,
        }),
      };
    },
  },
  {
    name: 'a cap passed over',
    code: 'E8410',
    spoil: (p, s, d) => {
      const cell = grantOf(p, s, 'inoculant');
      return cell
        ? {
            decisions: decide(d, {
              kind: 'cap',
              communityId: cell.communityId,
              crop: cell.crop,
              commodity: 'inoculant',
              share: 0.01,
            }),
          }
        : false;
    },
  },
  {
    name: 'a lazy plan that gives nothing',
    code: 'E8411',
    spoil: (p) => {
      giveNothing(p, 'stock-short');
      return true;
    },
  },
  {
    name: 'shortfalls hidden',
    code: 'E8412',
    spoil: (p) =>
      p.allocation.shortfalls.shareRow.length > 0 &&
      emptyTable(p.allocation.shortfalls),
  },
  {
    name: 'a shortfall understated',
    code: 'E8412',
    spoil: (p) =>
      onFirst(
        p.allocation.shortfalls.shortKg,
        (kg) => kg > 1,
        (i) => scale(p.allocation.shortfalls.shortKg, i, 0.5),
      ),
  },
  {
    name: 'a lazy plan that blames the road',
    code: 'E8413',
    spoil: (p) => {
      giveNothing(p, 'not-delivered');
      return true;
    },
  },
];

// ------------------------------------------------------------------------------------------------ balance and fairness

const BALANCE: readonly Spoil[] = [
  {
    name: 'a grant not sent',
    code: 'E8421',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.grants,
        (rows) => rows.length > 0,
        (i) => void at(p.allocation.consignments.grants, i).pop(),
      ),
  },
  {
    name: 'a grant sent twice',
    code: 'E8421',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.grants,
        (rows) => rows.length > 0,
        (i) => void at(p.allocation.consignments.grants, i).push(at(at(p.allocation.consignments.grants, i), 0)),
      ),
  },
  {
    name: 'a consignment from a depot without the lot',
    code: 'E8422',
    spoil: (p, s) =>
      s.depots.length > 1 &&
      onFirst(
        p.allocation.consignments.depot,
        () => true,
        (i) => set(p.allocation.consignments.depot, i, (at(p.allocation.consignments.depot, i) + 1) % s.depots.length),
      ),
  },
  {
    name: 'seed among the inoculant',
    code: 'E8422',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.group,
        (group) => group === 'dry',
        (i) => set(p.allocation.consignments.group, i, 'inoculant'),
      ),
  },
  {
    name: 'litres of a consignment halved',
    code: 'E8422',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.coolLitres,
        (litres) => litres > 0,
        (i) => scale(p.allocation.consignments.coolLitres, i, 0.5),
      ),
  },
  {
    name: 'days of use cut short',
    code: 'E8422',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.group,
        (group) => group === 'dry',
        (i) => set(p.allocation.consignments.latest, i, p.scenario.planningFrom),
      ),
  },
  {
    name: 'packs left off the loads',
    code: 'E8423',
    spoil: (p) =>
      onFirst(
        p.delivery.loads.packs,
        (packs) => at(packs, 0) > 1,
        (i) => set(at(p.delivery.loads.packs, i), 0, at(at(p.delivery.loads.packs, i), 0) - 1),
      ),
  },
  {
    name: 'a load delivered twice',
    code: 'E8424',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.loads,
        (loads) => loads.length > 0,
        (i) => void at(p.delivery.stops.loads, i).push(at(at(p.delivery.stops.loads, i), 0)),
      ),
  },
  {
    name: 'a load forgotten',
    code: 'E8424',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.loads,
        (loads) => loads.length > 0,
        (i) => void at(p.delivery.stops.loads, i).pop(),
      ),
  },
  {
    name: 'a load delivered to another community',
    code: 'E8425',
    spoil: (p) =>
      p.ids.places.length > 1 &&
      onFirst(
        p.delivery.stops.place,
        () => true,
        (i) => set(p.delivery.stops.place, i, (at(p.delivery.stops.place, i) + 1) % p.ids.places.length),
      ),
  },
  {
    name: 'kilograms of a load halved',
    code: 'E8426',
    spoil: (p) =>
      onFirst(
        p.delivery.loads.kg,
        (kg) => kg > 1,
        (i) => scale(p.delivery.loads.kg, i, 0.5),
      ),
  },
];

const scarceProof = (p: PlanDraft) => where(p.allocation.proofs, ({ leastShare }) => leastShare < 0.99);

/** Spoils the first proof of a shortage. */
const onProof = (p: PlanDraft, spoil: (proof: PlanDraft['allocation']['proofs'][number]) => void): boolean => {
  const i = scarceProof(p);
  if (i < 0) return false;
  spoil(at(p.allocation.proofs, i));
  return true;
};

const FAIRNESS: readonly Spoil[] = [
  {
    name: 'a proof left out',
    code: 'E8501',
    spoil: (p) => scarceProof(p) >= 0 && p.allocation.proofs.splice(scarceProof(p), 1).length > 0,
  },
  {
    name: 'a proof about less stock',
    code: 'E8501',
    spoil: (p) => onProof(p, (proof) => void change(proof, { offeredKg: proof.offeredKg.map((kg) => kg / 2)) }),
  },
  {
    name: 'a proof about less need',
    code: 'E8501',
    spoil: (p) => onProof(p, (proof) => void change(proof, { needKg: proof.needKg.map((kg) => kg / 2)) }),
  },
  {
    name: 'rounding said to be large',
    code: 'E8501',
    spoil: (p) => onProof(p, (proof) => void change(proof, { roundingKg: 1e6) }),
  },
  {
    name: 'prices too small',
    code: 'E8502',
    spoil: (p) => onProof(p, (proof) => void change(proof, { communityPrices: proof.communityPrices.map((price) => price / 2)) }),
  },
  {
    name: 'lots too cheap',
    code: 'E8502',
    spoil: (p) => onProof(p, (proof) => void change(proof, { lotPrices: proof.lotPrices.map((price) => price / 2)) }),
  },
  {
    name: 'a bound that the prices do not give',
    code: 'E8503',
    spoil: (p) => onProof(p, (proof) => void change(proof, { bound: proof.bound + 0.05) }),
  },
  {
    name: 'a least share below the bound',
    code: 'E8503',
    spoil: (p) => onProof(p, (proof) => void change(proof, { leastShare: proof.leastShare - 0.05) }),
  },
  {
    name: 'one community starved',
    code: 'E8504',
    spoil: (p, s) => {
      const { grants } = p.allocation;
      return onFirst(
        grants.lot,
        (lot, i) => kindOf(s, lot) === 'seed' && at(grants.packs, i) > 4,
        (i) => set(grants.packs, i, 1),
      );
    },
  },
];

// ------------------------------------------------------------------------------------------------ vehicles and times

const VEHICLES: readonly Spoil[] = [
  {
    name: 'a vehicle from another depot',
    code: 'E8601',
    spoil: (p, s) => {
      const depotOf = (v: number) => at(s.vehicles, v).depotId;
      const other = where(s.vehicles, ({ depotId }) => depotId !== depotOf(at(p.delivery.trips.vehicle, 0)));
      return (
        other >= 0 &&
        onFirst(
          p.delivery.trips.vehicle,
          () => true,
          (i) => set(p.delivery.trips.vehicle, i, other),
        )
      );
    },
  },
  {
    name: 'a vehicle sent away by a decision',
    code: 'E8602',
    spoil: (p, s, d) => {
      const vehicleId = at(s.vehicles, at(p.delivery.trips.vehicle, 0)).id;
      const date = at(p.delivery.trips.date, 0);
      return { decisions: decide(d, { kind: 'vehicle-away', vehicleId, from: date, to: date }) };
    },
  },
  {
    name: 'a vehicle that is not yet there',
    code: 'E8602',
    spoil: (p, s) => ({
      scenario: {
        ...s,
        vehicles: s.vehicles.map((vehicle) => ({
          ...vehicle,
          availableFrom: dayNumber((parseIsoDate(at(p.delivery.trips.date, 0)) ?? 0) + 1),
        })),
      },
    }),
  },
  {
    name: 'a trip on a rest day',
    code: 'E8603',
    spoil: (p, s) => {
      const date = dateWith(s, (offset) => at(p.season.workday, offset) === 0);
      if (date === null) return false;
      moveTrip(p, 0, date);
      return true;
    },
  },
  {
    name: 'load over payload',
    code: 'E8604',
    spoil: (p, s) =>
      onFirst(
        p.delivery.trips.vehicle,
        () => true,
        (trip) =>
          set(
            p.delivery.loads.kg,
            at(
              at(
                p.delivery.stops.loads,
                where(p.delivery.stops.trip, (of) => of === trip),
              ),
              0,
            ),
            at(s.vehicles, at(p.delivery.trips.vehicle, trip)).payloadKg + 1,
          ),
      ),
  },
  {
    name: 'litres over the box',
    code: 'E8605',
    spoil: (p, s) => {
      const stop = where(
        p.delivery.stops.loads,
        (loads, i) =>
          at(s.vehicles, at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, i))).coolLitres > 0 && loads.length > 0,
      );
      if (stop < 0) return false;
      set(p.delivery.loads.coolLitres, at(at(p.delivery.stops.loads, stop), 0), 1e4);
      return true;
    },
  },
  {
    name: 'ice over what the depot makes',
    code: 'E8606',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.iceKg,
        () => true,
        (i) => set(p.delivery.trips.iceKg, i, 1e4),
      ),
  },
  {
    name: 'load of a trip understated',
    code: 'E8607',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.loadKg,
        (kg) => kg > 0.1,
        (i) => scale(p.delivery.trips.loadKg, i, 0.5),
      ),
  },
  {
    name: 'two trips of a vehicle at once',
    code: 'E8608',
    spoil: (p) => {
      const { trips } = p.delivery;
      if (trips.vehicle.length < 2) return false;
      set(trips.vehicle, 1, at(trips.vehicle, 0));
      set(trips.date, 1, at(trips.date, 0));
      set(trips.trip, 1, 2);
      set(trips.leaveMinute, 1, at(trips.leaveMinute, 0) + 1);
      return true;
    },
  },
  {
    name: 'a locked hand-over on another day',
    code: 'E8609',
    spoil: (p, s, d) => {
      const load = at(at(p.delivery.stops.loads, 0), 0);
      const row = at(p.delivery.loads.consignment, load);
      const communityId = at(s.communities, at(p.allocation.consignments.community, row)).id;
      const commodity = at(p.allocation.consignments.group, row) === 'inoculant' ? 'inoculant' : 'seed';
      const vehicleId = at(s.vehicles, at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, 0))).id;
      return {
        decisions: decide(d, {
          kind: 'lock',
          communityId,
          commodity,
          vehicleId,
          date: later(at(p.delivery.trips.date, 0), 1),
        }),
      };
    },
  },
];

const TIMES: readonly Spoil[] = [
  {
    name: 'leaves before dawn',
    code: 'E8701',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.leaveMinute,
        () => true,
        (i) => set(p.delivery.trips.leaveMinute, i, 200),
      ),
  },
  {
    name: 'leaves while it is being loaded',
    code: 'E8701',
    spoil: (p, s) =>
      onFirst(
        p.delivery.trips.loadKg,
        (kg) => kg > 200,
        (i) => set(p.delivery.trips.leaveMinute, i, s.depots[0]?.opens ?? 0),
      ),
  },
  {
    name: 'returns after dark',
    code: 'E8702',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.returnMinute,
        () => true,
        (i) => set(p.delivery.trips.returnMinute, i, 1300),
      ),
  },
  {
    name: 'a stop while the place is closed',
    code: 'E8703',
    spoil: (p, s) => {
      const given = where(p.delivery.stops.place, (place) => at(p.places.placeGiven, place) === 1);
      if (given < 0) return false;
      const id = at(p.ids.places, at(p.delivery.stops.place, given));
      const closed = { opens: minuteOfDay(1200), closes: minuteOfDay(1260) };
      return {
        scenario: {
          ...s,
          handoverPoints: s.handoverPoints.map((point) => (point.id === id ? { ...point, ...closed } : point)),
        },
      };
    },
  },
  {
    name: 'a stop while the community is closed',
    code: 'E8704',
    spoil: (_, s) => ({
      scenario: {
        ...s,
        communities: s.communities.map((one) => ({ ...one, closedFrom: s.planning.from, closedTo: s.planning.to })),
      },
    }),
  },
  {
    name: 'a stop while the zone is closed',
    code: 'E8704',
    spoil: (_, s) =>
      s.zones.length > 0 && {
        scenario: { ...s, zones: s.zones.map((one) => ({ ...one, closedFrom: s.planning.from, closedTo: null })) },
      },
  },
  {
    name: 'a stop on another day than market day',
    code: 'E8705',
    spoil: (p, s) => {
      const weekday = new Date(`${at(p.delivery.trips.date, 0)}T00:00:00Z`).getUTCDay() || 7;
      return {
        scenario: {
          ...s,
          policy: { ...s.policy, marketDays: 'only' },
          communities: s.communities.map((one) => ({ ...one, marketDay: (weekday % 7) + 1 })),
        },
      };
    },
  },
  {
    name: 'inoculant before its seed',
    code: 'E8706',
    spoil: (p) => {
      const { stops, loads, trips } = p.delivery;
      const { consignments } = p.allocation;
      const dry = where(stops.loads, (rows) =>
        rows.some((load) => at(consignments.group, at(loads.consignment, load)) === 'dry'),
      );
      if (dry < 0 || !consignments.group.includes('inoculant')) return false;
      const community = at(consignments.community, at(loads.consignment, at(at(stops.loads, dry), 0)));
      const cool = where(stops.loads, (rows) =>
        rows.some(
          (load) =>
            at(consignments.group, at(loads.consignment, load)) === 'inoculant' &&
            at(consignments.community, at(loads.consignment, load)) === community,
        ),
      );
      if (cool < 0) return false;
      set(trips.date, at(stops.trip, cool), later(at(trips.date, at(stops.trip, dry)), -1));
      return true;
    },
  },
  {
    name: 'a hand-over before the lot is there',
    code: 'E8707',
    spoil: (p, s) => ({
      scenario: {
        ...s,
        lots: s.lots.map((lot) => ({
          ...lot,
          availableFrom: dayNumber((parseIsoDate(at(p.delivery.trips.date, 0)) ?? 0) + 1),
        })),
      },
    }),
  },
  {
    name: 'a hand-over after its last day',
    code: 'E8707',
    spoil: (p) => {
      const row = at(p.delivery.loads.consignment, at(at(p.delivery.stops.loads, 0), 0));
      set(p.allocation.consignments.latest, row, later(at(p.delivery.trips.date, 0), -1));
      return true;
    },
  },
  {
    name: 'arrival earlier than the leg takes',
    code: 'E8708',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.arriveMinute,
        () => true,
        (i) => set(p.delivery.stops.arriveMinute, i, at(p.delivery.stops.arriveMinute, i) - 5),
      ),
  },
  {
    name: 'service cut short',
    code: 'E8708',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.departMinute,
        () => true,
        (i) => set(p.delivery.stops.departMinute, i, at(p.delivery.stops.startMinute, i) + 1),
      ),
  },
  {
    name: 'training left out',
    code: 'E8708',
    spoil: (p, s) =>
      s.policy.trainingMinutes > 0 &&
      onFirst(
        p.delivery.stops.departMinute,
        (_, i) => coolStop(p) === i,
        (i) => set(p.delivery.stops.departMinute, i, at(p.delivery.stops.departMinute, i) - s.policy.trainingMinutes),
      ),
  },
];

// ------------------------------------------------------------------------------------------------ paths

type LegDraft = PlanDraft['delivery']['legs'][number];
const onLeg = (p: PlanDraft, is: (leg: LegDraft) => boolean, spoil: (leg: LegDraft) => void): boolean =>
  onFirst(p.delivery.legs, is, (i) => spoil(at(p.delivery.legs, i)));
const hasPieces = ({ pieces }: LegDraft) => pieces.length > 0;

/** Drives the first leg along the whole of another road. */
const alongRoad = (p: PlanDraft, s: Scenario, road: number): boolean =>
  road >= 0 && onLeg(p, hasPieces, (leg) => void (leg.pieces = [[road, 0, at(s.roads, road).positions.length - 1]]));

const PATHS: readonly Spoil[] = [
  {
    name: 'a path with a gap',
    code: 'E8801',
    spoil: (p, s) =>
      onLeg(p, hasPieces, (leg) => {
        const [road, , to] = at(leg.pieces, leg.pieces.length - 1);
        const end = at(at(s.roads, road).positions, Math.round(to));
        const isFar = (other: number) => Math.abs(at(at(s.roads, other).positions, 0)[0] - end[0]) > 0.01;
        const far = where(s.roads, (_, other) => isFar(other));
        leg.pieces.push([far, 0, 1]);
      }),
  },
  {
    name: 'a piece outside its road',
    code: 'E8801',
    spoil: (p) => onLeg(p, hasPieces, (leg) => void set(at(leg.pieces, 0), 2, 1e6)),
  },
  { name: 'no path at all', code: 'E8801', spoil: (p) => onLeg(p, hasPieces, (leg) => void (leg.pieces = [])) },
  {
    name: 'against a one-way road',
    code: 'E8802',
    spoil: (p, s) => {
      const road = where(s.roads, ({ oneway }) => oneway !== 'no');
      if (road < 0) return false;
      const end = at(s.roads, road).positions.length - 1;
      const [from, to] = at(s.roads, road).oneway === 'forward' ? [end, 0] : [0, end];
      return onLeg(p, hasPieces, (leg) => void (leg.pieces = [[road, from, to]]));
    },
  },
  {
    name: 'along a road closed by the file',
    code: 'E8803',
    spoil: (p, s) => {
      const used = parseIsoDate(at(p.delivery.trips.date, 0)) ?? 0;
      return alongRoad(
        p,
        s,
        where(
          s.roads,
          ({ closedFrom, closedTo }) => closedFrom !== null && closedFrom <= used && (closedTo ?? used) >= used,
        ),
      );
    },
  },
  {
    name: 'along a road closed by a decision',
    code: 'E8803',
    spoil: (p, s, d) => {
      const leg = p.delivery.legs.find(hasPieces);
      if (!leg) return false;
      const [road, from, to] = at(leg.pieces, 0);
      const positions = at(s.roads, road).positions;
      const vertex = Math.min(positions.length - 2, Math.floor(Math.min(from, to)));
      const [a, b] = [at(positions, vertex), at(positions, vertex + 1)];
      const along = Math.min(from, to) - vertex < 1 ? 0.5 : 0;
      const [lon, lat] = [a[0] + along * (b[0] - a[0]), a[1] + along * (b[1] - a[1])];
      return {
        decisions: decide(d, {
          kind: 'road-closed',
          lon,
          lat,
          from: p.scenario.planningFrom,
          to: p.scenario.planningTo,
        }),
      };
    },
  },
  {
    name: 'along a road class the vehicle may not use',
    code: 'E8804',
    spoil: (p, s) => {
      const vehicle = at(s.vehicles, at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, 0)));
      return alongRoad(
        p,
        s,
        where(s.roads, ({ roadClass }) => !vehicle.roadsAllowed.includes(roadClass)),
      );
    },
  },
  {
    name: 'kilometres halved',
    code: 'E8805',
    spoil: (p) =>
      onLeg(
        p,
        ({ kilometres }) => kilometres > 1,
        (leg) => void change(leg, { kilometres: leg.kilometres / 2 }),
      ),
  },
  {
    name: 'faster than the roads allow',
    code: 'E8806',
    spoil: (p) =>
      onLeg(
        p,
        ({ minutes }) => minutes > 2,
        (leg) => void change(leg, { minutes: leg.minutes * 0.9 }),
      ),
  },
  {
    name: 'a leg of dry days on a wet day',
    code: 'E8806',
    spoil: (p, s) => {
      const date = dateWith(s, (offset) => at(p.season.roadState, offset) > 0);
      if (date === null) return false;
      moveTrip(p, 0, date);
      return true;
    },
  },
  {
    name: 'a place far from its path',
    code: 'E8807',
    spoil: (p) =>
      onLeg(
        p,
        (leg) => hasPieces(leg) && leg.toSite >= 1,
        (leg) => void set(at(leg.pieces, leg.pieces.length - 1), 2, at(at(leg.pieces, leg.pieces.length - 1), 1)),
      ),
  },
  {
    name: 'a leg from another place',
    code: 'E8808',
    spoil: (p) =>
      p.delivery.legs.length > 1 &&
      onFirst(
        p.delivery.stops.leg,
        () => true,
        (i) => set(p.delivery.stops.leg, i, (at(p.delivery.stops.leg, i) + 1) % p.delivery.legs.length),
      ),
  },
];

// ------------------------------------------------------------------------------------------------ heat

const HEAT: readonly Spoil[] = [
  {
    name: 'packs in the sun all day, told cool',
    code: 'E8901',
    spoil: (p) => {
      const stop = coolStop(p);
      const hot = p.season.tmaxC.every((celsius) => celsius >= 38);
      if (stop < 0 || !hot) return false;
      set(p.delivery.trips.iceKg, at(p.delivery.stops.trip, stop), 0);
      set(p.delivery.stops.departMinute, stop, 1080);
      return true;
    },
  },
  {
    name: 'packs told to reach 40 °C',
    code: 'E8901',
    spoil: (p) => coolStop(p) >= 0 && at((set(p.delivery.stops.hotBandMaxC, coolStop(p), 40), [true]), 0),
  },
  {
    name: 'pack temperature told too low',
    code: 'E8902',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.packC,
        (celsius) => (celsius ?? 0) > 5,
        (i) => set(p.delivery.stops.packC, i, 2),
      ),
  },
  {
    name: 'hottest pack told too low',
    code: 'E8902',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.packMaxC,
        (celsius, i) => (celsius ?? 0) > 5 && (at(p.delivery.stops.packC, i) ?? 0) > 5,
        (i) => set(p.delivery.stops.packMaxC, i, 2),
      ),
  },
  {
    name: 'hot band told too low',
    code: 'E8902',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.hotBandMaxC,
        (celsius, i) => (celsius ?? 0) > 5 && (at(p.delivery.stops.packC, i) ?? 0) > 5,
        (i) => set(p.delivery.stops.hotBandMaxC, i, 2),
      ),
  },
  {
    name: 'loss told too small',
    code: 'E8903',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.log10Loss,
        (loss) => (loss ?? 0) > 3e-4,
        (i) => set(p.delivery.stops.log10Loss, i, 0),
      ),
  },
  {
    name: 'hours above storage told too few',
    code: 'E8904',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.hoursAboveStorage,
        (hours) => (hours ?? 0) > 0.5,
        (i) => set(p.delivery.stops.hoursAboveStorage, i, 0),
      ),
  },
  {
    name: 'hours above storage over the limit',
    code: 'E8904',
    spoil: (p, s) =>
      p.delivery.stops.hoursAboveStorage.some((hours) => (hours ?? 0) > 0.5) && {
        scenario: { ...s, policy: { ...s.policy, hoursAboveStorage: 0.2 } },
      },
  },
  {
    name: 'temperatures left out',
    code: 'E8905',
    spoil: (p) => coolStop(p) >= 0 && at((set(p.delivery.stops.packC, coolStop(p), null), [true]), 0),
  },
];

// ------------------------------------------------------------------------------------------------ laziness, outcomes

const LAZY: readonly Spoil[] = [
  {
    name: 'a lazy delivery that serves nothing',
    code: 'E8911',
    spoil: (p) => {
      leaveAllBehind(p);
      return true;
    },
  },
  {
    name: 'loads blamed on their weight',
    code: 'E8912',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('heavier-than-any-vehicle');
      return true;
    },
  },
  {
    name: 'loads blamed on the road',
    code: 'E8912',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('not-reachable');
      return true;
    },
  },
  {
    name: 'loads blamed on a decision that nobody took',
    code: 'E8912',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('decision');
      return true;
    },
  },
  {
    name: 'loads blamed on a window that is open',
    code: 'E8911',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('window-missed');
      return true;
    },
  },
  {
    name: 'an empty plan',
    code: 'E8302',
    spoil: (p) => {
      giveNothing(p, 'stock-short');
      for (const table of [p.needs, p.allocation.shares, p.allocation.shortfalls, p.outcomes.crops, p.outcomes.zones])
        for (const column of Object.values(table) as unknown[][]) column.length = 0;
      p.allocation.proofs = [];
      return true;
    },
  },
];

const OUTCOMES: readonly Spoil[] = [
  {
    name: 'hectares with seed inflated',
    code: 'E8951',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.seedHa,
        (ha) => ha > 0.1,
        (i) => scale(p.outcomes.crops.seedHa, i, 1.1),
      ),
  },
  {
    name: 'hectares inoculated inflated',
    code: 'E8951',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.inoculatedHa,
        (ha) => ha > 0.1,
        (i) => scale(p.outcomes.crops.inoculatedHa, i, 1.1),
      ),
  },
  {
    name: 'hectares reached inflated',
    code: 'E8951',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.reachedHa,
        (ha) => ha > 0.1,
        (i) => scale(p.outcomes.crops.reachedHa, i, 1.1),
      ),
  },
  {
    name: 'nitrogen inflated',
    code: 'E8952',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.nitrogenKg,
        (kg) => kg > 1,
        (i) => scale(p.outcomes.crops.nitrogenKg, i, 1.02),
      ),
  },
  {
    name: 'nitrogen by the coefficient of another region',
    code: 'E8952',
    // Soybean in Brazil takes 78 % of its nitrogen from the air, elsewhere 61 % (Peoples et al. 2021).
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.nitrogenKg,
        (kg) => kg > 1,
        (i) => scale(p.outcomes.crops.nitrogenKg, i, 78 / 61),
      ),
  },
  {
    name: 'headline nitrogen doubled',
    code: 'E8952',
    spoil: (p) => {
      const { nitrogenKg } = p.outcomes.headline;
      if (nitrogenKg.p50 < 1) return false;
      p.outcomes.headline.nitrogenKg = { p10: nitrogenKg.p10, p50: nitrogenKg.p50 * 2, p90: nitrogenKg.p90 * 2 };
      return true;
    },
  },
  {
    name: 'range inverted',
    code: 'E8953',
    spoil: (p) => {
      const { p10, p50, p90 } = p.outcomes.headline.nitrogenKg;
      p.outcomes.headline.nitrogenKg = { p10: p90 + 1, p50, p90: p10 };
      return true;
    },
  },
  {
    name: 'headline that is not the sum of the zones',
    code: 'E8954',
    spoil: (p) => change(p.outcomes.headline, { plannedHa: p.outcomes.headline.plannedHa + 10 }),
  },
  {
    name: 'packs of a zone inflated',
    code: 'E8954',
    spoil: (p) =>
      onFirst(
        p.outcomes.zones.inoculantPacks,
        () => true,
        (i) => set(p.outcomes.zones.inoculantPacks, i, at(p.outcomes.zones.inoculantPacks, i) + 10),
      ),
  },
  {
    name: 'a community reached too many',
    code: 'E8954',
    spoil: (p) => change(p.outcomes.headline, { communitiesReached: p.outcomes.headline.communitiesReached + 1 }),
  },
  {
    name: 'cost understated',
    code: 'E8955',
    spoil: (p) => {
      const { deliveryCost } = p.outcomes.headline;
      if (deliveryCost === null || deliveryCost < 10) return false;
      p.outcomes.headline.deliveryCost = deliveryCost / 2;
      p.delivery.cost = deliveryCost / 2;
      return true;
    },
  },
  {
    name: 'rhizobia per seed inflated',
    code: 'E8956',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.log10PerSeed,
        (log) => log !== null,
        (i) => set(p.outcomes.crops.log10PerSeed, i, (at(p.outcomes.crops.log10PerSeed, i) ?? 0) + 0.3),
      ),
  },
];

export const SPOILS: readonly Spoil[] = [
  ...SHAPE,
  ...PLACES,
  ...SEASON,
  ...NEEDS,
  ...STOCK,
  ...BALANCE,
  ...FAIRNESS,
  ...VEHICLES,
  ...TIMES,
  ...PATHS,
  ...HEAT,
  ...LAZY,
  ...OUTCOMES,
];
