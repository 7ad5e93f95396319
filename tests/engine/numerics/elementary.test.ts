import { describe, expect, it } from 'vitest';
import * as e from '../../../src/engine/numerics/elementary.ts';
import { sha256Hex } from '../../../src/engine/numerics/sha256.ts';

describe('quick', () => {
  it('near Math', () => {
    const worst: Record<string, number> = {};
    for (let i = 0; i < 200000; i++) {
      const x = (i - 100000) / 333.7;
      const pairs: [string, number, number][] = [
        ['exp', e.exp(x), Math.exp(x)],
        ['sin', e.sin(x), Math.sin(x)],
        ['cos', e.cos(x), Math.cos(x)],
        ['atan', e.atan(x), Math.atan(x)],
        ['log', e.log(Math.abs(x)), Math.log(Math.abs(x))],
        ['log10', e.log10(Math.abs(x)), Math.log10(Math.abs(x))],
        ['pow', e.pow(Math.abs(x), 2.3), Math.abs(x) ** 2.3],
        ['ten', e.tenTo(x), 10 ** x],
        ['acos', e.acos(x / 301), Math.acos(x / 301)],
        ['asin', e.asin(x / 301), Math.asin(x / 301)],
        ['atan2', e.atan2(x, 3), Math.atan2(x, 3)],
      ];
      for (const [n, a, b] of pairs) {
        const d = Math.abs(a - b) / (Math.abs(b) * 2.2e-16 || 1);
        if (d > (worst[n] ?? 0)) worst[n] = d;
        if (Number.isNaN(d) && !(Number.isNaN(a) && Number.isNaN(b)) && a !== b) console.log(n, x, a, b);
      }
    }
    console.log(worst);
    expect(sha256Hex(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});
