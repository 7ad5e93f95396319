import { describe, expect, it } from 'vitest';
import { checkPlan, type Plan } from '../../src/engine/index.ts';
import { planFiles } from '../plan-files.ts';
import { randomScenario } from './random-scenario.ts';

const COUNT = Number(process.env['NODULARY_FERTILISER_SCENARIOS'] ?? 12);
const seeds = Array.from({ length: COUNT }, (_, i) => 101 + i);

/** Files with every lot of fertiliser left out. */
function withoutBags(files: ReadonlyMap<string, Uint8Array>): Map<string, Uint8Array> {
  const lots = new TextDecoder().decode(files.get('lots.csv'));
  const kept = lots.split('\r\n').filter((line) => !/^P\d-/.test(line));
  return new Map([...files, ['lots.csv', new TextEncoder().encode(kept.join('\r\n'))]]);
}

/** Day and vehicle of every load of seed and inoculant, and what stays; by community, kind and weight. */
function waysOfGoods({ allocation, delivery, ids }: Plan): string[] {
  const nameOf = (load: number) => {
    const consignment = delivery.loads.consignment[load] ?? -1;
    const { community, group } = allocation.consignments;
    return `${ids.communities[community[consignment] ?? -1]} ${group[consignment]} ${delivery.loads.kg[load]} kg`;
  };
  const served = delivery.stops.loads.flatMap((loads, stop) =>
    loads.map((load) => `${nameOf(load)} ${delivery.trips.date[delivery.stops.trip[stop] ?? -1]}`),
  );
  const left = delivery.unserved.load.map((load, i) => `${nameOf(load)} left, ${delivery.unserved.reason[i]}`);
  return [...served, ...left].filter((line) => !line.includes(' fertiliser ')).sort();
}

describe('fertiliser takes the room that is left', () => {
  it.each(seeds)('seed and inoculant come on the same days with and without it: invented scenario %i', (seed) => {
    const files = randomScenario(seed, 'any');
    const { scenario, decisions, plan } = planFiles(files, 200);
    expect(checkPlan(scenario, decisions, plan)).toEqual([]);
    expect(waysOfGoods(plan)).toEqual(waysOfGoods(planFiles(withoutBags(files), 200).plan));
  });
});
