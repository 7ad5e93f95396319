import { dayNumber, isoDate, isoWeekday, parseIsoDate } from '../../engine/index.ts';
import { dateText } from '../views/frame-view.ts';
import { goodsOfStop } from './carried-goods.ts';
import { communityName, zoneNames, zoneOfCommunity } from './case-names.ts';
import type { Cell, Page, Row, Text } from './page.ts';
import { strong } from './page.ts';
import { daysOfPlan, footOf, number, type PaperCase, vehicleDays } from './paper-case.ts';

/** Calendars for the wall: one for the depots by vehicle, one a zone by community. Without names of people. */
export function wallCalendars(c: PaperCase): Page[] {
  const zones = c.scenario.zones.map(({ id, name }) => calendarPage(c, name, (date) => zoneLines(c, id, date)));
  return [calendarPage(c, c.plan.scenario.name, (date) => vehicleLines(c, date), vehicleKey(c)), ...zones];
}

function calendarPage(
  c: PaperCase,
  name: string,
  linesOf: (date: string) => readonly Text[],
  key: readonly string[] = [],
): Page {
  const { planningFrom, planningTo, asOf } = c.plan.scenario;
  const months = `${dateText(planningFrom, c.words, false)} – ${dateText(planningTo, c.words)}`;
  const driven = new Set(daysOfPlan(c));
  return {
    title: c.said.store.wallTitle(name, months),
    about: [c.said.store.wallAbout(dateText(asOf, c.words)), ...key],
    turned: true,
    blocks: [
      {
        kind: 'table',
        name: 'days',
        look: 'grid',
        columns: c.words.weekdays.map((head) => ({ head })),
        rows: weeksOf(c, planningFrom, planningTo, (date) => (driven.has(date) ? linesOf(date) : [])),
      },
    ],
    foot: footOf(c),
  };
}

/** Weeks from Monday to Sunday that hold the planning days; days outside stay empty. */
function weeksOf(c: PaperCase, from: string, to: string, linesOf: (date: string) => readonly Text[]): Row[] {
  const [first, last] = [parseIsoDate(from), parseIsoDate(to)];
  if (first === null || last === null) return [];
  const rows: Row[] = [];
  for (let monday = first - (isoWeekday(first) - 1); monday <= last; monday += 7) {
    const cells = Array.from({ length: 7 }, (_, i): Cell => {
      const day = dayNumber(monday + i);
      if (day < first || day > last) return '';
      const iso = isoDate(day);
      return { lines: [[strong(dateText(iso, c.words, false))], ...linesOf(iso)] };
    });
    rows.push({ cells });
  }
  return rows;
}

/** Which letter is which vehicle. */
function vehicleKey(c: PaperCase): string[] {
  const { wallKey, wallKeyOf } = c.said.store;
  const known = new Map(
    daysOfPlan(c).flatMap((date) => vehicleDays(c, date).map(({ id, mark }) => [mark.letter, id] as const)),
  );
  const letters = [...known].sort(([a], [b]) => (a < b ? -1 : 1));
  return [`${wallKey} ${letters.map(([letter, id]) => wallKeyOf(letter, id)).join(', ')}.`];
}

function vehicleLines(c: PaperCase, date: string): Text[] {
  return vehicleDays(c, date).map(({ mark, zones, stopCount }) =>
    c.said.store.wallVehicle(mark.letter, zoneNames(c, zones), number(c, stopCount)),
  );
}

/** Communities of a zone that are handed seed, packs, or both that day. */
function zoneLines(c: PaperCase, zoneId: string, date: string): Text[] {
  const { stops, trips } = c.plan.delivery;
  const kinds = new Map<string, { seed: boolean; packs: boolean }>();
  stops.trip.forEach((trip, stop) => {
    if (trips.date[trip] !== date) return;
    for (const { communityId, product } of goodsOfStop(c, stop)) {
      if (zoneOfCommunity(c, communityId) !== zoneId) continue;
      const known = kinds.get(communityId) ?? { seed: false, packs: false };
      if (product.kind === 'inoculant') known.packs = true;
      else known.seed = true;
      kinds.set(communityId, known);
    }
  });
  const { wallSeed, wallPacks, wallBoth } = c.said.store;
  const named = (has: { seed: boolean; packs: boolean }) =>
    [...kinds].flatMap(([id, of]) => (of.seed === has.seed && of.packs === has.packs ? [communityName(c, id)] : []));
  const parts = [
    [named({ seed: true, packs: true }), wallBoth],
    [named({ seed: true, packs: false }), wallSeed],
    [named({ seed: false, packs: true }), wallPacks],
  ] as const;
  return parts.flatMap(([names, said]) => (names.length > 0 ? [said(names.join(', '))] : []));
}
