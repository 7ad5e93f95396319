import { Sha256 } from './sha256.ts';

/**
 * SHA-256 of any value made of plain objects, arrays, typed arrays, text, numbers, booleans and null. Object keys are
 * taken in sorted order; numbers by their bits, so -0 differs from 0 and NaN equals NaN. Values hashed by identity of
 * content: two equal trees give equal hashes.
 */
export function contentHash(value: unknown): string {
  const hash = new Sha256();
  const buffer = new ContentBuffer(hash);
  feed(buffer, value);
  buffer.flush();
  return hash.hex();
}

/** Gathers small pieces so that the hash works on whole blocks. */
class ContentBuffer {
  private readonly bytes = new Uint8Array(65536);
  private readonly view = new DataView(this.bytes.buffer);
  private readonly hash: Sha256;
  private filled = 0;

  constructor(hash: Sha256) {
    this.hash = hash;
  }

  flush(): void {
    this.hash.update(this.bytes.subarray(0, this.filled));
    this.filled = 0;
  }

  tag(mark: number): void {
    if (this.filled + 1 > this.bytes.length) this.flush();
    this.bytes[this.filled++] = mark;
  }

  number(x: number): void {
    if (this.filled + 8 > this.bytes.length) this.flush();
    this.view.setFloat64(this.filled, x);
    this.filled += 8;
  }

  text(text: string): void {
    this.number(text.length);
    for (let i = 0; i < text.length; i++) {
      if (this.filled + 2 > this.bytes.length) this.flush();
      this.view.setUint16(this.filled, text.charCodeAt(i));
      this.filled += 2;
    }
  }
}

function feed(out: ContentBuffer, value: unknown): void {
  if (value === null || value === undefined) out.tag(0);
  else if (typeof value === 'number') {
    out.tag(1);
    out.number(value);
  } else if (typeof value === 'string') {
    out.tag(2);
    out.text(value);
  } else if (typeof value === 'boolean') out.tag(value ? 3 : 4);
  else if (Array.isArray(value) || ArrayBuffer.isView(value)) {
    const list = value as ArrayLike<unknown>;
    out.tag(5);
    out.number(list.length);
    for (let i = 0; i < list.length; i++) feed(out, list[i]);
  } else {
    const record = value as Record<string, unknown>;
    const keys = Object.keys(record)
      .filter((key) => record[key] !== undefined)
      .sort();
    out.tag(6);
    out.number(keys.length);
    for (const key of keys) {
      out.text(key);
      feed(out, record[key]);
    }
  }
}
