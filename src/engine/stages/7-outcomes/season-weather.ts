import { roadRainRule } from '../../reference/road-rain.ts';
import { LAPSE_K_PER_KM } from '../../reference/solar.ts';
import { civilFromDay, dayNumber, dayOfMonthDay, type Scenario, type SeasonOutlook } from '../../vocabulary/index.ts';

/** The weather of each member of a season, moved to the days of the outlook: rain and heat of one year stay together. */
export interface SeasonWeather {
  /** Mean and highest air, °C, [(member * weatherPlaces + place) * outlookDays + day]. */
  readonly meanC: Float64Array;
  readonly tmaxC: Float64Array;
  /** Road state of the district, [member * outlookDays + day]. */
  readonly roadState: Int8Array;
  /** Rain of a member at a weather place on a day offset, which may lie before the outlook; NaN where nothing is recorded. */
  readonly rainMm: (member: number, place: number, day: number) => number;
}

/** Where a day's extremes are known for this season: observed or forecast, as in SeasonOutlook.airBasis. */
const isKnown = (basis: number | undefined) => basis === 0 || basis === 1;

/**
 * What is known of this season holds in every member; beyond it a day has the extremes that the member's year had on that date,
 * and where that year has no such pair, what is expected. Roads follow the rain of the wettest weather place, on the day or
 * the day before.
 */
export function weatherOfSeasons(scenario: Scenario, season: SeasonOutlook): SeasonWeather {
  const { members, stations, outlookDays, firstDay, airBasis, tminC, tmaxC, stationRiseM } = season;
  const places = stations.length;
  const records = Array.from(stations, (station) => lookUp(scenario.weather[station]));
  const weather = {
    meanC: new Float64Array(members.length * places * outlookDays),
    tmaxC: new Float64Array(members.length * places * outlookDays),
    roadState: new Int8Array(members.length * outlookDays),
    rainMm: (member: number, place: number, day: number) => {
      const record = records[place];
      if (!record) return Number.NaN;
      const known = record('rainMm', firstDay + day);
      return Number.isNaN(known) ? record('rainMm', inYearOf(member, day)) : known;
    },
  };
  const rule = roadRainRule(scenario.assumptions);
  for (let member = 0; member < members.length; member++) {
    for (let day = 0; day < outlookDays; day++) {
      const pastDay = inYearOf(member, day);
      let wettest = 0;
      for (let place = 0; place < places; place++) {
        const expected = place * outlookDays + day;
        const at = (member * places + place) * outlookDays + day;
        const cooler = ((stationRiseM[place] as number) / 1000) * LAPSE_K_PER_KM.value;
        const low = (records[place]?.('tminC', pastDay) ?? Number.NaN) - cooler;
        const high = (records[place]?.('tmaxC', pastDay) ?? Number.NaN) - cooler;
        const isOwn = !isKnown(airBasis[expected]) && low <= high;
        weather.tmaxC[at] = isOwn ? high : (tmaxC[expected] as number);
        weather.meanC[at] = isOwn ? (low + high) / 2 : ((tminC[expected] as number) + (tmaxC[expected] as number)) / 2;
        wettest = Math.max(
          wettest,
          weather.rainMm(member, place, day) || 0,
          weather.rainMm(member, place, day - 1) || 0,
        );
      }
      weather.roadState[member * outlookDays + day] =
        wettest >= rule.closedMm.value ? 2 : wettest >= rule.difficultMm.value ? 1 : 0;
    }
  }
  return weather;

  function inYearOf(member: number, day: number): number {
    const { year, month, day: dayOfMonth } = civilFromDay(dayNumber(firstDay + day));
    const yearsOff = (members[member]?.year ?? scenario.seasonYear) - scenario.seasonYear;
    return dayOfMonthDay(year + yearsOff, { month, day: dayOfMonth });
  }
}

/** Values of a station by column and day number; NaN outside its record. */
function lookUp(station: Scenario['weather'][number] | undefined) {
  if (!station) return undefined;
  const rowOf = new Map(Array.from(station.days, (day, row) => [day, row]));
  return (column: 'tminC' | 'tmaxC' | 'rainMm', day: number): number =>
    station[column][rowOf.get(day) ?? -1] ?? Number.NaN;
}
