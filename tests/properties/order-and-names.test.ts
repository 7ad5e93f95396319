import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/engine/index.ts';
import { RandomStream } from '../../src/engine/numerics/random-stream.ts';
import { type Files, planFiles, readFolderFiles } from '../plan-files.ts';
import { randomScenario } from './random-scenario.ts';

const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const encode = (text: string) => new TextEncoder().encode(text);

function changeTexts(files: Files, change: (text: string, name: string) => string): Map<string, Uint8Array> {
  return new Map([...files].map(([name, bytes]) => [name, encode(change(decode(bytes), name))]));
}

/** The rows of every table and the features of every collection in another order. */
function shuffleRows(files: Files, seed: number): Map<string, Uint8Array> {
  const random = new RandomStream(seed);
  const shuffle = <T>(list: readonly T[]): T[] => {
    const mixed = [...list];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = random.below(i + 1);
      [mixed[i], mixed[j]] = [mixed[j] as T, mixed[i] as T];
    }
    return mixed;
  };
  return changeTexts(files, (text, name) => {
    if (name.endsWith('.csv')) {
      const [header, ...rows] = text.trim().split(/\r?\n/);
      return `${[header, ...shuffle(rows)].join('\n')}\n`;
    }
    if (!name.endsWith('.geojson')) return text;
    const collection = JSON.parse(text) as { features: unknown[] };
    return JSON.stringify({ ...collection, features: shuffle(collection.features) });
  });
}

/** All that a plan says, without what names the files sent. */
function contentOf({ scenarioSha256: _, problems: __, ...plan }: Plan): string {
  return JSON.stringify(plan);
}

const tiny = readFolderFiles(fileURLToPath(new URL('../../scenarios/tiny-district', import.meta.url)));
const demo = readFolderFiles(fileURLToPath(new URL('../../scenarios/demo-district', import.meta.url)));

describe('the order of rows in the files changes nothing', () => {
  const cases: [string, Files][] = [
    ['tiny-district', tiny],
    ['demo-district', demo],
    ...[3, 4, 5, 6].map((seed): [string, Files] => [`invented scenario ${seed}`, randomScenario(seed, 'any')]),
  ];
  it.each(cases)('%s', (_, files) => {
    expect(contentOf(planFiles(shuffleRows(files, 9), 300).plan)).toBe(contentOf(planFiles(files, 300).plan));
  });
});

describe('names of ids change labels and nothing else', () => {
  /** Turns the alphabetical order of ids around. */
  const rename = (text: string) =>
    text.replace(
      /\b([CZDL])(\d+)\b/g,
      (_, letter: string, number: string) => `${letter === 'C' ? 'zz' : 'aa'}${letter}${1000 - Number(number)}`,
    );

  it.each([1, 2, 7, 8, 9, 10])('invented scenario %i', (seed) => {
    const files = randomScenario(seed, 'any');
    const { plan } = planFiles(files, 300);
    const { plan: renamed } = planFiles(changeTexts(files, rename), 300);
    const { ids, stageHashes: _, ...found } = JSON.parse(contentOf(renamed)) as Plan;
    const { ids: idsBefore, stageHashes: __, ...before } = JSON.parse(contentOf(plan)) as Plan;
    expect(ids).toEqual(JSON.parse(rename(JSON.stringify(idsBefore))));
    expect(found).toEqual(before);
  });
});
