/** SHA-256 (FIPS 180-4) in plain arithmetic, so that hashing needs no platform and no promise. */

const ROUND_CONSTANTS = /* @__PURE__ */ (() => {
  const constants = new Uint32Array(64);
  let found = 0;
  for (let candidate = 2; found < 64; candidate++) {
    let prime = true;
    for (let d = 2; d * d <= candidate; d++) if (candidate % d === 0) prime = false;
    if (prime) constants[found++] = fractionBits(candidate, 3);
  }
  return constants;
})();

/** First 32 bits of the fraction of the n-th root of a whole number, by whole-number search. */
function fractionBits(value: number, root: 2 | 3): number {
  const target = BigInt(value) << BigInt(32 * root);
  let low = 0n;
  let high = 1n << 40n;
  while (high - low > 1n) {
    const middle = (low + high) / 2n;
    const power = root === 2 ? middle * middle : middle * middle * middle;
    if (power <= target) low = middle;
    else high = middle;
  }
  return Number(low & 0xffffffffn);
}

const START = [2, 3, 5, 7, 11, 13, 17, 19].map((prime) => fractionBits(prime, 2));

const rotate = (x: number, by: number) => (x >>> by) | (x << (32 - by));

/** Takes bytes piece by piece; `hex()` ends it. */
export class Sha256 {
  private readonly state = Uint32Array.from(START);
  private readonly block = new Uint8Array(64);
  private readonly schedule = new Uint32Array(64);
  private filled = 0;
  private bytes = 0;

  update(data: Uint8Array): this {
    this.bytes += data.length;
    let from = 0;
    while (from < data.length) {
      const take = Math.min(64 - this.filled, data.length - from);
      this.block.set(data.subarray(from, from + take), this.filled);
      this.filled += take;
      from += take;
      if (this.filled === 64) this.compress();
    }
    return this;
  }

  hex(): string {
    const bits = this.bytes * 8;
    const end = new Uint8Array((this.filled < 56 ? 56 : 120) - this.filled + 8);
    end[0] = 0x80;
    const view = new DataView(end.buffer);
    view.setUint32(end.length - 8, Math.floor(bits / 4294967296));
    view.setUint32(end.length - 4, bits >>> 0);
    this.update(end);
    return Array.from(this.state, (word) => word.toString(16).padStart(8, '0')).join('');
  }

  private compress(): void {
    const w = this.schedule;
    const b = this.block;
    for (let i = 0; i < 16; i++) {
      const at = i * 4;
      w[i] =
        ((b[at] as number) << 24) |
        ((b[at + 1] as number) << 16) |
        ((b[at + 2] as number) << 8) |
        (b[at + 3] as number);
    }
    for (let i = 16; i < 64; i++) {
      const early = w[i - 15] as number;
      const late = w[i - 2] as number;
      const s0 = rotate(early, 7) ^ rotate(early, 18) ^ (early >>> 3);
      const s1 = rotate(late, 17) ^ rotate(late, 19) ^ (late >>> 10);
      w[i] = (w[i - 16] as number) + s0 + (w[i - 7] as number) + s1;
    }
    let [a, bb, c, d, e, f, g, h] = this.state as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    for (let i = 0; i < 64; i++) {
      const s1 = rotate(e, 6) ^ rotate(e, 11) ^ rotate(e, 25);
      const first = (h + s1 + ((e & f) ^ (~e & g)) + (ROUND_CONSTANTS[i] as number) + (w[i] as number)) | 0;
      const s0 = rotate(a, 2) ^ rotate(a, 13) ^ rotate(a, 22);
      const second = (s0 + ((a & bb) ^ (a & c) ^ (bb & c))) | 0;
      h = g;
      g = f;
      f = e;
      e = (d + first) | 0;
      d = c;
      c = bb;
      bb = a;
      a = (first + second) | 0;
    }
    const added = [a, bb, c, d, e, f, g, h];
    for (let i = 0; i < 8; i++) this.state[i] = (this.state[i] as number) + (added[i] as number);
    this.filled = 0;
  }
}

export function sha256Hex(data: Uint8Array): string {
  return new Sha256().update(data).hex();
}
