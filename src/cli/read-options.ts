import { type ParseArgsConfig, parseArgs } from 'node:util';
import { Refusal } from './refusal.ts';

type OptionTable = NonNullable<ParseArgsConfig['options']>;

/**
 * Reads the words after a command.
 *
 * @param paths how many paths the command takes
 * @throws Refusal with the usage where the words do not fit
 */
export function readOptions<T extends OptionTable>(
  args: readonly string[],
  options: T,
  paths: number,
  usage: string,
): { readonly values: Readonly<Record<string, string | boolean | undefined>>; readonly paths: readonly string[] } {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
    if (positionals.length !== paths) throw new Refusal(`Use: ${usage}`);
    return { values: values as Record<string, string | boolean | undefined>, paths: positionals };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${error instanceof Error ? error.message : String(error)}\nUse: ${usage}`);
  }
}

/** Reads a number given as text. @throws Refusal where it is not a whole number (or any number) within the limits. */
export function readNumber(
  name: string,
  text: string,
  limits: { readonly least: number; readonly most: number; readonly whole: boolean },
): number {
  const value = Number(text);
  const fits = text.trim() !== '' && value >= limits.least && value <= limits.most;
  if (!fits || (limits.whole && !Number.isInteger(value))) {
    const kind = limits.whole ? 'a whole number' : 'a number';
    throw new Refusal(`${name} takes ${kind} from ${limits.least} to ${limits.most}, not "${text}".`);
  }
  return value;
}
