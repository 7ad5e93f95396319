import type { Plan, Position, Scenario } from '../../engine/index.ts';
import { dayNumber, parseIsoDate } from '../../engine/index.ts';
import type { VehicleDay } from '../views/days-fleet.ts';
import { placePosition, routeLines } from '../views/days-route.ts';
import type { Drawing, Mark, Spot } from './drawing.ts';
import { placeLabels } from './place-labels.ts';

const WIDTH = 430;
const HEIGHT = 320;
const EDGE = 26;
const KM_PER_DEGREE = 111.2;
/** Units of the drawing below which a bend is not seen. */
const FINEST = 0.6;

export interface MapWords {
  readonly label: string;
  readonly depot: string;
  readonly north: string;
  readonly scale: (km: number) => string;
  /** Name of each place of the plan. */
  readonly placeName: (place: number) => string;
}

/** The route of one vehicle's day on the roads around it, in black on white. */
export function routeMap(plan: Plan, scenario: Scenario, vehicle: VehicleDay, date: string, words: MapWords): Drawing {
  const lines = routeLines(plan, scenario, [vehicle]).map(({ positions }) => positions);
  const stops = vehicle.trips.flatMap((trip) => trip.stops);
  const depot = scenario.depots.find(({ id }) => id === scenario.vehicles[vehicle.vehicle]?.depotId);
  const depotAt: Position = depot?.position ?? [0, 0];
  const places = stops.map(({ place }) => placePosition(plan, place));
  const view = viewOf([depotAt, ...places, ...lines.flat()]);
  const discs = numbersAt(stops.map(({ number, place }) => ({ number, at: view.spot(placePosition(plan, place)) })));
  const square = view.spot(depotAt);
  const names = [
    ...[...new Set(stops.map(({ place }) => place))].map((place) => ({
      at: view.spot(placePosition(plan, place)),
      text: words.placeName(place),
    })),
    { at: square, text: words.depot },
  ];
  return {
    width: WIDTH,
    height: HEIGHT,
    label: words.label,
    marks: [
      ...roadMarks(scenario, date, view),
      ...lines.flatMap((line): Mark[] => [{ kind: 'line', spots: thinned(line.map(view.spot)), width: 4 }]),
      ...lines.flatMap((line) => arrows(line.map(view.spot))),
      ...placeLabels(names, [...discs.map(({ at }) => at), square], WIDTH, HEIGHT),
      ...depotMarks(square),
      // Numbers last: no name may hide one.
      ...discs,
      ...scaleMarks(view.unitsPerKm, words.scale),
      ...northMarks(words.north),
    ],
  };
}

interface View {
  readonly spot: (position: Position) => Spot;
  readonly unitsPerKm: number;
}

/** The box of the positions, filling the drawing; near the equator and over tens of kilometres a plain scale will do. */
function viewOf(positions: readonly Position[]): View {
  const lons = positions.map(([lon]) => lon);
  const lats = positions.map(([, lat]) => lat);
  const [west, east] = [lons.reduce((a, b) => Math.min(a, b)), lons.reduce((a, b) => Math.max(a, b))];
  const [south, north] = [lats.reduce((a, b) => Math.min(a, b)), lats.reduce((a, b) => Math.max(a, b))];
  const shrink = Math.cos((((south + north) / 2) * Math.PI) / 180);
  const least = 2 / KM_PER_DEGREE;
  const [width, height] = [Math.max(least, (east - west) * shrink), Math.max(least, north - south)];
  const scale = Math.min((WIDTH - 2 * EDGE) / width, (HEIGHT - 2 * EDGE) / height);
  const [left, top] = [(WIDTH - width * scale) / 2, (HEIGHT - height * scale) / 2];
  return {
    unitsPerKm: scale / KM_PER_DEGREE,
    spot: ([lon, lat]) => [left + (lon - west) * shrink * scale, top + (north - lat) * scale],
  };
}

const isInside = ([x, y]: Spot): boolean => x >= 0 && x <= WIDTH && y >= 0 && y <= HEIGHT;

function roadMarks(scenario: Scenario, date: string, view: View): Mark[] {
  const today = parseIsoDate(date) ?? dayNumber(0);
  return scenario.roads.flatMap((road): Mark[] => {
    const minor = road.roadClass === 'track' || road.roadClass === 'path';
    const width = road.roadClass === 'trunk' || road.roadClass === 'primary' ? 1.8 : 0.9;
    const shut =
      (road.closedFrom !== null || road.closedTo !== null) &&
      today >= (road.closedFrom ?? Number.NEGATIVE_INFINITY) &&
      today <= (road.closedTo ?? Number.POSITIVE_INFINITY);
    return insideParts(road.positions.map(view.spot)).flatMap((spots): Mark[] => [
      { kind: 'line', spots: thinned(spots), width, tone: 'grey', ...(minor ? { dashes: '3 3' } : {}) },
      ...(shut ? crossAt(spots[Math.floor(spots.length / 2)] ?? [0, 0]) : []),
    ]);
  });
}

/** Stretches of a line that touch the drawing, each with one spot beyond the edge; what lies outside is cut by the drawing. */
function insideParts(spots: readonly Spot[]): Spot[][] {
  const parts: Spot[][] = [];
  let open: Spot[] | null = null;
  for (let i = 1; i < spots.length; i++) {
    const [a, b] = [spots[i - 1] as Spot, spots[i] as Spot];
    if (!isInside(a) && !isInside(b)) {
      open = null;
      continue;
    }
    if (open === null) {
      open = [a];
      parts.push(open);
    }
    open.push(b);
  }
  return parts;
}

function thinned(spots: readonly Spot[]): Spot[] {
  const kept: Spot[] = [];
  spots.forEach((spot, i) => {
    const last = kept.at(-1);
    const near = last !== undefined && Math.hypot(spot[0] - last[0], spot[1] - last[1]) < FINEST;
    if (!near || i === spots.length - 1) kept.push(spot);
  });
  return kept;
}

const crossAt = ([x, y]: Spot): Mark[] => [
  {
    kind: 'line',
    spots: [
      [x - 5, y - 5],
      [x + 5, y + 5],
    ],
    width: 2,
  }, // prettier-ignore
  {
    kind: 'line',
    spots: [
      [x - 5, y + 5],
      [x + 5, y - 5],
    ],
    width: 2,
  }, // prettier-ignore
];

const ARROW_EVERY = 90;

/** Arrow heads along a line: paper on the thick line, pointing the way it is driven. */
function arrows(line: readonly Spot[]): Mark[] {
  const marks: Mark[] = [];
  let since = ARROW_EVERY / 2;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Spot, line[i] as Spot];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    since += length;
    if (since < ARROW_EVERY || length < 0.4) continue;
    since = 0;
    const [dx, dy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const at: Spot = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const corner = (along: number, across: number): Spot => [
      at[0] + dx * along - dy * across,
      at[1] + dy * along + dx * across,
    ];
    marks.push({ kind: 'shape', spots: [corner(8, 0), corner(-5, 6), corner(-5, -6)], fill: 'white' });
  }
  return marks;
}

const RADIUS = 9.5;

/** Numbered discs; stops at one place share a disc: `2, 5`. */
function numbersAt(stops: readonly { readonly number: number; readonly at: Spot }[]): (Mark & { readonly at: Spot })[] {
  const byPlace = new Map<string, { at: Spot; numbers: number[] }>();
  for (const { number, at } of stops) {
    const key = `${at[0].toFixed(1)} ${at[1].toFixed(1)}`;
    const known = byPlace.get(key) ?? { at, numbers: [] };
    known.numbers.push(number);
    byPlace.set(key, known);
  }
  return [...byPlace.values()].flatMap(({ at, numbers }): (Mark & { readonly at: Spot })[] => [
    { kind: 'disc', at, radius: numbers.length > 1 ? RADIUS + 3 : RADIUS, fill: 'white' },
    { kind: 'word', at: [at[0], at[1] + 4], text: numbers.join(','), size: 12, anchor: 'middle', heavy: true },
  ]);
}

function depotMarks([x, y]: Spot): Mark[] {
  const s = 8;
  return [
    {
      kind: 'shape',
      spots: [
        [x - s, y - s],
        [x + s, y - s],
        [x + s, y + s],
        [x - s, y + s],
      ],
      fill: 'black',
    }, // prettier-ignore
    {
      kind: 'line',
      spots: [
        [x - 5, y],
        [x + 5, y],
      ],
      width: 2.4,
      tone: 'paper',
    }, // prettier-ignore
    {
      kind: 'line',
      spots: [
        [x, y - 5],
        [x, y + 5],
      ],
      width: 2.4,
      tone: 'paper',
    }, // prettier-ignore
  ];
}

const SCALES_KM = [1, 2, 5, 10, 20, 50, 100];

function scaleMarks(unitsPerKm: number, text: (km: number) => string): Mark[] {
  const km = SCALES_KM.findLast((length) => length * unitsPerKm <= WIDTH / 3) ?? 1;
  const [x, y, length] = [8, HEIGHT - 8, km * unitsPerKm];
  return [
    {
      kind: 'line',
      spots: [
        [x, y - 5],
        [x, y],
        [x + length, y],
        [x + length, y - 5],
      ],
      width: 1.4,
    }, // prettier-ignore
    { kind: 'word', at: [x + length + 5, y + 2], text: text(km), size: 12, anchor: 'start', rim: true },
  ];
}

function northMarks(text: string): Mark[] {
  const [x, y] = [WIDTH - 14, HEIGHT - 44];
  return [
    {
      kind: 'line',
      spots: [
        [x, y + 24],
        [x, y],
      ],
      width: 1.8,
    }, // prettier-ignore
    {
      kind: 'line',
      spots: [
        [x - 5, y + 8],
        [x, y],
        [x + 5, y + 8],
      ],
      width: 1.8,
    }, // prettier-ignore
    { kind: 'word', at: [x, y + 38], text, size: 12, anchor: 'middle', heavy: true, rim: true },
  ];
}
