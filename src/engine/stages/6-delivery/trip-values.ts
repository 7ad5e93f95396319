/** Places in the table: 1 MB. */
const SIZE = 1 << 16;
const float = new Float64Array(1);
const halves = new Int32Array(float.buffer);

/**
 * What trips run before came to: a search comes back to the same trip again and again. A trip is known by 64 bits made of all that
 * its heat depends on; of two that share a place in the table the later one stays.
 */
export class TripValues {
  private readonly high = new Int32Array(SIZE);
  private readonly low = new Int32Array(SIZE);
  private readonly value = new Float64Array(SIZE).fill(Number.NaN);
  private a = 0;
  private b = 0;

  /** Begins the name of a trip, to be gone on with by `and`. */
  begin(kind: number, readyMinute: number): void {
    this.a = 0x9e3779b9;
    this.b = 0x85ebca6b;
    this.and(kind);
    this.andMinute(readyMinute);
  }

  andMinute(minute: number): void {
    float[0] = minute;
    this.and(halves[0] as number);
    this.and(halves[1] as number);
  }

  and(part: number): void {
    // Two lanes of multiply and rotate, as in MurmurHash3 (Appleby, public domain).
    let k = Math.imul(part, 0xcc9e2d51);
    k = Math.imul((k << 15) | (k >>> 17), 0x1b873593);
    this.a = (Math.imul(((this.a ^ k) << 13) | ((this.a ^ k) >>> 19), 5) + 0xe6546b64) | 0;
    let m = Math.imul(part ^ 0x5bd1e995, 0x239b961b);
    m = Math.imul((m << 16) | (m >>> 16), 0xab0e9789);
    this.b = (Math.imul(((this.b ^ m) << 17) | ((this.b ^ m) >>> 15), 5) + 0x561ccd1b) | 0;
  }

  /** What the trip named last came to; NaN where it is not known. */
  find(): number {
    const at = this.place();
    return this.high[at] === this.a && this.low[at] === this.b ? (this.value[at] as number) : Number.NaN;
  }

  /** Keeps what the trip named last comes to. */
  keep(value: number): void {
    const at = this.place();
    this.high[at] = this.a;
    this.low[at] = this.b;
    this.value[at] = value;
  }

  private place(): number {
    return ((this.a ^ (this.b >>> 7)) >>> 0) & (SIZE - 1);
  }
}
