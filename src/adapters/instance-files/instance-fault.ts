/** What is wrong with an instance file, for the person who sent it: line, value, what would be read instead. */
export class InstanceFault extends Error {}

/** Reads a number or says where none stands. */
export function numberAt(text: string | undefined, line: number, what: string): number {
  const value = Number(text);
  if (text === undefined || text.trim() === '' || !Number.isFinite(value)) {
    throw new InstanceFault(`Line ${line}: ${what} should be a number, not "${text ?? ''}".`);
  }
  return value;
}
