import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import {
  checkPlan,
  compareDeliveries,
  type Decision,
  type Decisions,
  planSeason,
  readScenario,
  replanSeason,
} from '../../src/engine/index.ts';
import { readFolderFiles } from '../plan-files.ts';

const tools = await loadPlanningTools();
const read = readScenario(
  recordsFromFiles(readFolderFiles(fileURLToPath(new URL('../../scenarios/demo-district/', import.meta.url)))),
);
if (!read.scenario) throw new Error('the demonstration district is blocked');
const { scenario, decisions } = read;
const settings = { seed: 1, iterations: 300, stop: null, progress: null };
const present = planSeason(scenario, decisions, null, settings, tools);
const { ids, delivery, scenario: header } = present.plan;

function changed(change: Decision) {
  const decided: Decisions = { ...decisions, decisions: [...decisions.decisions, change], sha256: `${change.kind}` };
  const again = replanSeason(scenario, decided, present.plan, present.stages, { ...settings, iterations: 100 }, tools);
  return { plan: again.plan, decided, difference: compareDeliveries(present.plan, again.plan) };
}

describe('the demonstration district after a change', () => {
  const vehicleId = ids.vehicles[delivery.trips.vehicle[0] ?? 0] ?? '';
  const date = delivery.trips.date[0] ?? '';

  it('a vehicle away for a day: it does not run, the checker accepts the plan, every change is listed once', () => {
    const { plan, decided, difference } = changed({ kind: 'vehicle-away', vehicleId, from: date, to: date });
    expect(checkPlan(scenario, decided, plan)).toEqual([]);
    const runs = plan.delivery.trips.vehicle.some(
      (vehicle, i) => plan.ids.vehicles[vehicle] === vehicleId && plan.delivery.trips.date[i] === date,
    );
    expect(runs).toBe(false);
    expect(difference.changes.length).toBeGreaterThan(0);
    expect(new Set(difference.changes.map(({ communityId, group }) => `${communityId} ${group}`)).size).toBe(
      difference.changes.length,
    );
    // Whoever was not on that vehicle that day may change the hour, but most keep their day.
    expect(difference.promisesBroken).toBeLessThan(present.plan.allocation.consignments.community.length / 4);
  });

  it('a road closed for the season: no leg runs on it, the checker accepts the plan', () => {
    const road = scenario.roads[delivery.legs[0]?.pieces[0]?.[0] ?? 0];
    const [lon = 0, lat = 0] = road?.positions[0] ?? [];
    const { plan, decided } = changed({
      kind: 'road-closed',
      lon,
      lat,
      from: header.planningFrom,
      to: header.planningTo,
    });
    expect(checkPlan(scenario, decided, plan)).toEqual([]);
  });
});
