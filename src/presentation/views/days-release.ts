import { dayNumber, isoDate, type Plan, type Scenario, type SeasonCalendar } from '../../engine/index.ts';
import { zoneDayWorth } from './days-worth.ts';

/** A zone's inoculant, held until it rains: what waits, whether the rule has let go, and what goes then. */
export interface HeldZone {
  readonly zoneId: string;
  readonly name: string;
  /** Rain of the last three days, mm; null where nobody measured. */
  readonly fallenMm: number | null;
  /** ISO dates: when the rule let go; else when it is expected to, and six seasons in ten between the others. */
  readonly firedOn: string | null;
  readonly expected: string | null;
  readonly early: string | null;
  readonly late: string | null;
  /** Chances, 0 to 1. */
  readonly tooLate: number;
  readonly never: number;
  /** Share of value kept by the rule and by the best fixed day. */
  readonly kept: number;
  readonly bestKept: number;
  /** Depots where its packs wait. */
  readonly depots: readonly string[];
  readonly communities: number;
  readonly packs: number;
  readonly litres: number;
  /** First and last day for which the plan has them, ISO dates. */
  readonly planned: readonly [string, string] | null;
}

export interface ReleaseView {
  readonly mm: number;
  readonly leadDays: number;
  readonly waiting: readonly HeldZone[];
  /** Zones for which that rain has fallen, by name. */
  readonly released: readonly HeldZone[];
}

/** The rule "hold until so much rain has fallen in three days", zone by zone, beside the packs that the plan still has to send there. */
export function releaseView(plan: Plan, scenario: Scenario, worth: SeasonCalendar): ReleaseView {
  const goods = inoculantByZone(plan, scenario);
  const zones = scenario.zones.flatMap((zone, index): HeldZone[] => {
    const told = zoneDayWorth(worth, index, 0);
    const waiting = goods.get(index);
    if (!told?.release || !waiting) return [];
    const { expected, early, late, tooLate, never, kept } = told.release;
    const [fallen, fired] = [worth.release.fallenMm[index] ?? Number.NaN, worth.release.firedOn[index] ?? Number.NaN];
    return [
      {
        zoneId: zone.id,
        name: zone.name,
        fallenMm: Number.isNaN(fallen) ? null : fallen,
        firedOn: Number.isNaN(fired) ? null : isoDate(dayNumber(fired)),
        ...{ expected, early, late, tooLate, never, kept },
        bestKept: told.best?.kept ?? 0,
        depots: [...waiting.depots].map((depot) => scenario.depots[depot]?.name ?? ''),
        communities: waiting.communities.size,
        packs: waiting.packs,
        litres: waiting.litres,
        planned: waiting.days.length === 0 ? null : [waiting.days.at(0) ?? '', waiting.days.at(-1) ?? ''],
      },
    ];
  });
  const byExpected = (a: HeldZone, b: HeldZone) => ((a.expected ?? '9') < (b.expected ?? '9') ? -1 : 1);
  return {
    mm: worth.release.mm,
    leadDays: worth.release.leadDays,
    waiting: zones.filter(({ firedOn }) => firedOn === null).sort(byExpected),
    released: zones.filter(({ firedOn }) => firedOn !== null),
  };
}

interface WaitingGoods {
  readonly depots: Set<number>;
  readonly communities: Set<number>;
  packs: number;
  litres: number;
  days: string[];
}

/** Inoculant still to be sent, by the zone that most of each community lies in. */
function inoculantByZone({ places, allocation, delivery, ids }: Plan, scenario: Scenario): Map<number, WaitingGoods> {
  const zoneOf = new Map<number, readonly [zone: number, share: number]>();
  places.shares.community.forEach((community, row) => {
    const share = places.shares.share[row] ?? 0;
    if (share > (zoneOf.get(community)?.[1] ?? 0)) zoneOf.set(community, [places.shares.zone[row] ?? -1, share]);
  });
  const dates = new Map<number, string>();
  delivery.stops.loads.forEach((loads, stop) => {
    for (const load of loads) dates.set(load, delivery.trips.date[delivery.stops.trip[stop] ?? -1] ?? '');
  });
  const products = new Set(scenario.products.flatMap(({ id, kind }) => (kind === 'inoculant' ? [id] : [])));
  const living = new Set(scenario.lots.flatMap(({ id, productId }) => (products.has(productId) ? [id] : [])));
  const goods = new Map<number, WaitingGoods>();
  delivery.loads.consignment.forEach((consignment, load) => {
    if ((delivery.loads.inoculantKg[load] ?? 0) <= 0) return;
    const { community, depot } = allocation.consignments;
    const zone = zoneOf.get(community[consignment] ?? -1)?.[0] ?? -1;
    const sum = goods.get(zone) ?? { depots: new Set(), communities: new Set(), packs: 0, litres: 0, days: [] };
    goods.set(zone, sum);
    sum.depots.add(depot[consignment] ?? -1);
    sum.communities.add(community[consignment] ?? -1);
    (delivery.loads.grants[load] ?? []).forEach((grant, i) => {
      if (living.has(ids.lots[allocation.grants.lot[grant] ?? -1] ?? ''))
        sum.packs += delivery.loads.packs[load]?.[i] ?? 0;
    });
    sum.litres += delivery.loads.coolLitres[load] ?? 0;
    const date = dates.get(load);
    if (date !== undefined) sum.days = [...sum.days, date].sort();
  });
  return goods;
}
