import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'oxc-parser';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));

/** Paths below a folder of the project, with forward slashes, of files that end in one of the given ways. */
export function listFiles(folder: string, endings: readonly string[]): string[] {
  return readdirSync(join(projectRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => relative(projectRoot, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

export function readSource(path: string): string {
  return readFileSync(join(projectRoot, path), 'utf8');
}

/** Syntax tree node as the parser gives it. */
export type Node = { readonly type: string } & Readonly<Record<string, unknown>>;

export function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';
}

/** Every node of a file's syntax tree, parents before children. Throws where the file does not parse. */
export function* syntaxNodes(path: string, source: string): Generator<Node> {
  const parsed = parseSync(path, source);
  if (parsed.errors.length > 0) throw new Error(`${path} does not parse: ${parsed.errors[0]?.message}`);
  const open: unknown[] = [parsed.program];
  while (open.length > 0) {
    const value = open.pop();
    if (Array.isArray(value)) open.push(...value);
    else if (value !== null && typeof value === 'object') {
      if (isNode(value)) yield value;
      open.push(...Object.values(value));
    }
  }
}
