import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import {
  checkPlan,
  compareDeliveries,
  type Decision,
  type DeliveryDifference,
  dayNumber,
  isoDate,
  openDeliveryDesk,
  type Plan,
  type PlanningRun,
  planSeason,
  readScenario,
  replanSeason,
  type Scenario,
} from '../../src/engine/index.ts';
import { readFolderFiles } from '../plan-files.ts';
import { type Line, SeasonAtWork } from './season-at-work.ts';

// A whole season of records, not one sheet: NODULARY_SEASON_DAYS days of NODULARY_SEASONS seasons (`npm run test:long`).
const DAYS = Number(process.env['NODULARY_SEASON_DAYS'] ?? 10);
const SEASONS = Number(process.env['NODULARY_SEASONS'] ?? 1);
const FIRST_SEED = Number(process.env['NODULARY_FIRST_SEED'] ?? 1);

const tools = await loadPlanningTools();
const bytes = new TextEncoder();
const folder = fileURLToPath(new URL('../../scenarios/demo-district/', import.meta.url));
const settings = { seed: 1, iterations: 300, stop: null, progress: null };
const COLUMNS = ['date', 'community_id', 'vehicle_id', 'lot_id', 'packs', 'box_c', 'returned_packs', 'reason'] as const;

/** The files as they stand after so many evenings. */
function readAgain(lines: readonly Line[], decisions: readonly Decision[]) {
  const files = readFolderFiles(folder);
  const csv = [COLUMNS.join(','), ...lines.map((line) => COLUMNS.map((name) => line[name]).join(','))].join('\n');
  files.set('handovers.csv', bytes.encode(`${csv}\n`));
  files.set('decisions.json', bytes.encode(JSON.stringify({ format: 'nodulary-decisions/1', decisions })));
  const { scenario, decisions: read, problems } = readScenario(recordsFromFiles(files));
  if (!scenario) throw new Error('blocked');
  return { scenario, decisions: read, problems };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** Whole packs of every lot: as they came = with communities + in the store, there given out, kept back, reserved or on hold. */
function expectBalance(scenario: Scenario, plan: Plan, lines: readonly Line[], held: ReadonlySet<string>) {
  const { lots, grants } = plan.allocation;
  scenario.lots.forEach(({ id, packs }, l) => {
    const own = lines.filter(({ lot_id }) => lot_id === id);
    const gone = sum(own.map((line) => line.packs)) - sum(own.map((line) => line.returned_packs));
    const isLiving = scenario.products.find((p) => p.id === scenario.lots[l]?.productId)?.kind === 'inoculant';
    const hot = isLiving ? sum(own.map(({ box_c, returned_packs }) => (Number(box_c) >= 40 ? returned_packs : 0))) : 0;
    const [offered, reserved, onHold] = [lots.packsOffered[l], lots.packsReserved[l], lots.packsHeld[l]].map(
      (value) => value ?? Number.NaN,
    ) as [number, number, number];
    const isGiven = lots.reasons[l]?.length === 0;
    if (isGiven) expect([id, offered + reserved + onHold + gone]).toEqual([id, packs]);
    if (held.has(id)) expect([id, onHold, offered + reserved]).toEqual([id, packs - gone, 0]);
    else if (isGiven) expect([id, onHold]).toEqual([id, hot]);
    const given = sum(grants.lot.map((lot, i) => (lot === l ? (grants.packs[i] ?? 0) : 0)));
    expect(given).toBeLessThanOrEqual(offered);
  });
}

interface Told {
  readonly dates: Set<string>;
  packs: number;
  left: number;
}

/** What each community knows of its goods of each kind, from a day on: the days they come, the packs, and loads that are left behind. */
function toldFrom({ ids, allocation, delivery: { trips, stops, loads, unserved } }: Plan, from: string) {
  const told = new Map<string, Told>();
  const of = (load: number): Told => {
    const consignment = loads.consignment[load] ?? -1;
    const key = `${ids.communities[allocation.consignments.community[consignment] ?? -1]} ${allocation.consignments.group[consignment]}`;
    const found = told.get(key) ?? { dates: new Set(), packs: 0, left: 0 };
    told.set(key, found);
    return found;
  };
  stops.loads.forEach((aboard, stop) => {
    const date = trips.date[stops.trip[stop] ?? -1] ?? '';
    if (date < from) return;
    for (const load of aboard) {
      of(load).dates.add(date);
      of(load).packs += sum(loads.packs[load] ?? []);
    }
  });
  for (const load of unserved.load) of(load).left += 1;
  return told;
}

/** Who no longer comes on the day told, or with fewer packs than told because some found no vehicle: recounted, each listed once, priced. */
function expectBrokenListed(before: Plan, after: Plan, difference: DeliveryDifference) {
  const from = after.scenario.planningFrom;
  const [was, is] = [toldFrom(before, from), toldFrom(after, from)];
  const text = (told: Told | undefined) => [...(told?.dates ?? [])].sort().join();
  const isLess = (old: Told, now: Told | undefined) =>
    now !== undefined && now.packs < old.packs && now.left > old.left;
  const broken = [...was]
    .filter(([key, old]) => old.dates.size > 0 && (text(old) !== text(is.get(key)) || isLess(old, is.get(key))))
    .map(([key]) => key);
  const listed = difference.changes
    .filter(({ code, before: told }) => told.some(({ date }) => date >= from) && BROKEN.has(code))
    .map(({ communityId, group }) => `${communityId} ${group}`);
  const overdue = difference.changes.filter(({ before: told }) => told.some(({ date }) => date < from));
  const known = new Set(overdue.map(({ communityId, group }) => `${communityId} ${group}`));
  expect(listed.filter((key) => !known.has(key)).sort()).toEqual(broken.filter((key) => !known.has(key)).sort());
  expect(difference.promisesPrice).toBeCloseTo(difference.promisesBroken * after.delivery.promisePrice, 6);
}
const BROKEN = new Set(['other-day', 'no-longer-served', 'no-longer-given']);

describe.each(Array.from({ length: SEASONS }, (_, i) => FIRST_SEED + i))(
  'a season played through, surprises of seed %i',
  (seed) => {
    const first = readAgain([], []);
    const from = first.scenario.planning.from;
    let { plan, stages } = planSeason(first.scenario, first.decisions, null, settings, tools);
    let scenario = first.scenario;
    const people = new SeasonAtWork(seed, from, 6);
    const lines: Line[] = [];
    const decisions: Decision[] = [];
    const met: string[] = [];

    const days = Array.from({ length: Math.min(DAYS, scenario.planning.to - from) }, (_, day) =>
      isoDate(dayNumber(from + day)),
    );
    it.each(days)('%s', (date) => {
      const evening = people.live(date, plan, scenario);
      lines.push(...evening.lines);
      decisions.push(...evening.decisions);
      met.push(...evening.surprises);

      const read = readAgain(lines, decisions);
      expect(read.problems.filter(({ weight }) => weight !== 'noted')).toEqual([]);
      expect(read.scenario.handovers).toHaveLength(lines.length);
      const again = replanSeason(read.scenario, read.decisions, plan, stages, settings, tools);
      const before = plan;
      ({ plan, stages } = again);
      scenario = read.scenario;
      expect(plan.scenario.planningFrom > date).toBe(true);
      expect(checkPlan(read.scenario, read.decisions, plan)).toEqual([]);
      const held = new Set([
        ...scenario.lots.flatMap(({ id, status }) => (status === 'on_hold' ? [id] : [])),
        ...decisions.flatMap((one) => (one.kind === 'hold' ? [one.lotId] : [])),
      ]);
      expectBalance(read.scenario, plan, lines, held);
      const difference = compareDeliveries(before, plan);
      expectBrokenListed(before, plan, difference);
      expectPromisesDear(read, before, again);
    });

    it('met surprises, and handed over what the plans said', () => {
      expect(met.length).toBeGreaterThan(2);
      expect(lines.length).toBeGreaterThan(100);
    });
  },
);

/** The one day on which goods of a consignment, by community, depot and kind, were to come; null where there were several. */
function dayTold({ ids, allocation, delivery: { loads, stops, trips } }: Plan) {
  const days = new Map<string, string | null>();
  stops.loads.forEach((aboard, stop) => {
    const date = trips.date[stops.trip[stop] ?? -1] ?? '';
    for (const load of aboard) {
      const key = keyOf(ids, allocation.consignments, loads.consignment[load] ?? -1);
      days.set(key, days.has(key) && days.get(key) !== date ? null : date);
    }
  });
  return days;
}

const keyOf = (ids: Plan['ids'], { community, depot, group }: Plan['allocation']['consignments'], row: number) =>
  `${ids.communities[community[row] ?? -1]} ${ids.depots[depot[row] ?? -1]} ${group[row]}`;

/** Nothing that comes on another day could come on the day told for less than the promise, with any vehicle. */
function expectPromisesDear(read: ReturnType<typeof readAgain>, before: Plan, again: PlanningRun) {
  const { ids, allocation, delivery, scenario } = again.plan;
  const [was, is] = [dayTold(before), dayTold(again.plan)];
  const desk = openDeliveryDesk(read.scenario, read.decisions, again.stages, tools.overlay);
  allocation.consignments.community.forEach((_, consignment) => {
    const key = keyOf(ids, allocation.consignments, consignment);
    const [told, now] = [was.get(key), is.get(key)];
    if (!told || !now || told === now || told < scenario.planningFrom) return;
    const day = (Date.parse(told) - Date.parse(scenario.planningFrom)) / 86_400_000;
    ids.vehicles.forEach((_, vehicle) => {
      const { cost } = desk.priceMove({ consignment, vehicle, day });
      // To the desk the new day is the one told: its price holds that promise, and the old one would be kept again.
      if (cost !== null) expect(cost, `${key} on ${told}`).toBeGreaterThan(2 * delivery.promisePrice - 1e-6);
    });
  });
}
