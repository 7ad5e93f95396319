import type { Position } from '../../engine/index.ts';
import { dayText, number, type PaperCase } from '../papers/paper-case.ts';
import type { VehicleTask } from '../papers/route-sheet.ts';
import { placeName } from '../place-name.ts';
import { hourText } from '../views/days-axis.ts';
import { legPositions, placePosition } from '../views/days-route.ts';

/**
 * The route of one vehicle's day as GPX 1.1 (namespace http://www.topografix.com/GPX/1/1): metadata, then the depot and the
 * stops as waypoints, then one track with a segment a trip along the roads driven. No names of people, no phones.
 */
export function routeGpx(c: PaperCase, { vehicle, depot, date }: VehicleTask): string {
  const { store } = c.said;
  const name = store.gpxRoute(vehicle.id, dayText(c, date));
  const stops = vehicle.trips.flatMap((trip) => trip.stops);
  const waypoints = stops.map((stop) =>
    waypoint(
      placePosition(c.plan, stop.place),
      store.gpxStop(number(c, stop.number), placeName(c.plan, c.scenario, stop.place)),
      store.gpxAbout(hourText(stop.arriveMinute), hourText(stop.departMinute)),
    ),
  );
  const segments = vehicle.trips.map((trip) => {
    const legs = trip.stops.map(({ row }) => c.plan.delivery.stops.leg[row] ?? -1);
    const home = c.plan.delivery.trips.returnLeg[trip.row] ?? -1;
    const line = [...legs, home].flatMap((leg) => legPositions(c.plan, c.scenario, leg));
    return `<trkseg>\n${withoutRepeats(line).map(point).join('\n')}\n</trkseg>`;
  });
  const about = store.gpxDay(hourText(vehicle.leaveMinute), hourText(vehicle.returnMinute));
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Nodulary" xmlns="http://www.topografix.com/GPX/1/1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.topografix.com/GPX/1/1 http://www.topografix.com/GPX/1/1/gpx.xsd">
<metadata><name>${escaped(name)}</name><desc>${escaped(c.plan.scenario.name)}</desc><time>${c.plan.scenario.asOf}T00:00:00Z</time></metadata>
${[waypoint(depot.position, depot.name, ''), ...waypoints].join('\n')}
<trk><name>${escaped(name)}</name><desc>${escaped(about)}</desc>
${segments.join('\n')}
</trk>
</gpx>
`;
}

const at = ([lon, lat]: Position): string => `lat="${lat}" lon="${lon}"`;
const point = (position: Position): string => `<trkpt ${at(position)}/>`;

function waypoint(position: Position, name: string, about: string): string {
  return `<wpt ${at(position)}><name>${escaped(name)}</name>${about === '' ? '' : `<desc>${escaped(about)}</desc>`}</wpt>`;
}

const withoutRepeats = (line: readonly Position[]): Position[] =>
  line.filter(([lon, lat], i) => i === 0 || line[i - 1]?.[0] !== lon || line[i - 1]?.[1] !== lat);

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escaped(text: string): string {
  const allowed = [...text].filter(isXmlCharacter).join('');
  return allowed.replace(/[&<>"]/g, (mark) => ENTITIES[mark] ?? mark);
}

/** Characters that XML 1.0 allows (section 2.2); the others are left out. */
function isXmlCharacter(letter: string): boolean {
  const code = letter.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || code >= 0x10000;
}
