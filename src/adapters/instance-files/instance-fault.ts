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

/** Reads a number that cannot be less than nothing: a weight, a length. */
export function amountAt(text: string | undefined, line: number, what: string): number {
  const value = numberAt(text, line, what);
  if (value < 0) throw new InstanceFault(`Line ${line}: ${what} is less than nothing: ${text}.`);
  return value;
}

/** Reads a whole number of at least one. */
export function countAt(text: string | undefined, line: number, what: string): number {
  const value = numberAt(text, line, what);
  if (!Number.isInteger(value) || value < 1) throw new InstanceFault(`Line ${line}: ${what} is ${value}.`);
  return value;
}

/** Numbers of vehicles that are alike, from `first`: more than there are customers never leave the depot. */
export function vehicleNumbers(first: number, count: number, customers: number): number[] {
  return Array.from({ length: Math.min(count, customers) }, (_, i) => first + i);
}
