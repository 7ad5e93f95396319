import { quantile } from '../numerics/quantile.ts';
import { cropFact } from '../reference/crops.ts';
import { roadRainRule } from '../reference/road-rain.ts';
import { civilFromDay, isoDate, isoWeekday } from '../vocabulary/calendar.ts';
import type { PlaceGeometry, Position } from '../vocabulary/places.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { dayNumber } from '../vocabulary/units.ts';
import { at, type CheckedCase, dayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { boxOf, segmentKm } from './own-earth.ts';
import { givenWindow, memberOnsets, type OwnSeason, placesWithHeight, sowingDays } from './own-season.ts';
import { atHeight, expectedExtremes, inYear, onDay } from './own-weather.ts';
import { TOLERANCE } from './tolerances.ts';

/** Onset, windows, road states, workdays and expected extremes, from the weather record and the calendar. */
export function checkSeason(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  return [
    ...checkNames(c, season),
    ...checkZoneStations(c, season),
    ...checkMembers(c, season),
    ...checkOnsets(c, season),
    ...checkWindows(c, season),
    ...checkRoadStates(c, season),
    ...checkWorkdays(c),
    ...checkExtremes(c, season),
  ];
}

function checkNames(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const told = c.plan.season;
  const found: Problem[] = [];
  if (told.seasonName !== season.name)
    found.push(finding('E8201', 'season.seasonName', null, told.seasonName, season.name));
  if (told.onsetDefinition !== season.definitionName)
    found.push(finding('E8201', 'season.onsetDefinition', null, told.onsetDefinition, season.definitionName));
  told.stations.forEach((id, i) => {
    const isKnown = season.eligible.some((station) => station.id === id) || c.scenario.weather.length === 0;
    if (!isKnown) found.push(finding('E8201', 'season.stations', i, id, 'a station with a past season'));
  });
  const heights = placesWithHeight(c, season);
  told.stationRiseM.forEach((rise, i) => {
    if (rise !== 0 && !heights.some(({ station, riseM }) => station === told.stations[i] && riseM === rise))
      found.push(finding('E8201', 'season.stationRiseM', i, rise, 'the height of a place above its station'));
  });
  return found;
}

/** The zone's weather comes from the station nearest to it: no other that may stand for it is nearer to all of it. */
function checkZoneStations(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const { zoneStation, zoneStationKm, stations } = c.plan.season;
  if (c.scenario.weather.length === 0) return [];
  return c.scenario.zones.flatMap(({ geometry }, zone) => {
    const station = at(zoneStation, zone);
    const own = at(season.stationPositions, station);
    const corners = cornersOf(geometry);
    const nearer = season.eligible.find(
      ({ id, position }) =>
        id !== stations[station] && corners.every((place) => segmentKm(place, position) < segmentKm(place, own)),
    );
    if (nearer) return [finding('E8201', 'season.zoneStation', zone, stations[station], nearer.id)];
    const km = corners.map((place) => segmentKm(place, own));
    const far = Math.max(...km) * (1 + TOLERANCE.kilometresRelative) + TOLERANCE.stationKm;
    const told = zoneStationKm[zone] ?? Number.POSITIVE_INFINITY;
    return told > far ? [finding('E8201', 'season.zoneStationKm', zone, told, `at most ${far}`)] : [];
  });
}

/** Corners of the box around an area, or the point. */
function cornersOf(geometry: PlaceGeometry): readonly Position[] {
  if (geometry.kind === 'point') return [geometry.position];
  const { west, south, east, north } = boxOf(geometry.polygons);
  return [
    [west, south],
    [west, north],
    [east, south],
    [east, north],
  ];
}

function checkMembers(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const { memberYears, memberOnset, stations } = c.plan.season;
  const found: Problem[] = [];
  const due = [...season.members.keys()];
  if (due.length !== memberYears.length || due.some((year, i) => memberYears[i] !== year))
    return [finding('E8202', 'season.memberYears', null, memberYears.join(' '), due.join(' '))];
  memberYears.forEach((year, member) => {
    stations.forEach((_, s) => {
      const onset = at(season.members.get(year) ?? [], s);
      const date = at(memberOnset, member * stations.length + s);
      const told = date === null ? Number.NaN : dayOf(date);
      if (!Object.is(told, onset))
        found.push(
          finding('E8203', 'season.memberOnset', member * stations.length + s, date ?? 'none', dateText(onset)),
        );
    });
  });
  return found;
}

const dateText = (day: number) => (Number.isNaN(day) ? 'none' : isoDate(dayNumber(day)));

function checkOnsets(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const { onset, zoneStation } = c.plan.season;
  const found: Problem[] = [];
  zoneStation.forEach((station, zone) => {
    const days = memberOnsets(c, station);
    for (const [name, p] of [
      ['p20', 0.2],
      ['p50', 0.5],
      ['p80', 0.8],
    ] as const)
      found.push(...compareDate('E8204', `season.onset.${name}`, zone, at(onset[name], zone), quantile(days, p)));
    const current = season.current[station];
    const due = current
      ? current.confirmed
        ? 'confirmed'
        : 'unconfirmed'
      : season.years.length > 0
        ? 'expected'
        : 'no data';
    if (at(onset.status, zone) !== due)
      found.push(finding('E8204', 'season.onset.status', zone, at(onset.status, zone), due));
  });
  return found;
}

function compareDate(
  code: 'E8204' | 'E8205',
  column: string,
  row: number,
  told: string | null,
  due: number,
): readonly Problem[] {
  const same = told === null ? Number.isNaN(due) : Math.abs(dayOf(told) - due) <= TOLERANCE.quantileDays;
  return same ? [] : [finding(code, column, row, told ?? 'none', dateText(Math.round(due)))];
}

function checkWindows(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const { windows, zoneStation } = c.plan.season;
  const found: Problem[] = [];
  const seen = new Set<number>();
  windows.zone.forEach((zone, row) => {
    const crop = at(windows.crop, row);
    seen.add(zone * c.scenario.crops.length + crop);
    const given = givenWindow(c, zone, crop) ?? usualWindow(c, crop);
    const [first, last] = [at(windows.firstOffsetDays, row), at(windows.lastOffsetDays, row)];
    if (first !== given.firstOffsetDays || last !== given.lastOffsetDays)
      found.push(
        finding(
          'E8205',
          'season.windows.firstOffsetDays',
          row,
          `${first} to ${last}`,
          `${given.firstOffsetDays} to ${given.lastOffsetDays}`,
        ),
      );
    if (at(windows.anchor, row) !== given.anchor.kind)
      found.push(finding('E8205', 'season.windows.anchor', row, at(windows.anchor, row), given.anchor.kind));
    const { value: maturity } = cropFact(at(c.scenario.crops, crop), 'maturityDays', c.scenario.assumptions);
    const safe = quantile(season.endsAt(at(zoneStation, zone)), 0.2) - Math.round(maturity);
    found.push(...compareDate('E8205', 'season.windows.latestSafe', row, at(windows.latestSafe, row), safe));
    const days = sowingDays(c, zone, crop);
    if (!days) return;
    for (const [name, of, p] of [
      ['firstP20', days.first, 0.2],
      ['firstP50', days.first, 0.5],
      ['firstP80', days.first, 0.8],
      ['lastP50', days.last, 0.5],
    ] as const)
      found.push(...compareDate('E8205', `season.windows.${name}`, row, at(windows[name], row), quantile(of, p)));
  });
  const due = zoneStation.length * c.scenario.crops.length;
  if (seen.size !== due || windows.zone.length !== due)
    found.push(finding('E8205', 'season.windows.zone', null, `${windows.zone.length} rows`, `${due} rows`));
  return found;
}

/** Where the programme gives no window: the crop's usual days from the onset. */
function usualWindow({ scenario }: CheckedCase, crop: number) {
  const { value } = cropFact(at(scenario.crops, crop), 'windowDays', scenario.assumptions);
  return { anchor: { kind: 'onset' }, firstOffsetDays: 0, lastOffsetDays: Math.max(0, Math.round(value)) };
}

/**
 * The worst state over the stations. Where the rain of a day is known it decides; else the state is planned that, or a
 * worse one than which, comes on the same calendar day in at least half of the members' years.
 */
function checkRoadStates(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const { memberYears, roadState } = c.plan.season;
  const { planning, seasonYear } = c.scenario;
  return roadState.flatMap((told, offset) => {
    const day = planning.from + offset;
    const inMembers = () =>
      memberYears.map((year) => inYear(day, civilFromDay(dayNumber(day)).year + year - seasonYear));
    const states = (isRainKnown(season, day) ? [day] : inMembers()).map((one) => stateAfter(c, season, one));
    const isLikely = (least: number) => states.filter((state) => state >= least).length * 2 >= states.length;
    const due = states.length === 0 ? 0 : isLikely(2) ? 2 : isLikely(1) ? 1 : 0;
    return told === due ? [] : [finding('E8206', 'season.roadState', offset, told, due)];
  });
}

const isRainKnown = (season: OwnSeason, day: number) =>
  season.stations.some((record) => record && !Number.isNaN(onDay(record, 'rainMm', day)));

/** State after the wettest rain of a day and the day before it at any station. */
function stateAfter(c: CheckedCase, season: OwnSeason, day: number): number {
  const { closedMm, difficultMm } = roadRainRule(c.scenario.assumptions);
  const rain = season.stations.flatMap((record) =>
    record ? [onDay(record, 'rainMm', day - 1), onDay(record, 'rainMm', day)] : [],
  );
  const most = Math.max(0, ...rain.filter((mm) => !Number.isNaN(mm)));
  return most >= closedMm.value ? 2 : most >= difficultMm.value ? 1 : 0;
}

function checkWorkdays(c: CheckedCase): readonly Problem[] {
  const { workdays, holidays, from } = c.scenario.planning;
  return c.plan.season.workday.flatMap((told, offset) => {
    const day = dayNumber(from + offset);
    const due = workdays.includes(isoWeekday(day)) && !holidays.includes(day) ? 1 : 0;
    return told === due ? [] : [finding('E8207', 'season.workday', offset, told, due)];
  });
}

function checkExtremes(c: CheckedCase, season: OwnSeason): readonly Problem[] {
  const found: Problem[] = [];
  season.stations.forEach((record, station) => {
    for (let offset = 0; record && offset < c.planningDays; offset++) {
      const index = station * c.planningDays + offset;
      const atStation = expectedExtremes(record, c.scenario.asOf, c.scenario.planning.from + offset);
      const due = atStation && atHeight(atStation, at(c.plan.season.stationRiseM, station));
      for (const column of ['tminC', 'tmaxC', 'hotTmaxC'] as const) {
        const told = c.plan.season[column][index] ?? Number.NaN;
        if (due && !(Math.abs(told - due[column]) <= TOLERANCE.extremeC))
          found.push(finding('E8208', `season.${column}`, index, told, due[column]));
      }
    }
  });
  return found;
}
