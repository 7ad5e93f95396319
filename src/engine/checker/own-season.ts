import { quantile } from '../numerics/quantile.ts';
import { CLIMATE_SERVICE_ONSET, type OnsetDefinition } from '../reference/onset-definitions.ts';
import { HEIGHT_STEP_M } from '../reference/solar.ts';
import { civilFromDay } from '../vocabulary/calendar.ts';
import type { Position } from '../vocabulary/places.ts';
import type { Scenario, SeasonSearch, WeatherStation } from '../vocabulary/scenario.ts';
import { dayNumber } from '../vocabulary/units.ts';
import { at, type CheckedCase, dayOf } from './checked-case.ts';
import { segmentKm } from './own-earth.ts';
import { endOfRains, findOnset, type OwnRecord, onDay, openRecord, searchWindow, seasonInPlay } from './own-weather.ts';

/** The season as the record gives it; stations in the order of plan.season.stations. */
export interface OwnSeason {
  readonly stations: readonly (OwnRecord | null)[];
  readonly stationPositions: readonly Position[];
  /** Stations of the file that may stand for a zone. */
  readonly eligible: readonly WeatherStation[];
  readonly definitionName: string;
  readonly name: string;
  /** Onset of this season by its own record, per station. */
  readonly current: readonly ({ readonly day: number; readonly confirmed: boolean } | null)[];
  /** Past years with enough days at every used station. */
  readonly years: readonly number[];
  /** The years that this season may turn out like, and their onsets moved to this season; NaN: none that year. */
  readonly members: ReadonlyMap<number, readonly number[]>;
  /** When the rains of each of the plan's members end at a station, moved to this season; NaN: not on record. */
  readonly endsAt: (station: number) => readonly number[];
}

/** Part of the days of a past season that must be on record for the season to count. */
const LEAST_DAYS = 0.9;

export function openSeason(c: CheckedCase): OwnSeason {
  const { scenario, plan } = c;
  const { seasonYear, asOf, planning } = scenario;
  const rule = ruleInForce(scenario);
  const search: SeasonSearch = seasonInPlay(scenario) ?? {
    name: 'planning period',
    from: civilFromDay(planning.from),
    to: civilFromDay(planning.to),
  };
  const rows = plan.season.stations.map((id) => scenario.weather.find((station) => station.id === id) ?? null);
  const stations = rows.map((row) => (row ? openRecord(row) : null));
  const records = stations.flatMap((record) => record ?? []);
  const moved = searchWindow(search, seasonYear).from;
  const years = completeYears(records, search, seasonYear, rule);
  const current = stations.map((record) => {
    const { from, until } = searchWindow(search, seasonYear);
    return record ? findOnset(record, from, until, lastRain(record), rule) : null;
  });
  const past = years.map((year): [number, readonly number[]] => {
    const { from, until } = searchWindow(search, year);
    const found = stations.map((record) => record && findOnset(record, from, until, until + rule.searchDays, rule));
    return [year, found.map((onset) => (onset ? onset.day - from + moved : Number.NaN))];
  });
  const later = past.filter(([, onsets]) => onsets.every((day, s) => current[s] || !(day <= asOf)));
  const own = current.map((onset) => onset?.day ?? Number.NaN);
  const chosen: [number, readonly number[]][] =
    past.length === 0 ? [[seasonYear, own]] : later.length > 0 ? later : past;
  return {
    stations,
    stationPositions: rows.map((row) => row?.position ?? [0, 0]),
    eligible: eligibleStations(scenario, search, rule),
    definitionName: rule.name,
    name: search.name,
    current,
    years,
    endsAt: (station) =>
      plan.season.memberYears.map((year) => {
        const record = stations[station];
        const { from, until } = searchWindow(search, year);
        return record ? endOfRains(record, from, until) - from + moved : Number.NaN;
      }),
    members: new Map(chosen.map(([year, onsets]) => [year, onsets.map((day, s) => current[s]?.day ?? day)])),
  };
}

/** The climate-service rule with the programme's own numbers in it. */
function ruleInForce({ assumptions }: Scenario): OnsetDefinition {
  const own = Object.entries(assumptions).filter(([name]) => name.startsWith('onset.'));
  if (own.length === 0) return CLIMATE_SERVICE_ONSET;
  const numbers = own.map(([name, value]) => {
    const key = name.slice('onset.'.length);
    const least = key === 'windowDays' ? 1 : 0;
    return [key, Math.max(least, key.endsWith('Mm') ? value : Math.round(value))];
  });
  return { ...CLIMATE_SERVICE_ONSET, ...Object.fromEntries(numbers), name: 'climate-service, own figures' };
}

function completeYears(
  records: readonly OwnRecord[],
  search: SeasonSearch,
  seasonYear: number,
  rule: OnsetDefinition,
): readonly number[] {
  if (records.length === 0 || records.some((record) => record.rainMm.length === 0)) return [];
  const first = Math.min(...records.map((record) => civilFromDay(dayNumber(record.first)).year));
  const years: number[] = [];
  for (let year = first - 1; year < seasonYear; year++) {
    const { from, until } = searchWindow(search, year);
    if (records.every((record) => isComplete(record, from, until + rule.searchDays))) years.push(year);
  }
  return years;
}

function isComplete(record: OwnRecord, from: number, until: number): boolean {
  let days = 0;
  for (let day = from; day <= until; day++) if (!Number.isNaN(onDay(record, 'rainMm', day))) days++;
  return days >= LEAST_DAYS * (until - from + 1);
}

function lastRain(record: OwnRecord): number {
  let last = record.rainMm.length - 1;
  while (last >= 0 && Number.isNaN(record.rainMm[last])) last--;
  return record.first + last;
}

/** Stations with a complete past season; where none has one, all. */
function eligibleStations(scenario: Scenario, search: SeasonSearch, rule: OnsetDefinition): readonly WeatherStation[] {
  const withPast = scenario.weather.filter(
    (station) => completeYears([openRecord(station)], search, scenario.seasonYear, rule).length > 0,
  );
  return withPast.length > 0 ? withPast : scenario.weather;
}

/** Height of a place above a station, in the steps in which heights are told apart; 0 where either is unknown. */
function riseOf(station: WeatherStation | undefined, placeM: number | null): number {
  const metres = station?.elevationM == null || placeM === null ? 0 : placeM - station.elevationM;
  return HEIGHT_STEP_M * Math.round(metres / HEIGHT_STEP_M) + 0;
}

/** Depots, then hand-over places: where they are and how high, as far as the files say. */
function sitesOf(c: CheckedCase): readonly { readonly position: Position; readonly metres: number | null }[] {
  const { depots, communities } = c.scenario;
  const { placeLon, placeLat, communityPlace } = c.plan.places;
  const places = c.plan.ids.places.map((_, place) => {
    const known = communities.flatMap(({ elevationM }, i) => (communityPlace[i] === place ? (elevationM ?? []) : []));
    const metres = known.length > 0 ? known.reduce((sum, one) => sum + one, 0) / known.length : null;
    return { position: [at(placeLon, place), at(placeLat, place)] as Position, metres };
  });
  return [...depots.map(({ position, elevationM }) => ({ position, metres: elevationM })), ...places];
}

/** The station nearest to each site, and how far the site stands above it. */
export function placesWithHeight(c: CheckedCase, season: OwnSeason) {
  return sitesOf(c).map(({ position, metres }) => {
    const station = at(c.plan.season.stations, nearestStation(season, position));
    return {
      station,
      riseM: riseOf(
        c.scenario.weather.find(({ id }) => id === station),
        metres,
      ),
    };
  });
}

/** Weather place of each depot, then of each hand-over place: its nearest station at its own height. */
export function weatherPlaces(c: CheckedCase, season: OwnSeason): readonly number[] {
  const { stations, stationRiseM } = c.plan.season;
  return placesWithHeight(c, season).map(({ station, riseM }) => {
    const own = stations.findIndex((id, i) => id === station && stationRiseM[i] === riseM);
    return own >= 0 ? own : stations.indexOf(station);
  });
}

/** Station of the plan nearest to a place. */
export function nearestStation(season: OwnSeason, position: Position): number {
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  season.stationPositions.forEach((other, station) => {
    const km = segmentKm(position, other);
    if (km < least) [best, least] = [station, km];
  });
  return best;
}

/** Onset days of the plan's members at a station, once the season check has passed them; NaN where there is none. */
export function memberOnsets(c: CheckedCase, station: number): readonly number[] {
  const { memberYears, memberOnset, stations } = c.plan.season;
  return memberYears.map((_, member) => {
    const date = at(memberOnset, member * stations.length + station);
    return date === null ? Number.NaN : dayOf(date);
  });
}

export interface SowingDays {
  readonly first: readonly number[];
  readonly last: readonly number[];
}

/**
 * First and last sowing day per member in a zone (the last index: outside all zones) for a crop. Null where the plan has no
 * such window, or one that counts from the end of the rains, which the checker does not look for.
 */
export function sowingDays(c: CheckedCase, zone: number, crop: number): SowingDays | null {
  const { windows, zoneStation } = c.plan.season;
  const guess = zone * c.scenario.crops.length + crop;
  const isRow = (row: number) => windows.zone[row] === zone && windows.crop[row] === crop;
  const row = isRow(guess) ? guess : windows.zone.findIndex((_, i) => isRow(i));
  if (row < 0 || at(windows.anchor, row) === 'cessation') return null;
  const anchors =
    at(windows.anchor, row) === 'onset'
      ? memberOnsets(c, at(zoneStation, zone))
      : c.plan.season.memberYears.map(() => fixedAnchor(c, zone, crop));
  return {
    first: anchors.map((day) => day + at(windows.firstOffsetDays, row)),
    last: anchors.map((day) => day + at(windows.lastOffsetDays, row)),
  };
}

/**
 * Last planning day before the land of a community is usually sown with any of these crops: before the median first day of the seasons
 * with an onset. NaN where the checker does not look for a window.
 */
export function unsownUntil(c: CheckedCase, community: number, crops: Iterable<number>): number {
  let first = Number.POSITIVE_INFINITY;
  for (const crop of crops)
    for (const { zone } of at(c.zonesOf, community)) {
      const days = sowingDays(c, zone < 0 ? c.scenario.zones.length : zone, crop);
      if (!days) return Number.NaN;
      const usual = quantile(days.first, 0.5);
      if (!Number.isNaN(usual)) first = Math.min(first, usual - c.scenario.planning.from);
    }
  return Math.ceil(first) - 1;
}

/** Row of the crop windows file that holds for a zone and crop: the zone's own before the one for all zones. */
export function givenWindow(c: CheckedCase, zone: number, crop: number) {
  const zoneId = c.scenario.zones[zone]?.id ?? null;
  const rows = c.scenario.cropWindows.filter(
    (window) =>
      window.crop === c.scenario.crops[crop] &&
      (window.season === null || window.season === c.plan.season.seasonName) &&
      (window.zoneId === null || window.zoneId === zoneId),
  );
  return rows.find((window) => window.zoneId !== null) ?? rows[0] ?? null;
}

function fixedAnchor(c: CheckedCase, zone: number, crop: number): number {
  const window = givenWindow(c, zone, crop);
  return window?.anchor.kind === 'date' ? window.anchor.on : Number.NaN;
}
