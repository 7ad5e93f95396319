/**
 * Sum that does not depend on the order of its terms and is right to the last bit: the partial sums of Shewchuk 1997
 * (Discrete & Computational Geometry 18:305-363, adaptive precision arithmetic), as in math.fsum of Python.
 */
export class ExactSum {
  private readonly partials: number[] = [];

  add(term: number): this {
    let x = term;
    let kept = 0;
    for (let i = 0; i < this.partials.length; i++) {
      let y = this.partials[i] as number;
      if (Math.abs(x) < Math.abs(y)) [x, y] = [y, x];
      const high = x + y;
      const low = y - (high - x);
      if (low !== 0) this.partials[kept++] = low;
      x = high;
    }
    this.partials.length = kept;
    this.partials.push(x);
    return this;
  }

  /** Nearest number to the exact sum (the half-way case of fsum included). */
  value(): number {
    const p = this.partials;
    let n = p.length;
    if (n === 0) return 0;
    let high = p[--n] as number;
    let low = 0;
    while (n > 0) {
      const x = high;
      const y = p[--n] as number;
      high = x + y;
      low = y - (high - x);
      if (low !== 0) break;
    }
    if (n > 0) {
      const next = p[n - 1] as number;
      if ((low < 0 && next < 0) || (low > 0 && next > 0)) {
        const doubled = low * 2;
        const candidate = high + doubled;
        if (doubled === candidate - high) high = candidate;
      }
    }
    return high;
  }
}

/** Exact sum of a list or column. */
export function exactSum(terms: Iterable<number>): number {
  const sum = new ExactSum();
  for (const term of terms) sum.add(term);
  return sum.value();
}
