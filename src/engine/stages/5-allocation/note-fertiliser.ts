import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { GivenOut } from './give-out.ts';

/** Less land than this, ha, is not worth a word. */
const LEAST_HA = 0.05;

/**
 * Land with seed for which there is no fertiliser though some product is for its crop: shortfalls speak of seed and inoculant alone.
 *
 * @param cropOf crop of each row
 * @param handedHa land for which fertiliser was handed over before
 */
export function noteFertiliser(
  { crops, products }: Scenario,
  cropOf: Int32Array,
  { ask, givenKg }: GivenOut,
  handedHa: Float64Array,
): readonly Problem[] {
  const fed = crops.map((crop) => products.some((p) => p.kind === 'fertiliser' && p.crops.includes(crop)));
  let [asked, given] = [0, 0];
  ask.askedKg.forEach((ha, row) => {
    if (!fed[cropOf[row] as number]) return;
    asked += ha;
    given += Math.min(ha, (givenKg[row] as number) + (handedHa[row] as number));
  });
  if (asked - given < LEAST_HA) return [];
  const facts = { given: Math.round(given * 10) / 10, asked: Math.round(asked * 10) / 10 };
  return [problem('E5026', { file: 'lots.csv', facts })];
}
