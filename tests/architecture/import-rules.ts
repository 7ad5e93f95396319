import { posix } from 'node:path';
import { isNode, type Node, syntaxNodes } from './source-files.ts';

/** One row of the import table: files under `folder` may import what `may` allows, and nothing else. */
interface Rule {
  readonly folder: string;
  /** Prefixes of project paths; `self` stands for the file's own folder at the depth of the rule (a stage's folder). */
  readonly may: readonly string[];
  readonly packages: readonly string[];
  /** Of what it may import, prefixes that may be imported as types alone. */
  readonly asTypes?: readonly string[];
}

const ENGINE = 'src/engine/';
const BELOW_STAGES = ['vocabulary/', 'numerics/', 'reference/', 'science/'].map((folder) => ENGINE + folder);

/** First matching row wins; the same table stands in DEVELOPERS.md. */
export const IMPORT_TABLE: readonly Rule[] = [
  { folder: `${ENGINE}numerics/`, may: [`${ENGINE}numerics/`], packages: ['flatqueue'] },
  { folder: `${ENGINE}vocabulary/`, may: [`${ENGINE}vocabulary/`], packages: [] },
  { folder: `${ENGINE}reference/`, may: [`${ENGINE}reference/`, `${ENGINE}vocabulary/`], packages: [] },
  { folder: `${ENGINE}science/`, may: BELOW_STAGES, packages: [] },
  { folder: `${ENGINE}stages/`, may: ['self', ...BELOW_STAGES], packages: ['flatbush', 'flatqueue'] },
  { folder: `${ENGINE}record/`, may: ['self', `${ENGINE}vocabulary/`, `${ENGINE}numerics/`], packages: [] },
  {
    folder: `${ENGINE}checker/`,
    may: ['self', `${ENGINE}vocabulary/`, `${ENGINE}numerics/`, `${ENGINE}reference/`],
    packages: ['flatqueue'],
  },
  {
    folder: `${ENGINE}replay/`,
    may: ['self', `${ENGINE}pipeline.ts`, `${ENGINE}questions.ts`, `${ENGINE}vocabulary/`, `${ENGINE}numerics/`],
    packages: [],
  },
  {
    folder: `${ENGINE}ground.ts`,
    may: [`${ENGINE}stages/`, `${ENGINE}vocabulary/`, `${ENGINE}numerics/`],
    packages: [],
  },
  {
    folder: `${ENGINE}pipeline.ts`,
    may: [`${ENGINE}ground.ts`, `${ENGINE}stages/`, `${ENGINE}record/`, `${ENGINE}vocabulary/`, `${ENGINE}numerics/`],
    packages: [],
  },
  {
    folder: `${ENGINE}questions.ts`,
    may: [
      `${ENGINE}ground.ts`,
      `${ENGINE}pipeline.ts`,
      `${ENGINE}stages/`,
      `${ENGINE}record/`,
      `${ENGINE}vocabulary/`,
      `${ENGINE}numerics/`,
    ],
    packages: [],
  },
  {
    folder: `${ENGINE}index.ts`,
    may: [
      `${ENGINE}pipeline.ts`,
      `${ENGINE}questions.ts`,
      `${ENGINE}replay/`,
      `${ENGINE}checker/`,
      `${ENGINE}reference/`,
      `${ENGINE}vocabulary/`,
      `${ENGINE}numerics/`,
    ],
    packages: [],
  },
  { folder: 'src/presentation/', may: ['self', `${ENGINE}index.ts`], packages: [] },
  {
    folder: 'src/adapters/',
    may: ['src/adapters/', `${ENGINE}index.ts`],
    packages: ['node:*', 'papaparse', 'geos-wasm', 'geos-wasm/*', 'polygon-clipping', 'highs', 'highs/*', 'fflate'],
  },
  {
    folder: 'src/app/',
    may: ['self', `${ENGINE}index.ts`, 'src/presentation/', 'src/adapters/'],
    packages: [
      'react',
      'react-dom/*',
      'zustand',
      'zustand/*',
      'maplibre-gl',
      'maplibre-gl/*',
      '@deck.gl/*',
      '@fontsource-variable/*',
      'geojson',
    ],
    asTypes: [`${ENGINE}index.ts`],
  },
  {
    folder: 'src/cli/',
    may: ['self', `${ENGINE}index.ts`, 'src/presentation/', 'src/adapters/'],
    packages: ['node:*'],
  },
];

interface Import {
  readonly name: string;
  /** `import type` and import types: nothing of it is there at run time. */
  readonly typesOnly: boolean;
}

/** What a file imports: import, export from, `import()`, import types, and `new URL(x, import.meta.url)`. */
export function importedModules(path: string, source: string): Import[] {
  const found: Import[] = [];
  for (const node of syntaxNodes(path, source)) {
    const named = moduleNameNode(node);
    if (named === null) continue;
    const text = literalText(named);
    if (text === null) throw new Error(`${path}: an import whose address is not plain text cannot be checked`);
    const typesOnly = node.type === 'TSImportType' || node['importKind'] === 'type' || node['exportKind'] === 'type';
    found.push({ name: text, typesOnly });
  }
  return found;
}

function moduleNameNode(node: Node): unknown | null {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ImportExpression':
    case 'TSImportType':
      return node['source'] ?? node['argument'] ?? null;
    case 'ExportNamedDeclaration':
      return node['source'] ?? null;
    case 'NewExpression': {
      const [address, base] = node['arguments'] as unknown[];
      const callee = node['callee'] as { name?: string };
      const aboutThisFile =
        isNode(base) &&
        base.type === 'MemberExpression' &&
        isNode(base['object']) &&
        base['object'].type === 'MetaProperty';
      return callee.name === 'URL' && aboutThisFile ? address : null;
    }
    default:
      return null;
  }
}

function literalText(node: unknown): string | null {
  if (!isNode(node)) return null;
  if (node.type === 'TSLiteralType') return literalText(node['literal']);
  return typeof node['value'] === 'string' ? node['value'] : null;
}

/** Words for each import of the file that the table does not allow. */
export function importFaults(path: string, source: string): string[] {
  const rule = IMPORT_TABLE.find((row) => path.startsWith(row.folder));
  if (!rule) return [`${path}: no row of the import table speaks of it`];
  return importedModules(path, source)
    .filter((imported) => !allowed(rule, path, imported))
    .map(({ name }) => `${path} imports ${name}`);
}

function allowed(rule: Rule, path: string, { name, typesOnly }: Import): boolean {
  if (!name.startsWith('.')) {
    return rule.packages.some(
      (entry) => entry === name || (entry.endsWith('*') && name.startsWith(entry.slice(0, -1))),
    );
  }
  const target = posix.normalize(posix.join(posix.dirname(path), name));
  if (!typesOnly && rule.asTypes?.some((entry) => target.startsWith(entry))) return false;
  return rule.may.some((entry) => target.startsWith(entry === 'self' ? ownFolder(rule, path) : entry));
}

/** The folder that is a file's own: below stages, the numbered folder; else the folder of the rule. */
function ownFolder(rule: Rule, path: string): string {
  if (!rule.folder.endsWith('stages/')) return rule.folder;
  return `${rule.folder}${path.slice(rule.folder.length).split('/')[0]}/`;
}
