import type { UnreachableReason } from '../../vocabulary/reasons.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Site, TravelTable, TravelTables, Unreachable } from '../../vocabulary/stage-results/places.ts';
import type { SiteJoin } from './snap-sites.ts';

/**
 * Places that a vehicle class cannot serve from any depot of its own, on passable roads, on any planning day. Rows by
 * place, then class. Rain may close more for a time; that is for delivery to see.
 */
export function findUnreachable(
  scenario: Scenario,
  sites: readonly Site[],
  travel: TravelTables,
  joins: readonly (readonly SiteJoin[])[],
): readonly Unreachable[] {
  const reasons = travel.classes.map((vehicleClass, c) => {
    const depotIds = new Set(vehicleClass.vehicles.map((vehicle) => scenario.vehicles[vehicle]?.depotId));
    const depots = scenario.depots.flatMap((depot, d) => (depotIds.has(depot.id) ? [d] : []));
    const onPassableRoads = (travel.tables[c] ?? []).flatMap((states) => states.slice(0, 1));
    return sites.map((site, s): UnreachableReason | null => {
      if (site.kind === 'depot') return null;
      const join = joins[c]?.[s] ?? 'no-vehicle';
      if (typeof join === 'string') return join;
      const served = onPassableRoads.some((table) => depots.some((d) => hasLeg(table, d, s) && hasLeg(table, s, d)));
      return served ? null : 'no-way-there-and-back';
    });
  });
  return sites.flatMap((site, s) =>
    reasons.flatMap((ofClass, vehicleClass) => {
      const reason = ofClass[s] ?? null;
      return reason === null ? [] : [{ place: site.index, vehicleClass, reason }];
    }),
  );
}

function hasLeg({ offsets, destinations }: TravelTable, from: number, to: number): boolean {
  return destinations.subarray(offsets[from], offsets[from + 1]).includes(to);
}
