import { readFileSync } from 'node:fs';
import { EXIT, Refusal } from './refusal.ts';

/** A plan of any shape: the checker says what is wrong with it. @throws Refusal where there is no such file, or no JSON in it */
export function readPlan(file: string): unknown {
  const text = readText(file);
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal(`${file} is not JSON, so it is not a plan.`, EXIT.blocked);
  }
}

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    throw new Refusal(`There is no file ${file} that can be read.`);
  }
}
