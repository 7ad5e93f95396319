/**
 * Seeded stream of random numbers: xoshiro128** (Blackman & Vigna 2021, ACM Trans. Math. Softw. 47:36), seeded by
 * splitmix32. Whole-number arithmetic only, hence the same stream everywhere.
 */
export class RandomStream {
  private readonly state = new Uint32Array(4);

  constructor(seed: number) {
    let s = seed >>> 0;
    for (let i = 0; i < 4; i++) {
      s = (s + 0x9e3779b9) >>> 0;
      let z = s;
      z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
      z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
      this.state[i] = (z ^ (z >>> 16)) >>> 0;
    }
  }

  /** Whole number from 0 to 2^32 - 1. */
  nextUint32(): number {
    return this.nextInt32() >>> 0;
  }

  /** The same 32 bits as a signed number. */
  private nextInt32(): number {
    const s = this.state;
    const s1 = s[1] as number;
    const product = Math.imul(s1, 5);
    const result = Math.imul((product << 7) | (product >>> 25), 9);
    const t = s1 << 9;
    s[2] = (s[2] as number) ^ (s[0] as number);
    s[3] = (s[3] as number) ^ s1;
    s[1] = s1 ^ (s[2] as number);
    s[0] = (s[0] as number) ^ (s[3] as number);
    s[2] = (s[2] as number) ^ t;
    const s3 = s[3] as number;
    s[3] = (s3 << 11) | (s3 >>> 21);
    return result;
  }

  /** 0 <= x < 1, 53 random bits. */
  next(): number {
    const high = this.nextUint32() >>> 5;
    const low = this.nextUint32() >>> 6;
    return (high * 67108864 + low) / 9007199254740992;
  }

  /** Whole number from 0 to below - 1. */
  below(below: number): number {
    return Math.floor(this.next() * below);
  }

  /** The same from 31 random bits, for loops that must not allocate: no number on the way is put on the heap. */
  pick(below: number): number {
    return Math.floor(((this.nextInt32() >>> 1) * below) / 2147483648);
  }
}
