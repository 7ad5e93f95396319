import { findHopeful } from '../../src/engine/stages/6-delivery/explain-unserved.ts';
import { fillUp } from '../../src/engine/stages/6-delivery/fill-up.ts';
import { improve } from '../../src/engine/stages/6-delivery/improve.ts';
import { beginDispatch } from '../../src/engine/stages/6-delivery/plan-delivery.ts';
import { bigNetwork } from '../engine/stages/6-delivery/big-network.ts';
import { buildNetwork } from '../engine/stages/6-delivery/small-network.ts';

const [, stepsPerLoad = '20', ...asked] = process.argv.slice(2);
/** Communities, and `half` where each is to be brought half as much. */
const sizes = asked.filter((word) => word !== 'half');
const SHARE = asked.includes('half') ? 0.5 : 1;
const DAYS = 20;
/** By depot: lorry, pickup, motorcycle, lorry; 15 in all. */
const VEHICLES_OF_DEPOT = [4, 4, 4, 3];

/** Processor time of this process, s: the machine may be shared. */
function seconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** A district of so many communities, two consignments each, with 15 vehicles. */
function district(communities: number) {
  const spec = bigNetwork(communities, DAYS);
  const vehicles = VEHICLES_OF_DEPOT.flatMap((count, depot) => {
    const own = spec.vehicles.filter((vehicle) => vehicle.depot === depot);
    const of = (kind: string | undefined) => own.filter((vehicle) => vehicle.kind === kind);
    const [lorry, second] = of('truck');
    return [lorry, of(undefined)[0], of('motorcycle')[0], second].slice(0, count).flatMap((v) => (v ? [v] : []));
  });
  const consignments = spec.consignments.map((goods) => ({
    ...goods,
    seedPacks: Math.ceil((goods.seedPacks ?? 0) * SHARE),
    sachets: Math.ceil((goods.sachets ?? 0) * SHARE),
    worth: (goods.worth ?? 0) * SHARE,
    hectares: (goods.hectares ?? 0) * SHARE,
  }));
  return buildNetwork({ ...spec, vehicles, consignments });
}

console.log('| loads | steps | s | steps a second | left behind | money and lost value, millions | after s | MB |');
console.log('| --- | --- | --- | --- | --- | --- | --- | --- |');
for (const communities of (sizes.length > 0 ? sizes : ['50', '100', '200', '500']).map(Number)) {
  const { scenario, decisions, places, season, allocation } = district(communities);
  const { state } = beginDispatch(scenario, decisions, places, season, allocation, null);
  const hopeful = findHopeful(state);
  fillUp(state, hopeful);
  const loads = state.task.loads.length;
  const iterations = Math.round(Number(stepsPerLoad) * loads);
  const began = seconds();
  const onTheWay: string[] = [];
  let next = 15;
  const progress = (_done: number, _share: number, best: number) => {
    if (seconds() - began < next) return;
    onTheWay.push(`${next}: ${(best / 1e6).toFixed(2)}`);
    next *= 2;
  };
  improve(state, hopeful, { seed: 1, iterations, stop: null, progress }, null);
  const took = seconds() - began;
  const left = [...state.rows.slotOf].filter((slot) => slot < 0).length;
  console.log(
    `| ${loads} | ${iterations} | ${took.toFixed(1)} | ${(iterations / took).toFixed(0)} | ${left} | ${(state.rows.cost / 1e6).toFixed(2)} | ${onTheWay.join(', ')} | ${(process.memoryUsage().rss / 1e6).toFixed(0)} |`,
  );
}
