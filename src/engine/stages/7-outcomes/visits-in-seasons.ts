import { HOT_BAND_KELVIN, HOT_LIMIT_CELSIUS } from '../../reference/boxes.ts';
import { RELEASE_RULE } from '../../reference/release-rule.ts';
import { dayOfMonthDay, type Places, type Scenario, type SeasonOutlook } from '../../vocabulary/index.ts';
import type { Visit } from './handed-goods.ts';
import type { SeasonWeather } from './season-weather.ts';

/** How the plan is played: as printed, or with each place's inoculant held until planting rain has fallen there. */
export type PlayRule = 'as-printed' | 'with-release';

/** What becomes of each visit in each member, [member * visits + visit]. */
export interface VisitsInSeasons {
  /** Day of the hand-over; NaN where it never comes to it. */
  readonly day: Float64Array;
  /** 1 where the packs may have reached 40 °C: they are on hold, and nobody coats seed with them. */
  readonly onHold: Uint8Array;
}

/**
 * A trip goes on its day where the roads are no worse than planned with. Otherwise it waits for the first workday on which each
 * of its places can be reached from the depot and back on that day's roads; vehicles are taken to be free then (assumed).
 * With the release rule, stops that bring inoculant wait for the rain, and so many days more, before that. Packs warm with
 * the air as the hot band says they do.
 */
export function visitInSeasons(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  visits: readonly Visit[],
  weather: SeasonWeather,
  rule: PlayRule,
): VisitsInSeasons {
  const { members, outlookDays, siteStation, stations, tmaxC } = season;
  const drive = openRoads(scenario, places, season, visits, weather);
  const made = {
    day: new Float64Array(members.length * visits.length),
    onHold: new Uint8Array(members.length * visits.length),
  };
  for (let member = 0; member < members.length; member++) {
    const released = rule === 'with-release' ? releaseDays(scenario, season, weather, member) : null;
    visits.forEach((visit, v) => {
      const place = siteStation[visit.site] ?? 0;
      const wait = released && visit.hasInoculant ? (released[place] as number) : visit.day;
      const day = Number.isNaN(wait) ? Number.NaN : drive(member, visit, Math.max(visit.day, wait));
      const at = member * visits.length + v;
      made.day[at] = day;
      if (Number.isNaN(day) || Number.isNaN(visit.packMaxC)) return;
      const hot = weather.tmaxC[
        (member * stations.length + place) * outlookDays + Math.min(day, outlookDays - 1)
      ] as number;
      const kelvin = hot - (tmaxC[place * outlookDays + visit.day] as number);
      const perKelvin = (visit.hotBandMaxC - visit.packMaxC) / HOT_BAND_KELVIN.value;
      if (visit.packMaxC + perKelvin * kelvin >= HOT_LIMIT_CELSIUS.value) made.onHold[at] = 1;
    });
  }
  return made;
}

/** First day from `from` on, on which a visit's trip can be driven in a member; NaN where none is left. */
function openRoads(
  scenario: Scenario,
  { travel }: Places,
  season: SeasonOutlook,
  visits: readonly Visit[],
  weather: SeasonWeather,
) {
  const { outlookDays, planningDays, workday, roadState } = season;
  const depotOf = scenario.vehicles.map(({ depotId }) => scenario.depots.findIndex(({ id }) => id === depotId));
  const sitesOfTrip = new Map<number, number[]>();
  for (const { trip, site } of visits) sitesOfTrip.set(trip, [...(sitesOfTrip.get(trip) ?? []), site]);
  const known = new Map<string, boolean>();
  const isReached = (vehicle: number, trip: number, closureSet: number, state: number): boolean => {
    const key = `${trip} ${closureSet} ${state}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const table = travel.tables[travel.vehicleClass[vehicle] ?? -1]?.[closureSet]?.[state];
    const depot = depotOf[vehicle] ?? -1;
    const isOpen =
      table !== undefined &&
      (sitesOfTrip.get(trip) ?? []).every((site) => hasLeg(table, depot, site) && hasLeg(table, site, depot));
    known.set(key, isOpen);
    return isOpen;
  };
  return (member: number, { vehicle, trip, day: planned }: Visit, from: number): number => {
    for (let day = from; day < outlookDays; day++) {
      const state = weather.roadState[member * outlookDays + day] as number;
      if (day === planned && state <= (roadState[day] as number)) return day;
      if (day < planningDays && workday[day] !== 1) continue;
      const closureSet = travel.dayClosureSet[Math.min(day, planningDays - 1)] ?? 0;
      if (isReached(vehicle, trip, closureSet, state)) return day;
    }
    return Number.NaN;
  };
}

function hasLeg(table: Places['travel']['tables'][number][number][number], from: number, to: number): boolean {
  if (from === to) return true;
  for (let leg = table.offsets[from] as number; leg < (table.offsets[from + 1] as number); leg++)
    if (table.destinations[leg] === to) return Number.isFinite(table.minutes[leg] as number);
  return false;
}

/** Per weather place, the day from which inoculant may go: so many days after enough rain has fallen in three. NaN: never. */
function releaseDays(scenario: Scenario, season: SeasonOutlook, weather: SeasonWeather, member: number): Float64Array {
  const mm = scenario.policy.releaseMmInThreeDays ?? RELEASE_RULE.mm.value;
  const search = scenario.seasons.find(({ name }) => name === season.seasonName);
  const from = search ? dayOfMonthDay(scenario.seasonYear, search.from) - season.firstDay : 0;
  return Float64Array.from(season.stations, (_, place) => {
    const fallen = (day: number) => weather.rainMm(member, place, day) || 0;
    for (let day = Math.min(0, from); day < season.outlookDays; day++)
      if (fallen(day) + fallen(day - 1) + fallen(day - 2) >= mm) return day + RELEASE_RULE.leadDays.value;
    return Number.NaN;
  });
}
