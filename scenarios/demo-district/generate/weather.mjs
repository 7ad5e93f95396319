// A daily weather generator: a first-order chain of wet and dry days with exponential rain, and normal temperatures that
// are cooler on wet days (after Richardson 1981, Water Resour. Res. 17:182-190, whose form is from memory). Its monthly
// parameters were frozen from published normals before anything was planned with them, and stay as they are:
// Lusaka 1961-1990, mean daily maximum and minimum, rain and days with at least 1 mm, as printed at
// lusakaaa.blogspot.com/2013/07/climate.html (a copy of the World Meteorological Organization's normals; read-2).
import { draws, rounded } from './draws.mjs';

const NORMALS = {
  maxC: [27.4, 27.4, 27.5, 27.1, 25.8, 23.8, 24.0, 26.5, 30.3, 31.7, 30.4, 27.7],
  minC: [17.6, 17.4, 16.4, 14.0, 10.7, 7.8, 7.2, 9.2, 12.9, 16.2, 17.4, 17.8],
  rainMm: [245.4, 185.9, 95.0, 34.7, 3.1, 0.0, 0.1, 0.4, 1.7, 18.4, 89.3, 208.1],
  rainDays: [18, 15, 10, 3, 0, 0, 0, 0, 0, 2, 8, 16],
};
const MONTH_DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
// Assumed: how much likelier rain is on the day after rain; how far wet and dry days differ; day-to-day spread and its
// memory; how far a whole season's rains come early or late.
const WET_FOLLOWS_WET = 1.5;
const WET_DAY_COOLER_C = 3.2;
const SPREAD_C = 2.0;
const MEMORY = 0.65;
const SEASON_SHIFT_DAYS = 9;

const utc = (year, month, day) => Date.UTC(year, month, day) / 86_400_000;

/** Value of a monthly normal on a day, straight lines between the middles of months. */
function smooth(values, dayOfYear) {
  const at = (dayOfYear / 365.25) * 12 - 0.5;
  const before = Math.floor(at);
  const share = at - before;
  return values[(before + 12) % 12] * (1 - share) + values[(before + 13) % 12] * share;
}

/** Rows of all stations; the stations of one district share most of a day's luck. */
export function makeWeather({ seed, stations, from, to }) {
  const random = draws(seed);
  const own = stations.map((_, i) => draws(seed * 7 + i + 1));
  const wetYesterday = stations.map(() => false);
  let warmth = 0;
  let shift = 0;
  const rows = [];
  for (let day = utc(...from); day <= utc(...to); day++) {
    const date = new Date(day * 86_400_000);
    const month = date.getUTCMonth();
    const dayOfYear = day - utc(date.getUTCFullYear(), 0, 1);
    if (month === 6 && date.getUTCDate() === 1) shift = random.normal() * SEASON_SHIFT_DAYS;
    warmth = MEMORY * warmth + Math.sqrt(1 - MEMORY * MEMORY) * random.normal();
    const shared = random.next();
    stations.forEach((station, i) => {
      const season = (dayOfYear - shift + 365.25) % 365.25;
      const wetChance = smooth(NORMALS.rainDays.map((n, m) => n / MONTH_DAYS[m]), season);
      const afterDry = wetChance / (1 + (WET_FOLLOWS_WET - 1) * wetChance);
      const luck = own[i].chance(0.7) ? shared : own[i].next();
      const wet = luck < Math.min(0.95, wetYesterday[i] ? afterDry * WET_FOLLOWS_WET : afterDry);
      const meanWetDay = smooth(NORMALS.rainMm, season) / Math.max(0.4, smooth(NORMALS.rainDays, season));
      const rain = wet ? Math.max(1, -Math.log(1 - own[i].next()) * (meanWetDay - 1) + 1) * station.wetter : 0;
      const swing = wetChance * WET_DAY_COOLER_C - (wet ? WET_DAY_COOLER_C : 0);
      const max = smooth(NORMALS.maxC, dayOfYear) + station.warmerC + SPREAD_C * warmth + swing + 0.5 * own[i].normal();
      const min = smooth(NORMALS.minC, dayOfYear) + station.warmerC + 0.6 * SPREAD_C * warmth + 0.5 * own[i].normal();
      wetYesterday[i] = wet;
      rows.push([station.id, station.lat, station.lon, station.elevationM, date.toISOString().slice(0, 10), rounded(Math.min(min, max - 3), 1), rounded(max, 1), rounded(rain, 1)]);
    });
  }
  return rows;
}
