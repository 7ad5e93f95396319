import { describe, expect, it } from 'vitest';
import { bootstrapQuantile } from '../../../src/engine/numerics/bootstrap-quantile.ts';
import { latinHypercube } from '../../../src/engine/numerics/latin-hypercube.ts';
import { normalQuantile } from '../../../src/engine/numerics/normal-quantile.ts';
import { orthogonalHypercube } from '../../../src/engine/numerics/orthogonal-hypercube.ts';
import { quantile } from '../../../src/engine/numerics/quantile.ts';
import { RandomStream } from '../../../src/engine/numerics/random-stream.ts';
import { varianceShares } from '../../../src/engine/numerics/variance-sensitivity.ts';

describe('normal quantile', () => {
  it('is that of the tables: 1.281552, 1.644854, 1.959964, 2.326348, 3.090232 (any handbook of statistics)', () => {
    const tables = [
      [0.9, 1.2815515655446004],
      [0.95, 1.6448536269514722],
      [0.975, 1.959963984540054],
      [0.99, 2.3263478740408408],
      [0.999, 3.090232306167813],
    ] as const;
    for (const [p, z] of tables) {
      expect(normalQuantile(p)).toBeCloseTo(z, 12);
      expect(normalQuantile(1 - p)).toBeCloseTo(-z, 10);
    }
    expect(normalQuantile(0.5)).toBe(0);
    // The check value of Wichura 1988: p = 1e-20 gives -9.26234008979841.
    expect(normalQuantile(1e-20)).toBeCloseTo(-9.26234008979841, 10);
  });
});

describe('latin hypercube', () => {
  it('puts one value of every column in each equal part, and repeats itself by its seed', () => {
    const [count, width] = [97, 5];
    const rows = latinHypercube(count, width, 3);
    for (let column = 0; column < width; column++) {
      const parts = rows.map((row) => Math.floor((row[column] as number) * count));
      expect([...parts].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    }
    expect(latinHypercube(count, width, 3)).toEqual(rows);
    expect(latinHypercube(count, width, 4)).not.toEqual(rows);
  });

  it('pairs columns at random: no correlation beyond chance', () => {
    const count = 4000;
    const rows = latinHypercube(count, 2, 1);
    const products = rows.map(([x, y]) => ((x as number) - 0.5) * ((y as number) - 0.5) * 12);
    expect(Math.abs(products.reduce((sum, v) => sum + v, 0) / count)).toBeLessThan(3 / Math.sqrt(count));
  });

  it('has a smaller error of a mean than plain random numbers (McKay, Beckman & Conover 1979)', () => {
    const sumOf = (row: ArrayLike<number>) => Array.from(row).reduce((sum, x) => sum + x * x, 0);
    const mean = (rows: readonly ArrayLike<number>[]) => rows.reduce((sum, row) => sum + sumOf(row), 0) / rows.length;
    const truth = 4 / 3;
    const error = (rowsOf: (seed: number) => readonly ArrayLike<number>[]) =>
      Array.from({ length: 40 }, (_, seed) => Math.abs(mean(rowsOf(seed)) - truth)).reduce((sum, e) => sum + e, 0);
    const plain = (seed: number) => {
      const stream = new RandomStream(seed);
      return Array.from({ length: 100 }, () => Array.from({ length: 4 }, () => stream.next()));
    };
    expect(error((seed) => latinHypercube(100, 4, seed))).toBeLessThan(error(plain) / 20);
  });
});

describe('orthogonal hypercube', () => {
  const [side, width] = [7, 10];
  const rows = orthogonalHypercube(side, width, 3);

  it('puts one value of every column in each equal part, and repeats itself by its seed', () => {
    for (let column = 0; column < width; column++) {
      const parts = rows.map((row) => Math.floor((row[column] as number) * side * side));
      expect([...parts].sort((a, b) => a - b)).toEqual(Array.from({ length: side * side }, (_, i) => i));
    }
    expect(orthogonalHypercube(side, width, 3)).toEqual(rows);
    expect(orthogonalHypercube(side, width, 4)).not.toEqual(rows);
  });

  it('puts one row in each square of every two of its first columns (strength 2: Bush 1952), side + 1 of them and no more', () => {
    const squares = (one: number, other: number) =>
      new Set(rows.map((row) => [one, other].map((c) => Math.floor((row[c] as number) * side)).join())).size;
    for (let one = 0; one <= side; one++)
      for (let other = 0; other < one; other++) expect(squares(one, other)).toBe(side * side);
    expect(squares(width - 1, 0)).toBeLessThan(side * side);
  });

  it('knows the mean of a product of two inputs better than a Latin hypercube (Tang 1993)', () => {
    const error = (rowsOf: (seed: number) => readonly Float64Array[]) => {
      const off = Array.from({ length: 60 }, (_, seed) => {
        const products = rowsOf(seed).map(([x, y]) => ((x as number) - 0.5) * ((y as number) - 0.5));
        return Math.abs(products.reduce((sum, product) => sum + product, 0) / products.length);
      });
      return off.reduce((sum, e) => sum + e, 0);
    };
    expect(error((seed) => orthogonalHypercube(11, 3, seed))).toBeLessThan(
      error((seed) => latinHypercube(121, 3, seed)) / 5,
    );
  });
});

/** Indices of a function of independent uniform inputs, by two Latin hypercubes of `n` rows. */
function sharesOf(f: (x: Float64Array) => number, width: number, n: number) {
  const [a, b] = [latinHypercube(n, width, 11), latinHypercube(n, width, 12)];
  const mixed = Array.from({ length: width }, (_, input) =>
    a.map((row, i) => {
      const x = Float64Array.from(row);
      x[input] = (b[i] as Float64Array)[input] as number;
      return f(x);
    }),
  );
  return varianceShares(a.map(f), b.map(f), mixed);
}

describe('sensitivity by variance', () => {
  it('finds the indices of the Ishigami function (Ishigami & Homma 1990) within 0.02 at 32 768 rows', () => {
    const [a, b] = [7, 0.1];
    const f = (u: Float64Array) => {
      const [x, y, z] = Array.from(u, (v) => Math.PI * (2 * v - 1)) as [number, number, number];
      return Math.sin(x) + a * Math.sin(y) ** 2 + b * z ** 4 * Math.sin(x);
    };
    // Closed form: V1 = (1 + b π⁴/5)²/2, V2 = a²/8, V13 = 8 b² π⁸/225.
    const v1 = (1 + (b * Math.PI ** 4) / 5) ** 2 / 2;
    const v2 = a ** 2 / 8;
    const v13 = (8 * b ** 2 * Math.PI ** 8) / 225;
    const v = v1 + v2 + v13;
    const truth = [
      [v1 / v, (v1 + v13) / v],
      [v2 / v, v2 / v],
      [0, v13 / v],
    ];
    // 0.3139, 0.4424, 0 and 0.5576, 0.4424, 0.2437 as usually printed.
    expect(v1 / v).toBeCloseTo(0.3139, 4);
    sharesOf(f, 3, 32_768).forEach(({ first, total }, i) => {
      expect(Math.abs(first - (truth[i]?.[0] as number))).toBeLessThan(0.02);
      expect(Math.abs(total - (truth[i]?.[1] as number))).toBeLessThan(0.02);
    });
  });

  it('finds the indices of the g-function (Sobol 1993; a = 0, 1, 4.5, 9, 99, 99, 99, 99) within 0.02 at 32 768 rows', () => {
    const as = [0, 1, 4.5, 9, 99, 99, 99, 99];
    const f = (x: Float64Array) =>
      as.reduce((product, a, i) => (product * (Math.abs(4 * (x[i] as number) - 2) + a)) / (1 + a), 1);
    const parts = as.map((a) => 1 / 3 / (1 + a) ** 2);
    const whole = parts.reduce((product, v) => product * (1 + v), 1) - 1;
    sharesOf(f, 8, 32_768).forEach(({ first, total }, i) => {
      const part = parts[i] as number;
      const others = (whole + 1) / (1 + part);
      expect(Math.abs(first - part / whole)).toBeLessThan(0.02);
      expect(Math.abs(total - (part * others) / whole)).toBeLessThan(0.02);
    });
  });

  it('gives nought to an input without effect and to an output that does not vary', () => {
    expect(sharesOf(() => 3, 2, 64)).toEqual([
      { first: 0, total: 0 },
      { first: 0, total: 0 },
    ]);
    expect(sharesOf((x) => x[0] as number, 2, 64)[1]).toEqual({ first: 0, total: 0 });
  });
});

describe('bootstrap interval of a quantile', () => {
  it('covers the true P10 and P90 of a skewed spread in close to 95 of 100 samples', () => {
    const samples = 400;
    for (const p of [0.1, 0.9]) {
      const truth = Math.exp(0.5 * normalQuantile(p));
      let covered = 0;
      for (let s = 0; s < samples; s++) {
        const stream = new RandomStream(1000 + s);
        const values = Array.from({ length: 300 }, () => Math.exp(0.5 * normalQuantile(stream.next() || 0.5)));
        const { low, high } = bootstrapQuantile(values, 1, p, 0.95, 200, s);
        if (low <= truth && truth <= high) covered++;
      }
      // Chance alone moves the share by 0.011 (one standard error); percentile intervals are known to fall a little short.
      expect(covered / samples).toBeGreaterThan(0.91);
      expect(covered / samples).toBeLessThan(0.985);
    }
  });

  it('covers close to nominal where samples are even in themselves: P10 of a sum of five normal numbers', () => {
    const [samples, side, width] = [300, 5, 6];
    const weights = [2, 1, 1, 0.5, 0.5];
    const truth = 10 + normalQuantile(0.1) * Math.sqrt(weights.reduce((sum, w) => sum + w * w, 0));
    let [covered, within] = [0, 0];
    for (let s = 0; s < samples; s++) {
      const values = Array.from({ length: 30 }, (_, i) => orthogonalHypercube(side, width, 40 * s + i))
        .flat()
        .map((row) => weights.reduce((sum, w, c) => sum + w * normalQuantile(row[c] as number), 10));
      const { low, high } = bootstrapQuantile(values, side * side, 0.1, 0.95, 200, s);
      if (low <= truth && truth <= high) covered++;
      if (low <= quantile(values, 0.1) && quantile(values, 0.1) <= high) within++;
    }
    // One standard error of the share is 0.013; thirty samples alone make such intervals a little short.
    expect(covered / samples).toBeGreaterThan(0.9);
    expect(covered / samples).toBeLessThan(0.99);
    expect(within / samples).toBeGreaterThan(0.99);
  });

  it('keeps the values of one group together: groups of equal values are as few as the groups', () => {
    const stream = new RandomStream(5);
    const single = Array.from({ length: 100 }, () => stream.next());
    const grouped = single.flatMap((value) => new Array<number>(20).fill(value));
    const width = ({ low, high }: { low: number; high: number }) => high - low;
    const alone = width(bootstrapQuantile(single, 1, 0.5, 0.95, 400, 1));
    const together = width(bootstrapQuantile(grouped, 20, 0.5, 0.95, 400, 1));
    const apart = width(bootstrapQuantile(grouped, 1, 0.5, 0.95, 400, 1));
    expect(together / alone).toBeGreaterThan(0.8);
    expect(apart / alone).toBeLessThan(0.5);
  });
});
