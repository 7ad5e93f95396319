import { readFileSync } from 'node:fs';
import { EXIT, Refusal } from './refusal.ts';
import type { MadeFrom } from './write-plan-files.ts';

const TEXTS = ['scenarioSha256', 'decisionsSha256', 'engineVersion', 'planSha256'] as const;
const NUMBERS = ['seed', 'iterations'] as const;

/** What run.json says a plan was made from. @throws Refusal where it does not say so, or the plan was stopped by the clock */
export function readRunFile(file: string): MadeFrom {
  const run = parse(file);
  const isWhole =
    TEXTS.every((name) => typeof run[name] === 'string') && NUMBERS.every((name) => Number.isInteger(run[name]));
  if (!isWhole) throw new Refusal(`${file} does not say what a plan was made from.`, EXIT.blocked);
  if (run['stoppedBy'] !== 'iterations')
    throw new Refusal(
      `The plan of ${file} was stopped by time: no other machine stops at the same step, so it cannot be made again byte for byte.`,
      EXIT.blocked,
    );
  return run as unknown as MadeFrom;
}

function parse(file: string): Record<string, unknown> {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch {
    throw new Refusal(`There is no file ${file} that can be read.`);
  }
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'object' && value !== null) return value as Record<string, unknown>;
  } catch {
    // Said below.
  }
  throw new Refusal(`${file} is not the run.json of a plan.`, EXIT.blocked);
}
