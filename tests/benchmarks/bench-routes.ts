import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { readInstance } from '../../src/adapters/instance-files/read-instance.ts';
import { stepsInTime } from '../../src/cli/steps-in-time.ts';
import { solveInstance } from '../../src/engine/index.ts';
import { solutionText } from '../../src/presentation/exports/solution-text.ts';
import { FAMILIES, type Family } from './best-known.ts';
import { priceRoutes, readSolution } from './price-routes.ts';
import { readPublished } from './read-published.ts';

const [root = '.', secondsGiven = '30', seedsGiven = '1,2,3', only = ''] = process.argv.slice(2);
const seconds = Number(secondsGiven);
const seeds = seedsGiven.split(',').map(Number);
const vrp = join(root, '../shared/benchmarks/vrp');
if (!existsSync(vrp)) {
  console.log('The folder ../shared with the published instances is not beside this project: nothing to run.');
  process.exit(0);
}

/** Processor time of this process: the machine may be shared. */
const processorMs = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

interface Run {
  readonly gap: number;
  readonly iterations: number;
}

function run(file: string, best: number, seed: number): Run {
  const instance = readInstance(readFileSync(join(vrp, file), 'utf8'));
  const limits = stepsInTime(instance, seed, seconds, processorMs);
  // Nothing is left to find below the best known cost, which is stated with two decimals at most.
  const least = (best + 0.005) * instance.costUnits;
  let cheapest = Number.POSITIVE_INFINITY;
  const answer = solveInstance(instance, {
    seed,
    iterations: limits.iterations,
    stop: () => cheapest <= least || limits.stop?.() === true,
    progress: (_done, _share, cost) => {
      cheapest = cost;
    },
  });
  const { cost, faults } = priceRoutes(readPublished(join(vrp, file)), readSolution(solutionText(instance, answer)));
  if (faults.length > 0) throw new Error(`${file}, seed ${seed}: ${faults.join('; ')}`);
  return { gap: (cost / best - 1) * 100, iterations: answer.iterationsDone };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const percent = (value: number) => (Math.abs(value) < 0.005 ? '0.00' : value.toFixed(2));

function runFamily({ name, limit, files }: Family): string[] {
  const rows: string[] = [];
  const gaps: number[] = [];
  for (const { file, best, beside } of files.filter((f) => only.split(',').some((name) => f.file.includes(name)))) {
    const runs = seeds.map((seed) => run(file, best, seed));
    const gap = mean(runs.map((r) => r.gap));
    gaps.push(gap);
    const each = runs.map((r) => percent(r.gap)).join(' ');
    const millions = (mean(runs.map((r) => r.iterations)) / 1e6).toFixed(2);
    rows.push(`| ${file} | ${best} | ${percent(gap)} | ${each} | ${beside ?? ''} | ${millions} |`);
    console.log(rows.at(-1));
  }
  if (gaps.length > 0) rows.push(`| **${name}** | | **${percent(mean(gaps))}** | limit ${limit} | | |`);
  return rows;
}

const rows = FAMILIES.flatMap(runFamily);
const commit = spawnSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: root, encoding: 'utf8' }).stdout.trim();
const table = [
  `Gap to the best known cost in percent, mean of seeds ${seeds.join(' ')}, then seed by seed; ${seconds} s of processor time each, or`,
  'until the best known is met, on one core',
  `(${cpus()[0]?.model.trim()}, Node ${process.versions.node}, commit ${commit}). "Beside": the best public solver in C++ after 30 s.`,
  'Millions: iterations done, of which the same number and seed give the same routes. Bound: none.',
  '',
  '| file | best known | gap | by seed | beside | millions |',
  '| --- | --- | --- | --- | --- | --- |',
  ...rows,
].join('\n');
console.log(table);
if (only === '') {
  const readme = join(root, 'src/engine/stages/6-delivery/README.md');
  const [from, to] = ['<!-- bench:routes -->', '<!-- end of bench:routes -->'];
  const text = readFileSync(readme, 'utf8');
  const [before = '', rest = ''] = text.split(from);
  const after = rest.split(to)[1] ?? '\n';
  writeFileSync(readme, `${before}${from}\n${table}\n${to}${after}`);
}
