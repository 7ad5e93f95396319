import { csvText } from '../exports/csv-text.ts';
import { deliveryCalendars } from '../exports/delivery-calendars.ts';
import { routeGpx } from '../exports/route-gpx.ts';
import { deliveryMessages, MESSAGES_HEADER, messageRows } from './delivery-messages.ts';
import type { Block, Page } from './page.ts';
import type { PaperSize } from './page-style.ts';
import { daysOfPlan, dayText, footOf, type PaperCase, vehicleDays } from './paper-case.ts';
import {
  communitiesServed,
  communityPapers,
  DAY_PAPERS,
  type PaperName,
  papersOf,
  SEASON_PAPERS,
} from './paper-sets.ts';
import { renderDocument } from './render-page.ts';
import { vehicleTask } from './route-sheet.ts';

const FILE_NAMES: Readonly<Record<PaperName, string>> = {
  pick: 'pick-lists',
  route: 'route-sheets',
  waybill: 'waybills',
  handover: 'handover-sheets',
  list: 'distribution-lists',
  hold: 'hold-notes',
  card: 'stock-cards',
  wall: 'wall-calendars',
};

/**
 * Every paper of a plan as files, by path: a folder a day with what is printed for it, the papers of the season, a handover
 * sheet a community for phones, calendars a vehicle and a zone, routes, texts for phones, and a page that leads to all. Made when asked for.
 */
export function paperFiles(c: PaperCase, size: PaperSize): ReadonlyMap<string, () => string> {
  const files = new Map<string, () => string>();
  const fileName = nameGiver();
  const add = (path: string, title: string, pages: () => Page[]) =>
    files.set(path, () => renderDocument(pages(), { title, language: c.words.language.code, size }));
  const { setTitle, setOf } = c.said.store;
  const days = daysOfPlan(c);
  for (const date of days) {
    for (const name of DAY_PAPERS) {
      add(`${date}/${FILE_NAMES[name]}.html`, setOf(setTitle[name], dayText(c, date)), () => papersOf(c, name, date));
    }
    for (const vehicle of vehicleDays(c, date)) {
      const task = vehicleTask(c, vehicle, date);
      if (task) files.set(`routes/${date}-${fileName('vehicle', vehicle.id)}.gpx`, () => routeGpx(c, task));
    }
  }
  for (const name of SEASON_PAPERS) add(`${FILE_NAMES[name]}.html`, setTitle[name], () => papersOf(c, name, ''));
  for (const id of communitiesServed(c)) {
    add(`phones/${fileName('community', id)}.html`, setTitle.handover, () => communityPapers(c, 'handover', id));
  }
  const calendars = deliveryCalendars(c);
  for (const [id, text] of calendars.vehicles)
    files.set(`calendars/vehicle-${fileName('vehicle', id)}.ics`, () => text);
  for (const [id, text] of calendars.zones) files.set(`calendars/zone-${fileName('zone', id)}.ics`, () => text);
  files.set('messages.csv', () => csvText(MESSAGES_HEADER, messageRows(deliveryMessages(c))));
  const paths = [...files.keys()];
  files.set('index.html', () => indexPage(c, size, days, paths));
  return files;
}

/** Ids as file names: letters, digits, dot and dash; two ids that would share one are told apart by a number. */
function nameGiver(): (kind: string, id: string) => string {
  const given = new Map<string, string>();
  const taken = new Set<string>();
  return (kind, id) => {
    const key = `${kind} ${id}`;
    const known = given.get(key);
    if (known !== undefined) return known;
    const plain = id.replace(/[^\p{L}\p{N}.-]+/gu, '-').replace(/^\.+/, '') || kind;
    let name = plain;
    for (let i = 2; taken.has(`${kind} ${name.toLowerCase()}`); i++) name = `${plain}-${i}`;
    taken.add(`${kind} ${name.toLowerCase()}`);
    given.set(key, name);
    return name;
  };
}

function indexPage(c: PaperCase, size: PaperSize, days: readonly string[], paths: readonly string[]): string {
  const { indexTitle, indexAbout, indexSeason, indexPhones, setTitle } = c.said.store;
  const lines = (title: string, own: readonly string[]): Block => ({
    kind: 'section',
    title,
    blocks: own.map((path): Block => ({ kind: 'link', path, text: path })),
  });
  const title = indexTitle(c.plan.scenario.name);
  const blocks = [
    lines(
      indexSeason,
      SEASON_PAPERS.map((name) => `${FILE_NAMES[name]}.html`),
    ),
    ...days.map((date) =>
      lines(
        dayText(c, date),
        paths.filter((path) => path.startsWith(`${date}/`) || path.startsWith(`routes/${date}-`)),
      ),
    ),
    lines(
      setTitle.wall,
      paths.filter((path) => path.startsWith('calendars/')),
    ),
    lines(
      indexPhones,
      paths.filter((path) => path.startsWith('phones/') || path === 'messages.csv'),
    ),
  ];
  const page: Page = { title, about: [indexAbout], blocks, foot: footOf(c) };
  return renderDocument([page], { title, language: c.words.language.code, size });
}
