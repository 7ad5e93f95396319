import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readInstance } from '../../src/adapters/instance-files/read-instance.ts';
import { solveInstance } from '../../src/engine/index.ts';
import { solutionText } from '../../src/presentation/exports/solution-text.ts';
import { priceRoutes, readSolution } from '../benchmarks/price-routes.ts';
import { readPublished } from '../benchmarks/read-published.ts';
import { SHARED_ABSENT, sharedFolder } from '../shared-folder.ts';

/**
 * Published instances with the cost of the solution published beside them (sets of Uchoa et al. 2017, Solomon 1987, Gehring &
 * Homberger 1999, Pessoa, Sadykov & Uchoa 2018, Yang 2023, Cordeau & Laporte 2001).
 */
const PUBLISHED: readonly (readonly [string, string, number])[] = [
  ['cvrp/X-n101-k25', 'vrp', 27591],
  ['cvrp/X-n200-k36', 'vrp', 58578],
  ['cvrp/X-n256-k16', 'vrp', 18839],
  ['vrptw/R101', 'txt', 1637.7],
  ['vrptw/C101', 'txt', 827.3],
  ['vrptw/RC101', 'txt', 1619.8],
  ['vrptw/R201', 'txt', 1143.2],
  ['vrptw/R112', 'txt', 948.6],
  ['vrptw/RC208', 'txt', 776.1],
  ['vrptw/C1_2_1', 'txt', 2698.6],
  ['mtvrptwr/C202R0.5', 'vrp', 1547.3],
  ['mtvrptwr/R201R0.5', 'vrp', 1442.6],
];

/** A short search comes within so many percent of the best known cost (Augerat 1995, Christofides & Eilon 1969, and as above). */
const SHORT_RUNS: readonly (readonly [string, number, number])[] = [
  ['cvrp/E-n51-k5.vrp', 521, 1],
  ['cvrp/P-n76-k5.vrp', 627, 3],
  ['vrptw/C101.txt', 827.3, 0.5],
  ['vrptw/R101.txt', 1637.7, 2],
  ['hfvrp/HVRP13.txt', 1517.84, 6],
  ['hfvrp/HVRP_DLP_10.txt', 2107.55, 6],
  ['hfvrp/X101-FSMFD.vrp', 35170.24, 4],
  ['mtvrptwr/C202R0.5.vrp', 1547.3, 6],
  ['sdvrptw/PR01.vrp', 1655.42, 2],
];

const vrp = `${sharedFolder}/benchmarks/vrp`;

describe.skipIf(sharedFolder === null)(`published routing instances (${SHARED_ABSENT})`, () => {
  it.each(PUBLISHED)('prices the published solution of %s as published', (name, ending, cost) => {
    const priced = priceRoutes(
      readPublished(`${vrp}/${name}.${ending}`),
      readSolution(readFileSync(`${vrp}/${name}.sol`, 'utf8')),
    );
    expect(priced.faults).toEqual([]);
    expect(priced.cost).toBeCloseTo(cost, 1);
  });

  it.each(SHORT_RUNS)(
    'routes %s: cost as a reader of its own prices it, near the best known',
    (file, best, percent) => {
      const instance = readInstance(readFileSync(`${vrp}/${file}`, 'utf8'));
      const answer = solveInstance(instance, { seed: 1, iterations: 20_000, stop: null, progress: null });
      const priced = priceRoutes(readPublished(`${vrp}/${file}`), readSolution(solutionText(instance, answer)));
      expect(answer.leftOut).toEqual([]);
      expect(priced.faults).toEqual([]);
      expect(priced.cost).toBeCloseTo(answer.cost, 4);
      expect(priced.cost).toBeGreaterThan(best * (1 - 1e-4));
      expect(priced.cost).toBeLessThan(best * (1 + percent / 100));
    },
  );
});
