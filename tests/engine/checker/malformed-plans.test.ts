import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkPlan } from '../../../src/engine/checker/check-plan.ts';
import { smallPlan } from './small-plan.ts';
import { noDecisions, smallScenario } from './small-scenario.ts';
import { SPOILS } from './spoiled-plans.ts';
import { FERTILISER_SPOILS } from './spoils/fertiliser.ts';

type Path = readonly (string | number)[];

/** Paths of every value in a document, members and list entries alike. */
function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const keys = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [path, ...keys.flatMap((key) => pathsOf((value as Record<string | number, unknown>)[key], [...path, key]))];
}

function withValue(path: Path, value: unknown): unknown {
  const copy: unknown = structuredClone(smallPlan);
  let holder = copy as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) holder = holder[key] as Record<string | number, unknown>;
  holder[path.at(-1) as string | number] = value;
  return copy;
}

/** Parts that tell how a plan was made or repeat what others hold, and that no rule rests on. */
const UNJUDGED = [
  /^(engineVersion|seed|iterations|stoppedBy|rounds|tools|stageHashes|defaults|provenance|problems)/,
  /^scenario\.timeZone/,
  /^season\.(zoneStationKm|sownChance|airBasis|onset\.(falseStartShare|pastSeasons))/,
  /^places\.unreachable\.(vehicle|reason)/,
  /^allocation\.(lots\.chance|remedies|orders\.depot|packShares|shortfalls\.(hectares|product))/,
  /^allocation\.consignments\.(hectares|worth|best|reachByDay|maxStorageC|latest)/,
  /^delivery\.(curves|loads\.hectares|unserved\.hectares|legs\.\d+\.(vehicle|date))/,
  /^outcomes\.crops\.(store|road|community|seed)Log10/,
  /^outcomes\.zones\.(communities|farmers|signedForHa|sownHa)/,
  /^outcomes\.headline\.(farmers$|womenShare|signedForHa|sownHa|costPerHectare|deliveryPerHectare|broughtSeedHa|residual)/,
  /^outcomes\.seasons\.cost/,
];

/** Where only one side is a fault, or only order and middle are judged: a tenth more may pass. */
const ONE_SIDED = [
  // Assumed by the stage where the policy states none.
  /^delivery\.promisePrice/,
  /^delivery\.stops\.(packC|packMaxC|hotBandMaxC|hoursAboveStorage)/,
  /^delivery\.trips\.(latestLeaveMinute|meanKineticC|degreeHours30|hoursAbove\d\d)/,
  /^outcomes\.headline\.\w+\.p\d\d/,
  /^outcomes\.zones\.reachedRange/,
  /^outcomes\.zones\.nitrogenKg/,
];

const JUNK: readonly unknown[] = [null, -1, 0.5, 1e9, 'x', [], {}];

test('junk in the place of any value is survived', () => {
  const paths = pathsOf(smallPlan).filter((path) => path.length > 0);
  expect(paths.length).toBeGreaterThan(700);
  for (const [i, path] of paths.entries()) {
    const junk = JUNK[i % JUNK.length];
    expect(() => checkPlan(smallScenario, noDecisions, withValue(path, junk)), path.join('.')).not.toThrow();
  }
});

test('a value replaced by a list, or left out, is found in every part that is judged', () => {
  const missed = pathsOf(smallPlan)
    .filter((path) => path.length > 0 && !UNJUDGED.some((part) => part.test(path.join('.'))))
    .filter((path) => checkPlan(smallScenario, noDecisions, withValue(path, { other: true })).length === 0);
  expect(missed.map((path) => path.join('.'))).toEqual([]);
});

test('a number moved by a tenth and one more is found in every part that is judged', () => {
  const valueAt = (path: Path) =>
    path.reduce<unknown>((value, key) => (value as Record<string | number, unknown>)[key], smallPlan);
  const missed = pathsOf(smallPlan)
    .filter((path) => typeof valueAt(path) === 'number' && !UNJUDGED.some((part) => part.test(path.join('.'))))
    .filter(
      (path) =>
        checkPlan(smallScenario, noDecisions, withValue(path, (valueAt(path) as number) * 1.1 + 1)).length === 0,
    )
    .map((path) => path.join('.'))
    .filter((path) => !ONE_SIDED.some((part) => part.test(path)));
  expect(missed).toEqual([]);
});

test('every code in the list of spoiled plans is tried, and every spoil stands in the list', () => {
  const readme = readFileSync(new URL('../../../src/engine/checker/README.md', import.meta.url), 'utf8');
  const rows = readme.split('\n').filter((line) => /^\| \d+[a-z]? +\|/.test(line));
  const listed = new Set(rows.flatMap((line) => line.match(/E8\d{3}/g) ?? []));
  const tried = new Set<string>([...SPOILS, ...FERTILISER_SPOILS].map(({ code }) => code));
  expect(rows.length).toBeGreaterThanOrEqual(40);
  expect([...listed].filter((code) => !tried.has(code))).toEqual([]);
  expect([...tried].filter((code) => !listed.has(code))).toEqual([]);
});
