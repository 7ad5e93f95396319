import { contentHash } from '../../numerics/content-hash.ts';
import { parseIsoDate } from '../../vocabulary/calendar.ts';
import { CROPS } from '../../vocabulary/crops.ts';
import type { Decision, Decisions } from '../../vocabulary/decisions.ts';
import type { ScenarioRecords } from '../../vocabulary/records.ts';
import { EQUAL_OVERS, FAIRNESS_RULES } from '../../vocabulary/scenario.ts';
import type { DayNumber } from '../../vocabulary/units.ts';
import type { IntakeReport } from './intake-report.ts';
import { cellText } from './open-records.ts';
import { stripControls } from './plain-text.ts';
import type { IdList } from './require-known.ts';

const FORMAT = 'nodulary-decisions/1';
/** The most that fell anywhere in a day (WMO archive). */
const MOST_RAIN_MM = 1825;

/** Ids that a decision may speak of. */
interface KnownIds {
  readonly communities: IdList;
  readonly lots: IdList;
  readonly vehicles: IdList;
  readonly stations: IdList;
  /** Nothing is measured after this day. */
  readonly asOf: DayNumber;
}

type Entry = Readonly<Record<string, unknown>>;
/** What a member of an entry must be; the name of a part: an id that the part has. */
type MemberKind =
  | 'share'
  | 'percent'
  | 'fairness'
  | 'equalOver'
  | 'amount'
  | 'crop'
  | 'commodity'
  | 'date'
  | 'lon'
  | 'lat'
  | 'text'
  | 'packs'
  | 'mm'
  | 'past date'
  | keyof Omit<KnownIds, 'asOf'>;

const CELL = { communityId: 'communities', crop: 'crop', commodity: 'commodity' } as const;
const SHARE = { ...CELL, share: 'share' } as const;
const HANDOVER = { communityId: 'communities', commodity: 'commodity', date: 'date' } as const;
const SPAN = { from: 'date', to: 'date' } as const;

/** Members of each kind of decision. A hold is lifted by a named person on stated evidence, or not at all. */
const MEMBERS: Readonly<Record<Decision['kind'], Readonly<Record<string, MemberKind>>>> = {
  fix: SHARE,
  floor: SHARE,
  cap: SHARE,
  forbid: CELL,
  lock: { ...HANDOVER, vehicleId: 'vehicles' },
  promise: HANDOVER,
  'vehicle-away': { vehicleId: 'vehicles', ...SPAN },
  'road-closed': { lon: 'lon', lat: 'lat', ...SPAN },
  assume: { name: 'text', value: 'amount' },
  sharing: {},
  hold: { lotId: 'lots' },
  'flag-cleared': { lotId: 'lots', evidence: 'text', by: 'text' },
  rain: { stationId: 'stations', date: 'past date', mm: 'mm' },
  'day-closed': { date: 'date' },
};
const OPTIONAL: Readonly<Record<string, MemberKind>> = { by: 'text', because: 'text' };
const SHARING = { fairness: 'fairness', equalOver: 'equalOver', reservePercent: 'percent' } as const;
const OPTIONAL_OF: Readonly<Partial<Record<Decision['kind'], Readonly<Record<string, MemberKind>>>>> = {
  forbid: { ...OPTIONAL, lotId: 'lots' },
  hold: { ...OPTIONAL, packs: 'packs' },
  'flag-cleared': { ...OPTIONAL, on: 'date' },
  sharing: { ...OPTIONAL, ...SHARING },
};

/** decisions.json. Entries that do not hold are set aside by their place in the list; the rest keeps its order. */
export function readDecisions(report: IntakeReport, records: ScenarioRecords, known: KnownIds): Decisions {
  const sent = records.decisions;
  const list = sent === null ? [] : listOfEntries(sent.value);
  if (list === null) report.add('E1951', { file: sent?.file ?? null });
  const decisions: Decision[] = [];
  (list ?? []).forEach((entry, index) => {
    const decision = readDecision(entry, known);
    if ('kind' in decision) decisions.push(decision);
    else report.add(decision.fault, { ...decision, file: sent?.file ?? null, row: index + 1, facts: { scope: 'row' } });
  });
  return { format: FORMAT, decisions, sha256: contentHash(decisions) };
}

function listOfEntries(value: unknown): readonly unknown[] | null {
  if (!isEntry(value) || own(value, 'format') !== FORMAT) return null;
  const list = own(value, 'decisions');
  return Array.isArray(list) ? list : null;
}

interface Fault {
  readonly fault: 'E1950' | 'E1952' | 'E1960';
  readonly column: string;
  readonly value: string;
}

function readDecision(entry: unknown, known: KnownIds): Decision | Fault {
  const kind = isEntry(entry) ? own(entry, 'kind') : undefined;
  const isKnown = typeof kind === 'string' && Object.hasOwn(MEMBERS, kind);
  if (!isEntry(entry) || !isKnown) return { fault: 'E1950', column: 'kind', value: cellText(kind) };
  const members = MEMBERS[kind as Decision['kind']];
  const read: Record<string, unknown> = { kind };
  const optional = OPTIONAL_OF[kind as Decision['kind']] ?? OPTIONAL;
  for (const [name, memberKind] of Object.entries({ ...optional, ...members })) {
    const value = own(entry, name);
    if (value === undefined && !Object.hasOwn(members, name)) continue;
    const fault = memberFault(value, memberKind, known);
    if (fault !== null) return { fault, column: name, value: cellText(value) };
    read[name] = typeof value === 'string' ? stripControls(value) : value;
  }
  if (kind === 'sharing' && Object.keys(SHARING).every((name) => !Object.hasOwn(read, name))) {
    return { fault: 'E1950', column: 'fairness', value: '' };
  }
  if (typeof read['from'] === 'string' && typeof read['to'] === 'string' && read['from'] > read['to']) {
    return { fault: 'E1950', column: 'to', value: read['to'] };
  }
  return read as unknown as Decision;
}

function memberFault(value: unknown, kind: MemberKind, known: KnownIds): Fault['fault'] | null {
  const isNumber = (low: number, high: number) => typeof value === 'number' && value >= low && value <= high;
  const holds = (): boolean => {
    switch (kind) {
      case 'share':
        return isNumber(0, 1);
      case 'percent':
        return isNumber(0, 100);
      case 'fairness':
        return FAIRNESS_RULES.some((rule) => rule === value);
      case 'equalOver':
        return EQUAL_OVERS.some((over) => over === value);
      case 'amount':
        return isNumber(Number.MIN_VALUE, Number.MAX_VALUE);
      case 'packs':
        return isNumber(1, Number.MAX_SAFE_INTEGER) && Number.isInteger(value);
      case 'mm':
        return isNumber(0, MOST_RAIN_MM);
      case 'lon':
        return isNumber(-180, 180);
      case 'lat':
        return isNumber(-90, 90);
      case 'crop':
        return CROPS.some((crop) => crop === value);
      case 'commodity':
        return value === 'seed' || value === 'inoculant';
      case 'date':
      case 'past date':
        return typeof value === 'string' && parseIsoDate(value) !== null;
      default:
        return typeof value === 'string' && stripControls(value) !== '';
    }
  };
  if (!holds()) return 'E1950';
  if (kind === 'past date') return (parseIsoDate(value as string) as number) > known.asOf ? 'E1960' : null;
  const isId = kind === 'communities' || kind === 'lots' || kind === 'vehicles' || kind === 'stations';
  return isId && !known[kind].has(stripControls(value as string)) ? 'E1952' : null;
}

const isEntry = (value: unknown): value is Entry =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const own = (entry: Entry, name: string): unknown => (Object.hasOwn(entry, name) ? entry[name] : undefined);
