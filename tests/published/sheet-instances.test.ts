import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readInstance } from '../../src/adapters/instance-files/read-instance.ts';
import { type RoutingInstance, solveInstance } from '../../src/engine/index.ts';
import { SHARED_ABSENT, sharedFolder } from '../shared-folder.ts';

/**
 * Instances of TSPLIB (Reinelt 1991, ORSA J. Comput. 3:376) and of the sets A, E and P (Augerat 1995; Christofides & Eilon 1969)
 * as the evidence sheet on heat and season prints them, rows 82 to 89; optima proven.
 */
const sheet = sharedFolder === null ? '' : readFileSync(`${sharedFolder}/evidence/thermal-and-season.md`, 'utf8');

function paragraph(name: string): string {
  return sheet.split('\n').find((line) => line.startsWith(`${name} (`)) ?? '';
}

/** Rows `node x y ...` behind the heading of a paragraph, up to its first full stop behind a row. */
function rowsOf(name: string): number[][] {
  const list = paragraph(name).replace(/^.*?: (?=1 )/, '');
  const rows: number[][] = [];
  for (const part of list.split(';')) {
    const row = (part.split(/\.(?:\s|$)/)[0] ?? '').trim().split(/\s+/).map(Number);
    if (row[0] !== rows.length + 1 || row.some(Number.isNaN)) break;
    rows.push(row);
  }
  return rows;
}

function asText(name: string, header: string): string {
  const rows = rowsOf(name);
  const points = rows.map(([node, x, y]) => `${node} ${x} ${y}`).join('\n');
  const demands = rows.every((row) => row.length > 3)
    ? `DEMAND_SECTION\n${rows.map((row) => `${row[0]} ${row[3]}`).join('\n')}\n`
    : '';
  return `NAME : ${name}\n${header}\nDIMENSION : ${rows.length}\nNODE_COORD_SECTION\n${points}\n${demands}EOF\n`;
}

const solve = (instance: RoutingInstance, iterations: number, seed = 1) =>
  solveInstance(instance, { seed, iterations, stop: null, progress: null });

function lengthOf(instance: RoutingInstance, routes: readonly (readonly number[])[]): number {
  const { lengths, places } = instance;
  return routes.reduce((total, route) => {
    const stops = [0, ...route, 0];
    return (
      total + stops.slice(1).reduce((sum, to, i) => sum + (lengths[(stops[i] ?? 0) * places + to] ?? Number.NaN), 0)
    );
  }, 0);
}

describe.skipIf(sharedFolder === null)(`instances printed in the sheet (${SHARED_ABSENT})`, () => {
  const burma = () => readInstance(asText('burma14', 'TYPE : TSP\nEDGE_WEIGHT_TYPE : GEO'));

  it('row 82: burma14 lengths on the earth and the canonical tour', () => {
    const instance = burma();
    expect(instance.places).toBe(14);
    expect([instance.lengths[1], instance.lengths[2]]).toEqual([153, 510]);
    expect(lengthOf(instance, [Array.from({ length: 13 }, (_, i) => i + 1)])).toBe(4562);
  });

  it('row 83: burma14 and ulysses22 to the optimum', () => {
    expect(solve(burma(), 8000).cost).toBe(3323);
    const ulysses = readInstance(asText('ulysses22', 'TYPE : TSP\nEDGE_WEIGHT_TYPE : GEO'));
    expect(ulysses.places).toBe(22);
    expect(solve(ulysses, 20_000).cost).toBe(7013);
  });

  it('row 85: berlin52 within 3 percent of 7542', () => {
    const cost = solve(readInstance(asText('berlin52', 'TYPE : TSP\nEDGE_WEIGHT_TYPE : EUC_2D')), 20_000).cost;
    expect(cost).toBeGreaterThanOrEqual(7542);
    expect(cost).toBeLessThanOrEqual(7542 * 1.03);
  });

  it('row 86: E-n22-k4, listed routes and the optimum', () => {
    const instance = readInstance(asText('E-n22-k4', 'TYPE : CVRP\nEDGE_WEIGHT_TYPE : EUC_2D\nCAPACITY : 6000'));
    const listed = ['7 2 3 6 8 10', '11 9 4 5 12 14', '13 16 19 21 18', '15 22 20 17'];
    expect(
      lengthOf(
        instance,
        listed.map((route) => route.split(' ').map((node) => Number(node) - 1)),
      ),
    ).toBe(375);
    const answer = solve(instance, 10_000);
    expect(answer.cost).toBe(375);
    const load = (customers: readonly number[]) => customers.reduce((sum, c) => sum + (instance.demand[c] ?? 0), 0);
    expect(answer.routes.map(({ trips }) => load(trips[0] ?? [])).sort()).toEqual([5400, 5600, 5600, 5900]);
  });

  it('row 87: P-n16-k8 to the optimum', () => {
    const instance = readInstance(asText('P-n16-k8', 'TYPE : CVRP\nEDGE_WEIGHT_TYPE : EUC_2D\nCAPACITY : 35'));
    const answer = solve(instance, 10_000);
    expect([answer.cost, answer.routes.length]).toEqual([450, 8]);
  });

  it('row 88: E-n13-k4, lengths given row by row below the diagonal', () => {
    const text = paragraph('E-n13-k4');
    const numbers = (from: RegExp) => (from.exec(text)?.[1] ?? '').trim().split(/\s+/);
    const lengths = numbers(/: ([\d ]+)\./);
    const demands = numbers(/Demands nodes 2-13: ([\d ]+)\./);
    expect([lengths.length, demands.length]).toEqual([78, 12]);
    const instance = readInstance(
      `TYPE : CVRP\nDIMENSION : 13\nEDGE_WEIGHT_TYPE : EXPLICIT\nEDGE_WEIGHT_FORMAT : LOWER_ROW\nCAPACITY : 6000\nEDGE_WEIGHT_SECTION\n${lengths.join(' ')}\nDEMAND_SECTION\n1 0\n${demands.map((kg, i) => `${i + 2} ${kg}`).join('\n')}\nEOF`,
    );
    expect(lengthOf(instance, [[1], [8, 5, 3], [9, 12, 10, 6], [11, 4, 7, 2]])).toBe(247);
    expect(solve(instance, 5000).cost).toBe(247);
    for (let seed = 1; seed <= 12; seed++) expect(solve(instance, 20_000, seed).cost).toBe(247);
  });

  it('row 89: A-n32-k5, the listed routes and 784', () => {
    const instance = readInstance(asText('A-n32-k5', 'TYPE : CVRP\nEDGE_WEIGHT_TYPE : EUC_2D\nCAPACITY : 100'));
    const listed = ['21 31 19 17 13 7 26', '12 1 16 30', '27 24', '29 18 8 9 22 15 10 25 5 20', '14 28 11 4 23 3 2 6'];
    expect(
      lengthOf(
        instance,
        listed.map((route) => route.split(' ').map(Number)),
      ),
    ).toBe(784);
    expect(solve(instance, 20_000).cost).toBe(784);
  });
});
