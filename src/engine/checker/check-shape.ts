import { parseIsoDate } from '../vocabulary/calendar.ts';
import { ROAD_STATES } from '../vocabulary/places.ts';
import type { Problem } from '../vocabulary/problems.ts';
import type { Scenario } from '../vocabulary/scenario.ts';
import { finding } from './finding.ts';
import { OBJECT_LISTS, TABLES, type TableRule, VALUES } from './plan-columns.ts';

/**
 * Is this a plan document at all, with every part, column, kind and index in order? Nothing else may run before.
 *
 * @param scenario whose planning days it is to hold; null: those it names itself
 */
export function checkShape(scenario: Scenario | null, plan: unknown): readonly Problem[] {
  const format = valueAt(plan, 'format');
  if (format !== 'nodulary-plan/1') return [finding('E8001', 'format', null, format ?? null, 'nodulary-plan/1')];
  const lengths = listLengths(scenario, plan);
  return [
    ...Object.entries(VALUES).flatMap(([path, kind]) => checkValue(plan, path, kind, lengths)),
    ...TABLES.flatMap((rule) => checkTable(plan, rule, lengths)),
    ...OBJECT_LISTS.flatMap(({ list, members }) => checkObjects(plan, list, members, lengths)),
    ...checkPairs(plan),
  ];
}

/** Value at a dotted path, undefined where there is none. Never throws. */
function valueAt(root: unknown, path: string): unknown {
  let value: unknown = root;
  for (const name of path.split('.')) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return undefined;
    value = (value as Record<string, unknown>)[name];
  }
  return value;
}

/** Length of each list that indexes point into, by the name the column rules use. */
function listLengths(scenario: Scenario | null, plan: unknown): ReadonlyMap<string, number> {
  const length = (path: string) => {
    const list = valueAt(plan, path);
    return Array.isArray(list) ? list.length : 0;
  };
  const ids = ['crops', 'zones', 'communities', 'depots', 'products', 'lots', 'vehicles', 'places'];
  return new Map<string, number>([
    ...ids.map((name): [string, number] => [name, length(`ids.${name}`)]),
    ['zonesAndOutside', length('ids.zones') + 1],
    ['sites', length('ids.depots') + length('ids.places')],
    ['stations', length('season.stations')],
    ['members', length('season.memberYears')],
    ['planningDays', scenario ? scenario.planning.to - scenario.planning.from + 1 : ownDays(plan)],
    ['roadStates', ROAD_STATES.length],
    ['twoStates', 2],
    ['grants', length('allocation.grants.lot')],
    ['shares', length('allocation.shares.community')],
    ['consignments', length('allocation.consignments.community')],
    ['loads', length('delivery.loads.consignment')],
    ['trips', length('delivery.trips.vehicle')],
    ['legs', length('delivery.legs')],
  ]);
}

function ownDays(plan: unknown): number {
  const day = (name: string) => parseIsoDate(String(valueAt(plan, `scenario.${name}`))) ?? 0;
  return day('planningTo') - day('planningFrom') + 1;
}

type Lengths = ReadonlyMap<string, number>;

function checkValue(plan: unknown, path: string, kind: string, lengths: Lengths): readonly Problem[] {
  const value = valueAt(plan, path);
  if (value === undefined) return [finding('E8002', path, null)];
  return judgeValue(path, null, value, kind, lengths);
}

function checkTable(plan: unknown, rule: TableRule, lengths: Lengths): readonly Problem[] {
  const found: Problem[] = [];
  const product = rule.rows?.reduce((rows, name) => rows * (lengths.get(name) ?? 0), 1);
  let rows = product ?? null;
  for (const [name, kind] of Object.entries(rule.columns)) {
    const path = `${rule.table}.${name}`;
    const column = valueAt(plan, path);
    if (!Array.isArray(column)) {
      found.push(finding('E8002', path, null));
      continue;
    }
    rows ??= column.length;
    if (column.length !== rows) found.push(finding('E8003', path, null, column.length, rows));
    column.forEach((value, i) => {
      found.push(...judgeValue(path, i, value, kind, lengths));
    });
  }
  return found;
}

function checkObjects(
  plan: unknown,
  list: string,
  members: Readonly<Record<string, string>>,
  lengths: Lengths,
): readonly Problem[] {
  const objects = valueAt(plan, list);
  if (!Array.isArray(objects)) return [finding('E8002', list, null)];
  return objects.flatMap((object: unknown, i) =>
    Object.entries(members).flatMap(([name, kind]) => {
      const value = valueAt(object, name);
      if (value === undefined) return [finding('E8002', `${list}.${name}`, i)];
      return judgeValue(`${list}.${name}`, i, value, kind, lengths);
    }),
  );
}

/** Lists that stand beside each other inside one row. */
function checkPairs(plan: unknown): readonly Problem[] {
  const found: Problem[] = [];
  const compare = (path: string, i: number, one: unknown, other: unknown) => {
    if (Array.isArray(one) && Array.isArray(other) && one.length !== other.length)
      found.push(finding('E8003', path, i, other.length, one.length));
  };
  const grants = valueAt(plan, 'delivery.loads.grants');
  const packs = valueAt(plan, 'delivery.loads.packs');
  if (Array.isArray(grants) && Array.isArray(packs))
    grants.forEach((of, i) => {
      compare('delivery.loads.packs', i, of, packs[i]);
    });
  const proofs = valueAt(plan, 'allocation.proofs');
  if (Array.isArray(proofs))
    proofs.forEach((proof, i) => {
      const rows = valueAt(proof, 'shareRows');
      const lots = valueAt(proof, 'lots');
      compare('allocation.proofs.needKg', i, rows, valueAt(proof, 'needKg'));
      compare('allocation.proofs.communityPrices', i, rows, valueAt(proof, 'communityPrices'));
      compare('allocation.proofs.offeredKg', i, lots, valueAt(proof, 'offeredKg'));
      compare('allocation.proofs.lotPrices', i, lots, valueAt(proof, 'lotPrices'));
    });
  return found;
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
const isAmount = (value: unknown) => isNumber(value) && value >= 0;
const isWhole = (value: unknown) => isNumber(value) && Number.isInteger(value) && value >= 0;
const isText = (value: unknown): value is string => typeof value === 'string';
const isDate = (value: unknown) => isText(value) && parseIsoDate(value) !== null;
const isListOf = (value: unknown, is: (one: unknown) => boolean) => Array.isArray(value) && value.every(is);
const isPiece = (value: unknown) => isListOf(value, isAmount) && (value as readonly unknown[]).length === 3;
const isRange = (value: unknown) => ['p10', 'p50', 'p90'].every((name) => isNumber(valueAt(value, name)));

const isBounds = (value: unknown) => ['least', 'most'].every((name) => isNumber(valueAt(value, name)));

const KINDS: Readonly<Record<string, (value: unknown) => boolean>> = {
  number: isNumber,
  'number?': (value) => value === null || isNumber(value),
  amount: isAmount,
  amounts: (value) => isListOf(value, isAmount),
  // A bound, so that no later check steps through years of minutes.
  minute: (value) => isAmount(value) && (value as number) <= 2880,
  whole: isWhole,
  wholes: (value) => isListOf(value, isWhole),
  text: isText,
  texts: (value) => isListOf(value, isText),
  date: isDate,
  'date?': (value) => value === null || isDate(value),
  commodity: (value) => value === 'seed' || value === 'inoculant',
  group: (value) => ['dry', 'inoculant', 'both', 'fertiliser'].includes(String(value)),
  pieces: (value) => isListOf(value, isPiece),
  range: isRange,
  'range?': (value) => value === null || isRange(value),
  bounds: isBounds,
  'bounds?': (value) => value === null || isBounds(value),
  list: (value) => isListOf(value, (one) => isText(valueAt(one, 'code'))),
};

function judgeValue(path: string, row: number | null, value: unknown, kind: string, lengths: Lengths): Problem[] {
  const [form, list] = kind.split(' ') as [string, string | undefined];
  if (list === undefined)
    return KINDS[form]?.(value) ? [] : [finding('E8004', path, row, value, form.replace('?', ' or null'))];
  const length = lengths.get(list) ?? 0;
  const least = form === 'index?' ? -1 : 0;
  const indexes: readonly unknown[] | null = form === 'indexes' ? (Array.isArray(value) ? value : null) : [value];
  if (!indexes?.every((index) => isNumber(index) && Number.isInteger(index)))
    return [finding('E8004', path, row, value, 'a whole number')];
  const outside = (indexes as readonly number[]).find((index) => index < least || index >= length);
  return outside === undefined ? [] : [finding('E8005', path, row, outside, `${length} (${list})`)];
}
