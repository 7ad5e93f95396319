import { cropFact } from '../../reference/crops.ts';
import { CLIMATE_SERVICE_ONSET, type OnsetDefinition, SEASON_END } from '../../reference/onset-definitions.ts';
import type { RoadRainRule } from '../../reference/road-rain.ts';
import {
  AIR_COURSE,
  CLEAR_SKY_TRANSMITTANCE,
  HEIGHT_STEP_M,
  LAPSE_K_PER_KM,
  RANGE_TRANSMITTANCE,
  SOLAR_CONSTANT_MJ_PER_M2_MINUTE,
  SUNRISE_ZENITH_DEGREES,
} from '../../reference/solar.ts';
import type { FigureInput, FigureProvenance, Sourced } from '../../vocabulary/provenance.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import { ASSUMED_EXTREMES, CLIMATE_HALF_WIDTH_DAYS } from './expected-extremes.ts';

const WEATHER_FILE = 'weather.csv';

const column = (name: string, unit: string): FigureInput => ({
  name,
  from: `${WEATHER_FILE}:${name}`,
  unit,
  status: 'given',
  source: WEATHER_FILE,
});

const reference = (name: string, unit: string, figure: Sourced<number | string>): FigureInput => ({
  name,
  from: `reference:${name}`,
  unit,
  value: figure.value,
  status: figure.status,
  source: figure.source,
});

const figure = (name: string): FigureInput => ({
  name,
  from: `figure:${name}`,
  unit: 'day',
  status: 'derived',
  source: 'this plan',
});

const RAIN = column('rain_mm', 'mm');
const EXTREMES = [column('tmin_c', '°C'), column('tmax_c', '°C')];

/** How the season's figures are made: one entry a figure. */
export function seasonProvenance(
  scenario: Scenario,
  definition: OnsetDefinition,
  road: RoadRainRule,
  pastSeasonCount: number,
): FigureProvenance[] {
  const seasons: FigureInput = {
    name: 'past seasons complete enough',
    from: `${WEATHER_FILE}:date`,
    unit: 'seasons',
    value: pastSeasonCount,
    status: 'given',
    source: WEATHER_FILE,
  };
  return [
    {
      figure: 'season.memberOnset',
      unit: 'day',
      formula:
        'date of the first window of windowDays days with at least totalMm of rain and minWetDays wet days that no run of dryRunDays dry days follows within searchDays days; past years moved to this season by their distance from the first search day',
      inputs: [RAIN, seasons, ...onsetInputs(definition)],
      status: 'derived',
      source: definition.source,
    },
    {
      figure: 'season.onset',
      unit: 'day',
      formula:
        'quantiles 0.2, 0.5 and 0.8 over the member seasons (type 7 of Hyndman & Fan 1996); this season’s own onset where its record shows one',
      inputs: [figure('season.memberOnset')],
      status: 'derived',
      source: 'conditional climatology: only past seasons that had not begun by the as-of day (assumed)',
    },
    {
      figure: 'season.windows',
      unit: 'day',
      formula:
        'anchor + first and last offset, per member season; the chance of having begun to sow is the share of members whose first day has come',
      inputs: [
        figure('season.memberOnset'),
        {
          name: 'offsets',
          from: 'crop-windows.csv:first_offset_days',
          unit: 'days',
          status: 'given',
          source: 'crop-windows.csv, else the crop’s usual window',
        },
        reference('season end', 'mm', {
          value: `${SEASON_END.capacityMm} mm store, ${SEASON_END.useMmPerDay} mm a day, empty at ${SEASON_END.emptyMm} mm`,
          status: SEASON_END.status,
          source: SEASON_END.source,
        }),
      ],
      status: scenario.cropWindows.length > 0 ? 'given' : 'assumed',
      source: 'crop-windows.csv, else reference:windowDays from the onset',
    },
    {
      figure: 'season.windows.latestSafe',
      unit: 'day',
      formula:
        'quantile 0.2 over member seasons of the day on which the soil store is empty, less the days to maturity',
      inputs: [
        RAIN,
        reference('season end', 'mm', {
          value: `${SEASON_END.capacityMm} mm store, ${SEASON_END.useMmPerDay} mm a day, empty at ${SEASON_END.emptyMm} mm`,
          status: SEASON_END.status,
          source: SEASON_END.source,
        }),
        ...scenario.crops.map((crop) => ({
          name: `maturityDays of ${crop}`,
          from: `reference:${crop}.maturityDays`,
          unit: 'days',
          value: cropFact(crop, 'maturityDays', scenario.assumptions).value,
          status: cropFact(crop, 'maturityDays', scenario.assumptions).status,
          source: cropFact(crop, 'maturityDays', scenario.assumptions).source,
        })),
      ],
      status: 'derived',
      source:
        'latest sowing = P20 of the end of the rains less the crop’s duration (evidence on thermal exposure 6.4, procedure)',
    },
    {
      figure: 'season.sownChance',
      unit: '1',
      formula:
        'sum of planned hectares * share of member seasons whose first sowing day has come / sum of planned hectares',
      inputs: [figure('season.windows'), { ...figure('needs.plannedHa'), unit: 'ha' }],
      status: 'derived',
      source: 'share of member seasons',
    },
    ...(['season.tminC', 'season.tmaxC'] as const).map((extreme, i) => ({
      figure: extreme,
      unit: '°C',
      formula: `observed, else forecast, else the median over past years of the calendar day and the ${CLIMATE_HALF_WIDTH_DAYS} days either side, else ${ASSUMED_EXTREMES.value.tminC} and ${ASSUMED_EXTREMES.value.tmaxC} °C`,
      inputs: EXTREMES.slice(i, i + 1),
      status: 'derived' as const,
      source: WEATHER_FILE,
    })),
    {
      figure: 'season.hotTmaxC',
      unit: '°C',
      formula: `observed, else forecast, else the ninth decile over past years of the calendar day and the ${CLIMATE_HALF_WIDTH_DAYS} days either side`,
      inputs: EXTREMES.slice(1),
      status: 'derived',
      source: 'type 7 of Hyndman & Fan 1996',
    },
    {
      figure: 'season.stationRiseM',
      unit: 'm',
      formula: `height of depots and communities less that of their station, in steps of ${HEIGHT_STEP_M} m; the air there is cooler by the lapse`,
      inputs: [{ ...column('elevation_m', 'm'), name: 'elevation_m' }, reference('lapse', 'K/km', LAPSE_K_PER_KM)],
      status: 'derived',
      source: 'elevation_m of weather.csv, depots.csv and communities.geojson; 0 where either is not stated',
    },
    {
      figure: 'season.airC',
      unit: '°C',
      formula:
        'day: Tmin + (Tmax - Tmin) sin(pi (t - sunrise - c) / (day length + 2a)); night: Tmin + (T at sunset - Tmin) exp(-b hours since sunset / night length); within about 2 K',
      inputs: [
        ...EXTREMES,
        reference('a', 'h', { ...AIR_COURSE, value: AIR_COURSE.value.maximumLagHours }),
        reference('b', '', { ...AIR_COURSE, value: AIR_COURSE.value.nightDecay }),
        reference('c', 'h', { ...AIR_COURSE, value: AIR_COURSE.value.minimumLagHours }),
        reference('zenith angle at sunrise', '°', SUNRISE_ZENITH_DEGREES),
      ],
      status: 'derived',
      source: AIR_COURSE.source,
    },
    {
      figure: 'season.sunLoad',
      unit: 'kW/m²',
      formula: 'solar constant x inverse distance x sin(altitude) x min(0.75, 0.16 sqrt(Tmax - Tmin)), at most 1',
      inputs: [
        ...EXTREMES,
        reference('solar constant', 'MJ/m²/min', SOLAR_CONSTANT_MJ_PER_M2_MINUTE),
        reference('clear-sky transmittance', '', CLEAR_SKY_TRANSMITTANCE),
        reference('transmittance per root of range', 'K^-0.5', RANGE_TRANSMITTANCE),
      ],
      status: 'derived',
      source: 'FAO-56 eq 23, 24, 28, 36 and 50',
    },
    {
      figure: 'season.roadState',
      unit: '',
      formula:
        'closed from closedMm, difficult from difficultMm of rain on the day or the day before, the worst over the weather stations; beyond the forecast the worst state with a chance of it or worse of at least one half over the member seasons',
      inputs: [RAIN, reference('difficultMm', 'mm', road.difficultMm), reference('closedMm', 'mm', road.closedMm)],
      status: 'assumed',
      source: road.difficultMm.source,
    },
    {
      figure: 'season.zoneStationKm',
      unit: 'km',
      formula: 'shortest line on the ellipsoid from a point on the zone to the nearest station',
      inputs: [column('lat', '°'), column('lon', '°')],
      status: 'derived',
      source: WEATHER_FILE,
    },
  ];
}

function onsetInputs(definition: OnsetDefinition): FigureInput[] {
  const keys = ['totalMm', 'windowDays', 'wetDayMm', 'minWetDays', 'dryRunDays', 'searchDays'] as const;
  return keys.map((key) => {
    const own = definition[key] !== CLIMATE_SERVICE_ONSET[key];
    return reference(`onset.${key}`, key.endsWith('Mm') ? 'mm' : 'days', {
      value: definition[key],
      status: own ? 'given' : CLIMATE_SERVICE_ONSET.status,
      source: own ? `scenario.json:assumptions.onset.${key}` : CLIMATE_SERVICE_ONSET.source,
    });
  });
}
