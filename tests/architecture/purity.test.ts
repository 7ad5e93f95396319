import { describe, expect, it } from 'vitest';
import { isNode, listFiles, type Node, readSource, syntaxNodes } from './source-files.ts';

/** The functions of Math that are exact in every engine (IEEE 754 or whole-number arithmetic). All others are banned. */
const EXACT_MATH = new Set([
  'sqrt',
  'abs',
  'min',
  'max',
  'floor',
  'ceil',
  'round',
  'trunc',
  'sign',
  'imul',
  'fround',
  'clz32',
  'PI',
]);
const BANNED_NAMES = new Set([
  'Date',
  'Intl',
  'performance',
  'console',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'crypto',
  'fetch',
  'process',
  'document',
  'navigator',
  'globalThis',
]);
const BANNED_METHODS = new Set([
  'localeCompare',
  'toLocaleString',
  'toLocaleUpperCase',
  'toLocaleLowerCase',
  'toLocaleDateString',
]);

/** Words for everything in a source that could differ between machines or reach outside. */
function impurities(path: string, source: string): string[] {
  return [...syntaxNodes(path, source)].flatMap((node) => {
    const fault = impurity(node);
    return fault ? [`${path}: ${fault}`] : [];
  });
}

function impurity(node: Node): string | null {
  if ((node.type === 'BinaryExpression' && node['operator'] === '**') || node['operator'] === '**=')
    return 'the operator **';
  if (node.type === 'MemberExpression' && isNode(node['object'])) {
    const property = node['property'] as { name?: string; value?: string };
    const name = property.name ?? property.value ?? '';
    if (node['object']['name'] === 'Math' && !EXACT_MATH.has(name)) return `Math.${name}`;
    if (BANNED_METHODS.has(name)) return name;
  }
  if (node.type === 'VariableDeclarator' && isNode(node['init']) && node['init']['name'] === 'Math')
    return 'Math taken apart';
  if (isNode(node['callee']) && BANNED_NAMES.has(String(node['callee']['name']))) return String(node['callee']['name']);
  if (isNode(node['object']) && BANNED_NAMES.has(String(node['object']['name']))) return String(node['object']['name']);
  return null;
}

const files = listFiles('src/engine', ['.ts']);

describe('the engine is pure: the same values everywhere', () => {
  it('reads the files it judges', () => expect(files.length).toBeGreaterThan(50));

  it.each(files.map((path) => [path]))('%s', (path) => expect(impurities(path, readSource(path))).toEqual([]));

  it.each([
    'const a = Math.exp(1);',
    "const a = Math['pow'](2, 3);",
    'const { sin } = Math;',
    'const a = 2 ** 3;',
    'let a = 2; a **= 3;',
    'const a = Math.random();',
    'const a = new Date();',
    'const a = Date.now();',
    'const a = new Intl.NumberFormat();',
    "const a = 'b'.localeCompare('c');",
    "console.log('x');",
    'const a = performance.now();',
  ])('finds what is planted: %s', (source) => expect(impurities('planted.ts', source).length).toBeGreaterThan(0));
});
