import fc from 'fast-check';
import { expect, it } from 'vitest';
import { read, SMALL_FILES } from './small-scenario.ts';

/** Pieces that break files in practice: quotes, separators, other types, other alphabets, huge and missing numbers. */
const PIECES = [
  '"',
  ',',
  ';',
  '\n',
  '\r\n',
  '{',
  '}',
  '[',
  ']',
  ':',
  'null',
  '-1',
  '1e999',
  'NaN',
  '{}',
  '[[]]',
  '"a"',
  'é',
  '\u0000',
  '\ufeff',
  '2026-02-30',
  '=1+1',
  '<b>',
  ' ',
];

interface Change {
  readonly file: string;
  readonly at: number;
  readonly taken: number;
  readonly put: string;
}

const change: fc.Arbitrary<Change> = fc.record({
  file: fc.constantFrom(...Object.keys(SMALL_FILES)),
  at: fc.nat({ max: 5000 }),
  taken: fc.oneof(fc.nat({ max: 8 }), fc.nat({ max: 400 })),
  put: fc.oneof(fc.constantFrom(...PIECES), fc.string({ maxLength: 5 }), fc.constant('')),
});

function changed(changes: readonly Change[]): Record<string, string> {
  const files: Record<string, string> = {};
  for (const [path, text] of Object.entries(SMALL_FILES)) files[path] = String(text);
  for (const { file, at, taken, put } of changes) {
    const text = files[file] ?? '';
    const from = text.length === 0 ? 0 : at % text.length;
    files[file] = text.slice(0, from) + put + text.slice(from + taken);
  }
  return files;
}

it('whatever is done to the files, reading ends in a plan or in coded problems that say why not', () => {
  let blocked = 0;
  let planned = 0;
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
      const { scenario, problems, decisions } = read(changed(changes));
      const blocking = problems.filter(({ weight }) => weight === 'blocks');
      expect(blocking.length > 0).toBe(scenario === null);
      expect(decisions.sha256).toMatch(/^[0-9a-f]{64}$/);
      if (scenario === null) blocked++;
      else planned++;
      for (const { payloadKg, maxHours, roadsAllowed } of scenario?.vehicles ?? []) {
        expect(payloadKg > 0 && maxHours > 0 && roadsAllowed.length > 0).toBe(true);
      }
      for (const { plannedHa, ownSeedKg } of scenario?.communities.flatMap(({ crops }) => crops) ?? []) {
        expect(plannedHa >= 0 && ownSeedKg >= 0).toBe(true);
      }
    }),
    { numRuns: 1500, seed: 20261104 },
  );
  // Both ends must have been met, else the test says little.
  expect(Math.min(blocked, planned)).toBeGreaterThan(100);
});

it('whatever stands in a JSON file, reading does not throw', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('scenario.json', 'communities.geojson', 'roads.geojson', 'decisions.json'),
      fc.jsonValue(),
      (file, value) => {
        const { scenario, problems } = read({ ...SMALL_FILES, [file]: JSON.stringify(value) });
        if (scenario === null) expect(problems.some(({ weight }) => weight === 'blocks')).toBe(true);
      },
    ),
    { numRuns: 300, seed: 20261105 },
  );
});
