import loadHighs, { type Highs } from 'highs';
import { loadHighsSolver, modelData } from '../../src/adapters/solver/load-highs-solver.ts';
import type { LinearModel, LinearSolver } from '../../src/engine/index.ts';
import { allocateStock } from '../../src/engine/stages/5-allocation/allocate-stock.ts';
import { depotsThatReach } from '../../src/engine/stages/5-allocation/depot-reach.ts';
import { LinearModelBuilder } from '../../src/engine/stages/5-allocation/linear-model-builder.ts';
import { largeDistrict } from '../engine/stages/5-allocation/large-district.ts';
import { decisions, type SmallDistrict, smallDistrict } from '../engine/stages/5-allocation/small-district.ts';

const [, placesGiven = '300', runsGiven = '9'] = process.argv.slice(2);
const RUNS = Number(runsGiven);
const WARM_UPS = 3;

/** The gap that whole packs are solved to, and the nodes after which the search gives up. */
const WHOLE = { mip_rel_gap: 0.01, mip_max_nodes: 2000 };

/**
 * The same task written down undivided for the solver by itself: a column for each place, crop and lot that may come to it; first the
 * largest least share, then the most kilograms in whole packs with nobody more than a pack below that share; seed, then inoculant.
 */
function solveBare({ scenario, places, needs }: SmallDistrict, highs: Highs): number {
  const { offsets, depots } = depotsThatReach(scenario, places);
  const mayCome = (depot: number, community: number) => {
    const place = places.communityPlace[community] as number;
    return depots.subarray(offsets[place], offsets[place + 1]).includes(depot);
  };
  let needKg = Array.from(needs.programmeSeedKg);
  let least = 1;
  for (const kind of ['seed', 'inoculant'] as const) {
    const ways = scenario.lots.flatMap((lot, l) => {
      const product = scenario.products.find(({ id }) => id === lot.productId);
      if (product?.kind !== kind) return [];
      const depot = scenario.depots.findIndex(({ id }) => id === lot.depotId);
      const packKg = kind === 'seed' ? product.packG / 1000 : product.packG / (product.doseGPerKg ?? 1);
      return Array.from(needs.community.keys())
        .filter((r) => product.crops.some((crop) => crop === scenario.crops[needs.crop[r] as number]))
        .filter((r) => mayCome(depot, needs.community[r] as number))
        .map((r) => ({ r, l, packKg, packs: lot.packs }));
    });
    const shares = run(highs, undivided(ways, needKg, null));
    const share = shares[ways.length] as number;
    const packs = run(highs, undivided(ways, needKg, share));
    least = Math.min(least, share);
    const given = needKg.map(() => 0);
    ways.forEach(({ r, packKg }, w) => {
      given[r] = (given[r] as number) + packKg * (packs[w] as number);
    });
    needKg = needKg.map((kg, r) => Math.min(kg, given[r] as number));
  }
  return least;
}

interface Way {
  readonly r: number;
  readonly l: number;
  readonly packKg: number;
  readonly packs: number;
}

function undivided(ways: readonly Way[], needKg: readonly number[], share: number | null): LinearModel {
  const builder = new LinearModelBuilder();
  const largest = new Map<number, number>();
  for (const { r, packKg } of ways) largest.set(r, Math.max(packKg, largest.get(r) ?? 0));
  const floor = needKg.map((kg, r) =>
    builder.addRow(share === null ? 0 : Math.max(0, kg * share - (largest.get(r) ?? kg)), Number.POSITIVE_INFINITY),
  );
  const cap = needKg.map((kg, r) => builder.addRow(Number.NEGATIVE_INFINITY, kg + (largest.get(r) ?? 0)));
  const lots = new Map(ways.map(({ l, packs }) => [l, packs]));
  const stock = new Map([...lots].map(([l, packs]) => [l, builder.addRow(Number.NEGATIVE_INFINITY, packs)]));
  for (const { r, l, packKg, packs } of ways) {
    builder.addEntry(floor[r] as number, packKg);
    builder.addEntry(cap[r] as number, packKg);
    builder.addEntry(stock.get(l) as number, 1);
    builder.closeColumn(share === null ? 0 : packKg, 0, packs);
  }
  const model = () => builder.build(true);
  if (share !== null) return { ...model(), whole: new Uint8Array(ways.length).fill(1) };
  needKg.forEach((kg, r) => {
    if (largest.has(r)) builder.addEntry(floor[r] as number, -kg);
  });
  builder.closeColumn(1, 0, 1);
  return model();
}

function run(highs: Highs, model: LinearModel): Float64Array {
  return highs.withModel(modelData(highs, model), (held) => {
    held.options.set({ output_flag: false, random_seed: 0, ...(model.whole ? WHOLE : { solver: 'simplex' }) });
    held.run();
    return held.getSolution().colValue;
  });
}

const sorted = (times: readonly number[]) => [...times].sort((a, b) => a - b);
const told = (times: readonly number[]) => {
  const own = sorted(times);
  const at = (part: number) => (own[Math.round(part * (own.length - 1))] as number).toFixed(0);
  return `${at(0.5)} ms (${at(0.1)} to ${at(0.9)})`;
};

const solver = await loadHighsSolver();
const highs = await loadHighs();
for (const places of placesGiven.split(',').map(Number)) {
  const district = smallDistrict(largeDistrict(places));
  let inSolver = 0;
  const timed: LinearSolver = {
    ...solver,
    solve: (model) => {
      const before = performance.now();
      const answer = solver.solve(model);
      inSolver += performance.now() - before;
      return answer;
    },
  };
  const stage: number[] = [];
  const within: number[] = [];
  const bare: number[] = [];
  let shares: readonly [number, number] = [0, 0];
  for (let run = 0; run < WARM_UPS + RUNS; run++) {
    inSolver = 0;
    const start = performance.now();
    const { result } = allocateStock(
      district.scenario,
      decisions(),
      district.places,
      district.season,
      district.needs,
      timed,
      null,
    );
    const between = performance.now();
    const share = solveBare(district, highs);
    const end = performance.now();
    shares = [Math.min(...result.proofs.map(({ leastShare }) => leastShare)), share];
    if (run < WARM_UPS) continue;
    stage.push(between - start);
    within.push(inSolver);
    bare.push(end - between);
  }
  const ratio = (a: readonly number[], b: readonly number[]) =>
    sorted(a.map((ms, i) => ms / (b[i] as number)))[RUNS >> 1]?.toFixed(2);
  console.log(
    `${places} places: stage 5 ${told(stage)}, of it in the solver ${told(within)}; the solver by itself on the undivided ` +
      `task ${told(bare)}; stage / bare ${ratio(stage, bare)}, stage / own solver ${ratio(stage, within)}; ` +
      `least share ${shares[0].toFixed(6)} and ${shares[1].toFixed(6)}`,
  );
}
