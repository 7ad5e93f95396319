import { dayNumber, isoDate, type Plan, type Problem, problem, type Scenario } from '../../engine/index.ts';
import { csvText } from '../exports/csv-text.ts';

/** One hand-over as a person enters it: a row of handovers.csv. Null: not said. */
export interface HandoverEntry {
  /** ISO date. */
  readonly date: string;
  readonly communityId: string;
  readonly vehicleId: string | null;
  readonly lotId: string;
  readonly packs: number;
  readonly returnedPacks: number;
  readonly kg: number | null;
  readonly boxC: number | null;
  readonly sownOn: string | null;
  readonly growers: number | null;
  readonly growersWomen: number | null;
  readonly reason: string | null;
}

/** Columns of handovers.csv with what stands in them. */
const COLUMNS: readonly (readonly [string, (entry: HandoverEntry) => string | number | null])[] = [
  ['date', ({ date }) => date],
  ['community_id', ({ communityId }) => communityId],
  ['vehicle_id', ({ vehicleId }) => vehicleId],
  ['lot_id', ({ lotId }) => lotId],
  ['packs', ({ packs }) => packs],
  ['returned_packs', ({ returnedPacks }) => returnedPacks],
  ['kg', ({ kg }) => kg],
  ['box_c', ({ boxC }) => boxC],
  ['sown_on', ({ sownOn }) => sownOn],
  ['growers', ({ growers }) => growers],
  ['growers_women', ({ growersWomen }) => growersWomen],
  ['reason', ({ reason }) => reason],
];

/**
 * The table with rows added at its end, in the columns it has; columns it lacks are added to every row. Nothing that stands
 * there is touched but the line ends.
 *
 * @param before text of the file; null where there is none yet
 */
export function addEntries(before: string | null, entries: readonly HandoverEntry[]): string {
  if (before === null || before.trim() === '') {
    return csvText(
      COLUMNS.map(([name]) => name),
      entries.map((entry) => COLUMNS.map(([, cell]) => cell(entry))),
    );
  }
  const lines = rowsOf(before);
  const header = (lines[0] ?? '')
    .replace(/^\uFEFF/, '')
    .split(',')
    .map((name) => name.trim().replace(/^"(.*)"$/, '$1'));
  const added = COLUMNS.filter(([name]) => !header.includes(name));
  const wide = lines.map((line, i) => `${line}${added.map(([name]) => (i === 0 ? `,${name}` : ',')).join('')}`);
  const names = [...header, ...added.map(([name]) => name)];
  const rows = csvText(
    names,
    entries.map((entry) => names.map((name) => COLUMNS.find(([of]) => of === name)?.[1](entry) ?? null)),
  );
  return `${wide.join('\n')}\n${rows.split('\r\n').slice(1).join('\n')}`;
}

/** Rows of a table as text, line ends made alike; a line end within quotes parts no row. */
function rowsOf(table: string): string[] {
  const rows: string[] = [];
  for (const line of table.replace(/\r\n?/g, '\n').replace(/\n+$/, '').split('\n')) {
    const isOpen = ((rows.at(-1) ?? '').split('"').length - 1) % 2 === 1;
    if (isOpen) rows[rows.length - 1] += `\n${line}`;
    else rows.push(line);
  }
  return rows;
}

/** What entries are judged against. */
export interface EntryCase {
  readonly plan: Plan;
  readonly scenario: Scenario;
  /** The day being entered: nothing is later. */
  readonly today: string;
  /** Entered today already, and not yet part of the scenario. */
  readonly entered: readonly HandoverEntry[];
}

/**
 * What does not hold of an entry, in the codes that the file would be judged by. Problems of weight `set aside` keep it out; a
 * `noted` one is said and the entry stands.
 */
export function judgeEntry(entry: HandoverEntry, { plan, scenario, today, entered }: EntryCase): Problem[] {
  const { communityId, lotId, packs, returnedPacks, date, sownOn } = entry;
  const place = { file: 'handovers.csv' };
  const found: Problem[] = [];
  const unknown = (column: string, part: string, value: string) =>
    found.push(problem('E1308', { ...place, column, value, facts: { part } }));
  if (!scenario.communities.some(({ id }) => id === communityId)) unknown('community_id', 'communities', communityId);
  const lot = scenario.lots.find(({ id }) => id === lotId);
  if (!lot) unknown('lot_id', 'lots', lotId);
  const whole = (column: string, value: number, atMost: number) => {
    if (Number.isInteger(value) && value >= 0 && value <= atMost) return;
    const facts = { atLeast: 0, atMost };
    found.push(problem('E1302', { ...place, column, value: String(value), facts }));
  };
  whole('packs', packs, Number.MAX_SAFE_INTEGER);
  whole('returned_packs', returnedPacks, Math.max(0, packs));
  if (date > today) found.push(problem('E1960', { ...place, column: 'date', value: date }));
  if (sownOn !== null && sownOn > today) found.push(problem('E1960', { ...place, column: 'sown_on', value: sownOn }));
  const alike = [...entered, ...known(scenario)].filter(
    (one) =>
      one.date === date && one.communityId === communityId && one.lotId === lotId && one.vehicleId === entry.vehicleId,
  );
  const facts = { lot: lotId, community: communityId, date };
  if (alike.some((one) => one.packs === packs && one.returnedPacks === returnedPacks))
    found.push(problem('E1961', { ...place, value: communityId }));
  else if (alike.length > 0) found.push(problem('E1962', { ...place, value: communityId, facts }));
  const carried = carriedTo(plan, entry);
  if (carried !== null && packs > carried)
    found.push(problem('E1965', { ...place, column: 'packs', value: String(packs), facts: { ...facts, carried } }));
  const gone = [...entered, ...known(scenario)].reduce(
    (sum, one) => (one.lotId === lotId ? sum + one.packs - one.returnedPacks : sum),
    0,
  );
  const kept = gone + packs - returnedPacks;
  if (lot && kept > lot.packs)
    found.push(
      problem('E1963', {
        ...place,
        column: 'packs',
        value: lotId,
        facts: { lot: lotId, packs: kept, held: lot.packs },
      }),
    );
  return found;
}

const known = ({ handovers }: Scenario) => handovers.map((one) => ({ ...one, date: isoOf(one.date) }));

const isoOf = (day: number): string => isoDate(dayNumber(day));

/** Packs of a lot that the plan has for a community on a day with a vehicle; null where it has no visit there then. */
function carriedTo(
  { ids, allocation, delivery }: Plan,
  { date, communityId, vehicleId, lotId }: HandoverEntry,
): number | null {
  const { stops, trips, loads } = delivery;
  let [packs, isVisited] = [0, false];
  stops.loads.forEach((aboard, stop) => {
    const trip = stops.trip[stop] ?? -1;
    if (trips.date[trip] !== date) return;
    if (vehicleId !== null && ids.vehicles[trips.vehicle[trip] ?? -1] !== vehicleId) return;
    for (const load of aboard) {
      const consignment = loads.consignment[load] ?? -1;
      if (ids.communities[allocation.consignments.community[consignment] ?? -1] !== communityId) continue;
      isVisited = true;
      (loads.grants[load] ?? []).forEach((grant, i) => {
        if (ids.lots[allocation.grants.lot[grant] ?? -1] === lotId) packs += loads.packs[load]?.[i] ?? 0;
      });
    }
  });
  return isVisited ? packs : null;
}
