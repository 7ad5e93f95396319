import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import { minuteOfDay, planSeason, readScenario, type Scenario } from '../../src/engine/index.ts';
import { type DispatchState, slotOf } from '../../src/engine/stages/6-delivery/dispatch-state.ts';
import { findHopeful } from '../../src/engine/stages/6-delivery/explain-unserved.ts';
import { fillUp } from '../../src/engine/stages/6-delivery/fill-up.ts';
import { improve } from '../../src/engine/stages/6-delivery/improve.ts';
import { moneyOf } from '../../src/engine/stages/6-delivery/money-of.ts';
import { beginDispatch } from '../../src/engine/stages/6-delivery/plan-delivery.ts';
import { reachAt } from '../../src/engine/stages/6-delivery/reach-value.ts';
import { scheduleTrips } from '../../src/engine/stages/6-delivery/schedule-trips.ts';
import { planByHand } from './plan-by-hand.ts';

const [root = '.', stepsGiven = '20000', ...folders] = process.argv.slice(2);
const tools = await loadPlanningTools();
const EIGHT = minuteOfDay(8 * 60);

/** Shares, sums and the hottest pack of a state, as the delivery tells them. */
function measure(scenario: Scenario, state: DispatchState, cut: ReturnType<typeof beginDispatch>['cut']): string {
  const days = scheduleTrips(state, cut.loads);
  const trips = days.flatMap((day) => day.trips.map((trip) => ({ day: day.day, trip })));
  const { loads } = state.task;
  const worth = loads.reduce((sum, load) => sum + load.worth, 0);
  let kept = 0;
  for (const { day, trip } of trips) {
    for (const stop of trip.stops) {
      for (const index of stop.loads) {
        const load = loads[index];
        if (!load) continue;
        const loss = load.survival < 0 || Number.isNaN(stop.log10Loss) ? 0 : stop.log10Loss;
        kept += load.worth * reachAt(load.reach, day, loss);
      }
    }
  }
  const hottest = Math.max(
    ...trips.flatMap(({ trip }) => trip.stops.map((stop) => stop.packMaxC || Number.NEGATIVE_INFINITY)),
  );
  const km = trips.reduce((sum, { trip }) => sum + trip.kilometres, 0);
  const unserved = [...loads.keys()].filter((load) => slotOf(state, load) === -1).length;
  const money = moneyOf(scenario, state);
  return `${((kept / worth) * 100).toFixed(2)} | ${days.length} | ${km.toFixed(0)} | ${hottest.toFixed(1)} | ${unserved} of ${loads.length} | ${money === null ? 'no prices' : money.toFixed(0)} | ${state.rows.cost.toFixed(0)} |`;
}

console.log(
  '| scenario | plan | value kept, percent | vehicle-days | km | hottest pack, °C | loads unserved | money | money and lost value |',
);
console.log('| --- | --- | --- | --- | --- | --- | --- | --- | --- |');
for (const folder of folders.length > 0 ? folders : ['scenarios/demo-district', 'scenarios/tiny-district']) {
  const path = join(root, folder);
  if (!existsSync(path)) continue;
  const names = readdirSync(path, { withFileTypes: true }).filter((entry) => entry.isFile());
  const files = new Map(names.map(({ name }) => [name, new Uint8Array(readFileSync(join(path, name)))]));
  const { scenario, decisions } = readScenario(recordsFromFiles(files));
  if (!scenario) continue;
  const settings = { seed: 1, iterations: 0, stop: null, progress: null };
  const { stages } = planSeason(scenario, decisions, null, settings, tools);
  const [places, season] = [stages.places.value.result, stages.season.value.result];
  const allocation = stages.supply.value.allocation.result;
  const begin = (of: Scenario) => beginDispatch(of, decisions, places, season, allocation, null);
  const late = {
    ...scenario,
    vehicles: scenario.vehicles.map((v) => {
      const shiftStart = minuteOfDay(Math.max(v.shiftStart, EIGHT));
      return { ...v, shiftStart, maxHours: v.maxHours - (shiftStart - v.shiftStart) / 60 };
    }),
  };
  const hand = begin(late);
  planByHand(hand.state);
  console.log(`| ${folder} | by hand, at eight | ${measure(late, hand.state, hand.cut)}`);
  const planned = begin(scenario);
  const hopeful = findHopeful(planned.state);
  fillUp(planned.state, hopeful);
  const before = process.cpuUsage();
  improve(planned.state, hopeful, { ...settings, iterations: Number(stepsGiven) }, null);
  const { user, system } = process.cpuUsage(before);
  fillUp(planned.state, hopeful);
  const effort = `${stepsGiven} steps, ${((user + system) / 1e6).toFixed(1)} s`;
  console.log(`| ${folder} | search, ${effort} | ${measure(scenario, planned.state, planned.cut)}`);
}
