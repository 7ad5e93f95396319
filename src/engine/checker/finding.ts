import { type Problem, type ProblemCode, problem } from '../vocabulary/problems.ts';

/**
 * One thing that does not hold.
 *
 * @param column path in the plan document, such as `delivery.stops.packC`
 * @param index position in that column, null where the whole part is meant
 * @param value what the plan says
 * @param expected what the checker finds
 */
export function finding(
  code: ProblemCode,
  column: string,
  index: number | null,
  value: unknown = null,
  expected: unknown = null,
): Problem {
  return problem(code, {
    file: 'plan.json',
    row: index === null ? null : index + 1,
    column,
    value: value === null || value === undefined ? null : inWords(value),
    facts: expected === null || expected === undefined ? {} : { expected: inWords(expected) },
  });
}

/** Numbers with six digits at most, anything long cut short. */
function inWords(value: unknown): string {
  if (typeof value === 'number') return String(Number.isInteger(value) ? value : Number(value.toPrecision(7)));
  const text = typeof value === 'string' ? value : String(JSON.stringify(value));
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}

/** At most this many findings of one code are listed. */
const LISTED = 40;

/** Cuts long runs of one code; the last one listed says how many more there are. */
export function cutLongRuns(found: readonly Problem[]): readonly Problem[] {
  const count = new Map<string, number>();
  for (const { code } of found) count.set(code, (count.get(code) ?? 0) + 1);
  const seen = new Map<string, number>();
  return found.flatMap((one) => {
    const n = (seen.get(one.code) ?? 0) + 1;
    seen.set(one.code, n);
    if (n > LISTED) return [];
    const more = (count.get(one.code) ?? 0) - LISTED;
    return n === LISTED && more > 0 ? [{ ...one, facts: { ...one.facts, furtherLikeIt: more } }] : [one];
  });
}

/** Tells a figure of a row that lies further from what is due than the step allows. */
export type Tell = (
  code: ProblemCode,
  column: string,
  row: number | null,
  told: number | null,
  due: number,
  step: number,
) => void;
