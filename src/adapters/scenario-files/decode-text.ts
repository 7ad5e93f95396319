import type { ReadFaultKind } from '../../engine/index.ts';

const BYTE_ORDER_MARK = '\ufeff';
/** Bytes at the start that are looked through for zero bytes, which UTF-8 text does not hold and UTF-16 text does. */
const PROBED_BYTES = 512;

/** Text of a file in UTF-8 (RFC 3629), decoded strictly and without its byte-order mark, which is a fault that is only noted. */
export function decodeText(bytes: Uint8Array): {
  readonly text: string | null;
  readonly faults: readonly ReadFaultKind[];
} {
  if (bytes.subarray(0, PROBED_BYTES).includes(0)) return { text: null, faults: ['encoding'] };
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return { text: null, faults: ['encoding'] };
  }
  const marked = text.startsWith(BYTE_ORDER_MARK);
  const plain = marked ? text.slice(1) : text;
  if (plain.trim() === '') return { text: null, faults: ['empty'] };
  return { text: plain, faults: marked ? ['byte-order-mark'] : [] };
}
