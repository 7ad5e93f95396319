/** Sums of pack weights carry rounding; a gram is no overload. */
const SLACK_KG = 1e-6;

/** A trip never carries more than the vehicle's payload, kg. */
export function fitsPayload(kg: number, payloadKg: number): boolean {
  return kg <= payloadKg + SLACK_KG;
}
