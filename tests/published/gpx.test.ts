import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { routeGpx } from '../../src/presentation/exports/route-gpx.ts';
import { paperCase, vehicleDays } from '../../src/presentation/papers/paper-case.ts';
import { vehicleTask } from '../../src/presentation/papers/route-sheet.ts';
import { english } from '../../src/presentation/wording/words.ts';
import { projectRoot } from '../architecture/source-files.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';

/**
 * GPX 1.1, schema http://www.topografix.com/GPX/1/1/gpx.xsd: gpxType is the sequence metadata, wpt, rte, trk, extensions, with
 * attributes version "1.1" and creator; metadataType begins name, desc, author, copyright, link, time; wptType requires lat and
 * lon and its name stands before desc; trkType begins name, cmt, desc and holds trkseg after them.
 */
const ORDER = {
  gpx: ['metadata', 'wpt', 'rte', 'trk', 'extensions'],
  metadata: ['name', 'desc', 'author', 'copyright', 'link', 'time', 'keywords', 'bounds', 'extensions'],
  wpt: ['ele', 'time', 'magvar', 'geoidheight', 'name', 'cmt', 'desc', 'src', 'link', 'sym', 'type'],
  trk: ['name', 'cmt', 'desc', 'src', 'link', 'number', 'type', 'extensions', 'trkseg'],
  trkseg: ['trkpt', 'extensions'],
} as Readonly<Record<string, readonly string[]>>;

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** A reader of well-formed XML without comments or sections; throws where a tag is not closed by its own. */
function parseXml(text: string): Element {
  const root: Element = { name: '', attributes: {}, children: [], text: '' };
  const open = [root];
  for (const [, close, name = '', said = '', empty, words = ''] of text
    .replace(/^<\?xml[^>]*\?>/, '')
    .matchAll(/<(\/)?([\w:]+)((?: [\w:]+="[^"<]*")*)(\/)?>([^<]*)/g)) {
    if (close) {
      if (open.pop()?.name !== name) throw new Error(`</${name}> closes another`);
    } else {
      const attributes = Object.fromEntries(
        [...said.matchAll(/([\w:]+)="([^"]*)"/g)].map(([, key, value]) => [key, value]),
      );
      const element: Element = { name, attributes, children: [], text: '' };
      open.at(-1)?.children.push(element);
      if (!empty) open.push(element);
    }
    const within = open.at(-1);
    if (within) within.text += words.trim();
  }
  if (open.length !== 1) throw new Error('not all closed');
  return root.children[0] ?? root;
}

const planned = planFiles(readFolderFiles(join(projectRoot, 'scenarios', 'tiny-district')), 200);
const c = paperCase(planned.plan, planned.scenario, planned.decisions.decisions, english);
const days = [...new Set(planned.plan.delivery.trips.date)];
const routes = days.flatMap((date) =>
  vehicleDays(c, date).flatMap((vehicle) => {
    const task = vehicleTask(c, vehicle, date);
    return task ? [{ vehicle, text: routeGpx(c, task), root: parseXml(routeGpx(c, task)) }] : [];
  }),
);

function* all(element: Element): Generator<Element> {
  yield element;
  for (const child of element.children) yield* all(child);
}

describe('routes as GPX 1.1', () => {
  it('have the root, version, creator and namespace of the standard', () => {
    expect(routes.length).toBeGreaterThan(0);
    for (const { text, root } of routes) {
      expect(text.startsWith('<?xml version="1.0" encoding="UTF-8"?>\n')).toBe(true);
      expect(root.name).toBe('gpx');
      expect(root.attributes).toMatchObject({
        version: '1.1',
        creator: 'Nodulary',
        xmlns: 'http://www.topografix.com/GPX/1/1',
      });
    }
  });

  it('have every element in the order of the schema', () => {
    for (const { root } of routes) {
      for (const { name, children } of all(root)) {
        const order = ORDER[name];
        const ranks = children.map((child) => order?.indexOf(child.name) ?? -1);
        if (order) expect(ranks, name).toEqual([...ranks].sort((a, b) => a - b));
        if (order) expect(Math.min(0, ...ranks), name).toBe(0);
      }
    }
  });

  it('give latitude and longitude of every point in degrees, and the time of the plan in UTC', () => {
    for (const { root } of routes) {
      const points = [...all(root)].filter(({ name }) => name === 'wpt' || name === 'trkpt');
      for (const { attributes } of points) {
        expect(Math.abs(Number(attributes['lat']))).toBeLessThanOrEqual(90);
        expect(Math.abs(Number(attributes['lon']))).toBeLessThan(180);
        expect(Object.keys(attributes).sort()).toEqual(['lat', 'lon']);
      }
      const time = [...all(root)].find(({ name }) => name === 'time')?.text;
      expect(time).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    }
  });

  it('begin and end every trip at the depot, pass every stop, and name the stops in order', () => {
    const at = ({ attributes }: Element) => [Number(attributes['lon']), Number(attributes['lat'])].join(' ');
    const depot = planned.scenario.depots[0]?.position.join(' ');
    for (const { root, vehicle } of routes) {
      const segments =
        root.children.find(({ name }) => name === 'trk')?.children.filter(({ name }) => name === 'trkseg') ?? [];
      expect(segments.length).toBe(vehicle.trips.length);
      segments.forEach(({ children }, i) => {
        const line = children.map(at);
        expect([line[0], line.at(-1)]).toEqual([depot, depot]);
        for (const { place } of vehicle.trips[i]?.stops ?? []) {
          expect(line).toContain([planned.plan.places.placeLon[place], planned.plan.places.placeLat[place]].join(' '));
        }
      });
      const stops = root.children.filter(({ name }) => name === 'wpt').slice(1);
      expect(stops.map(({ children }) => Number(children[0]?.text.split(' ')[0]))).toEqual(stops.map((_, i) => i + 1));
    }
  });

  it('escape what XML keeps for itself, and leave out what it does not allow', () => {
    const [date = ''] = days;
    const depots = planned.scenario.depots.map((depot) => ({ ...depot, name: 'A&B <"\u0001\u{1f331}>' }));
    const spoiled = { ...c, scenario: { ...planned.scenario, depots } };
    const task = vehicleDays(spoiled, date).flatMap((vehicle) => vehicleTask(spoiled, vehicle, date) ?? [])[0];
    const text = task ? routeGpx(spoiled, task) : '';
    expect(text).toContain('<name>A&amp;B &lt;&quot;\u{1f331}&gt;</name>');
    expect(() => parseXml(text)).not.toThrow();
  });
});
