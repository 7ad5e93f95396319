import { describe, expect, it } from 'vitest';
import { readSource } from './source-files.ts';

interface LockedPackage {
  readonly version: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly license?: string;
}

const lock = JSON.parse(readSource('package-lock.json')) as { packages: Record<string, LockedPackage> };
const manifest = JSON.parse(readSource('package.json')) as Record<
  'dependencies' | 'devDependencies',
  Record<string, string>
>;
const names = Object.keys(lock.packages);

/** Tools that ship a program per system, and how they name it. */
const BINARIES: readonly [string, readonly string[]][] = [
  ['@biomejs/cli-', ['darwin-arm64', 'win32-x64', 'linux-arm64', 'linux-x64', 'linux-x64-musl', 'linux-arm64-musl']],
  [
    '@rolldown/binding-',
    ['darwin-arm64', 'win32-x64-msvc', 'linux-arm64-gnu', 'linux-x64-gnu', 'linux-x64-musl', 'linux-arm64-musl'],
  ],
  [
    '@oxc-parser/binding-',
    ['darwin-arm64', 'win32-x64-msvc', 'linux-arm64-gnu', 'linux-x64-gnu', 'linux-x64-musl', 'linux-arm64-musl'],
  ],
  ['@typescript/typescript-', ['darwin-arm64', 'win32-x64', 'linux-arm64', 'linux-x64']],
  [
    'lightningcss-',
    ['darwin-arm64', 'win32-x64-msvc', 'linux-arm64-gnu', 'linux-x64-gnu', 'linux-x64-musl', 'linux-arm64-musl'],
  ],
];

describe('the lockfile serves every machine', () => {
  it.each(BINARIES)('holds %s for the other systems', (prefix, systems) => {
    for (const system of systems) expect(names).toContain(`node_modules/${prefix}${system}`);
  });

  it('takes every package from the public registry, with its checksum', () => {
    const foreign = names.filter(
      (name) => name !== '' && !lock.packages[name]?.resolved?.startsWith('https://registry.npmjs.org/'),
    );
    const unchecked = names.filter((name) => name !== '' && !lock.packages[name]?.integrity?.startsWith('sha512-'));
    expect({ foreign, unchecked }).toEqual({ foreign: [], unchecked: [] });
  });

  it('names exact versions', () => {
    const loose = [manifest.dependencies, manifest.devDependencies]
      .flatMap((group) => Object.entries(group))
      .filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version));
    expect(loose).toEqual([]);
  });
});
