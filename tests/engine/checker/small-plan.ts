import { log10 } from '../../../src/engine/numerics/elementary.ts';
import { polygonAreaHa } from '../../../src/engine/numerics/equal-area.ts';
import { lineKm } from '../../../src/engine/numerics/geodesic-length.ts';
import { quantile } from '../../../src/engine/numerics/quantile.ts';
import { ROAD_SPEED_KM_PER_H } from '../../../src/engine/reference/speeds.ts';
import {
  effectiveAirC,
  fillBox,
  integrateStep,
  minutesAbove,
  newBox,
  stepBox,
} from '../../../src/engine/science/box.ts';
import { measureExposure } from '../../../src/engine/science/exposure.ts';
import { nitrogenFixedKgPerHa } from '../../../src/engine/science/nitrogen.ts';
import { lifeValue } from '../../../src/engine/science/reach.ts';
import { cellsPerSeed } from '../../../src/engine/science/seed-rate.ts';
import { airCelsius, sunLoad, sunTimes } from '../../../src/engine/science/sun-and-air.ts';
import { onSeedLog10Loss, packLog10PerDay, survivalSet } from '../../../src/engine/science/survival.ts';
import { isoDate } from '../../../src/engine/vocabulary/calendar.ts';
import type { Position } from '../../../src/engine/vocabulary/places.ts';
import type { Plan } from '../../../src/engine/vocabulary/plan.ts';
import type { Exposure } from '../../../src/engine/vocabulary/readings.ts';
import { planningDate, smallScenario as scenario } from './small-scenario.ts';

/**
 * A plan for the small scenario, worked by hand. What can be counted is written as a number with its reckoning beside it;
 * what a model gives (air, box, survival, nitrogen) comes from the planner's own science, so that the checker's other
 * means are compared with it.
 *
 * Need, at 60 kg of seed per hectare: C1 600 kg of which 100 kg are its own, C2 600 kg, C3 120 kg beyond any road.
 * Seed on offer: 40 packs of 25 kg less 5 % reserve, 38 packs, 950 kg, for 1100 kg asked by C1 and C2: 0.8636 each, so
 * 431.8 and 518.2 kg; in whole packs 17 and 20, the last pack to the one farther below its share: 17 and 21, 425 and 525 kg.
 * To coat: 525 kg in either place; a pack coats 20 kg, so 27 packs each; 57 are on offer. Sticker: a pack for 25 kg, 21 each.
 */

const at = <T>(list: readonly T[], i: number): T => list[i] as T;
const round = (x: number, decimals: number) => Math.round(x * 10 ** decimals) / 10 ** decimals;
const date = (offset: number) => isoDate(planningDate(offset));

const [D1, P1, C2]: readonly [Position, Position, Position] = [
  [30, -14],
  [30.075, -14],
  [30.2, -14],
];
const LOOP: readonly Position[] = [D1, [30.04, -13.99], P1];

const leg = (
  fromSite: number,
  toSite: number,
  km: number,
  speed: number,
  pieces: Plan['delivery']['legs'][number]['pieces'],
) => ({
  fromSite,
  toSite,
  vehicle: 0,
  date: date(1),
  minutes: round((km / speed) * 60, 3),
  kilometres: round(km, 4),
  pieces,
});
const primary = ROAD_SPEED_KM_PER_H.primary.value;
/** Sites: 0 and 1 the depots, 2 the store at the road, 3 the second community, 4 the third. */
const legs: Plan['delivery']['legs'] = [
  leg(0, 2, lineKm(LOOP), ROAD_SPEED_KM_PER_H.tertiary.value, [[1, 0, 2]]),
  leg(2, 3, lineKm([P1, C2]), primary, [[0, 1, 2]]),
  leg(3, 0, lineKm([C2, P1, D1]), primary, [[0, 2, 0]]),
  leg(2, 0, lineKm([P1, D1]), primary, [[0, 1, 0]]),
  leg(0, 3, lineKm([D1, P1, C2]), primary, [[0, 0, 2]]),
];

interface Visit {
  readonly place: number;
  readonly loads: readonly number[];
  readonly leg: number;
  readonly serviceMinutes: number;
}

interface Journey {
  readonly vehicle: number;
  readonly day: number;
  readonly leave: number;
  readonly iceKg: number;
  readonly visits: readonly Visit[];
  readonly returnLeg: number;
}

/** 21 packs of sticker of 50 g beside the seed; 27 packs of inoculant of 100 g. */
const LOAD_KG = [425 + 1.05, 2.7, 525 + 1.05, 2.7];
const OPENS = 480;

/** Hand-over takes 20 minutes, 10 for each tonne of dry goods, 30 for training when the inoculant comes. */
const JOURNEYS: readonly Journey[] = [
  {
    vehicle: 0,
    day: 1,
    leave: OPENS - at(legs, 0).minutes,
    iceKg: 0,
    visits: [
      { place: 0, loads: [0], leg: 0, serviceMinutes: 20 + 4.2605 },
      { place: 1, loads: [2], leg: 1, serviceMinutes: 20 + 5.2605 },
    ],
    returnLeg: 2,
  },
  // Depot opens at 420; 30 minutes a tonne to load 2.7 kg.
  {
    vehicle: 0,
    day: 3,
    leave: 420 + 0.081,
    iceKg: 0,
    visits: [{ place: 1, loads: [3], leg: 4, serviceMinutes: 50 }],
    returnLeg: 2,
  },
  {
    vehicle: 1,
    day: 3,
    leave: OPENS - at(legs, 0).minutes,
    iceKg: 6,
    visits: [{ place: 0, loads: [1], leg: 0, serviceMinutes: 50 }],
    returnLeg: 3,
  },
];

interface Heat {
  readonly packC: number;
  readonly packMaxC: number;
  readonly hotBandMaxC: number;
  readonly log10Loss: number;
  readonly hoursAboveStorage: number;
  readonly exposure: Exposure;
}

/** One box in air that is constant over each minute; `extra` kelvin hotter throughout. */
function runBox(journey: Journey, arrive: number, depart: number, extra: number): Heat {
  const vehicle = at(scenario.vehicles, journey.vehicle);
  const ua = vehicle.coolLitres > 0 ? (vehicle.coolUaWPerK ?? Number.NaN) : Number.NaN;
  const [day, lon, lat] = [planningDate(journey.day), 30.1, -14];
  const { sunriseMinute, sunsetMinute } = sunTimes(day, lat, lon, 120);
  const set = survivalSet(at(scenario.products, 0), 'soybean');
  const box = newBox();
  fillBox(box, 2.7, 25, journey.iceKg, ua);
  const curve = { minute: [journey.leave], celsius: [box.celsius] };
  let [hottest, loss, above] = [25, 0, 0];
  for (let minute = journey.leave; minute < depart; minute++) {
    const step = Math.min(1, depart - minute);
    const air = airCelsius(22, 40, sunriseMinute, sunsetMinute, minute);
    const sun = sunLoad(day, lat, lon, 120, 22, 40, minute);
    stepBox(box, effectiveAirC(air, sun, vehicle.carriage, minute < arrive ? 'moving' : 'parked') + extra, step);
    hottest = Math.max(hottest, box.celsius);
    loss += integrateStep(box, (celsius) => packLog10PerDay(celsius, set)) / 1440;
    above += minutesAbove(box, 20) / 60;
    curve.minute.push(minute + step);
    curve.celsius.push(box.celsius);
  }
  return {
    packC: box.celsius,
    packMaxC: hottest,
    hotBandMaxC: hottest,
    log10Loss: loss,
    hoursAboveStorage: above,
    exposure: measureExposure(curve.minute, curve.celsius),
  };
}

interface Stopped extends Visit {
  readonly trip: number;
  readonly arrive: number;
  readonly start: number;
  readonly depart: number;
  readonly loadKg: number;
  readonly heat: Heat | null;
}

function drive(journey: Journey, trip: number) {
  let clock = journey.leave;
  let aboard = journey.visits.flatMap(({ loads }) => loads).reduce((sum, load) => sum + at(LOAD_KG, load), 0);
  const stops = journey.visits.map((visit): Stopped => {
    const arrive = clock + at(legs, visit.leg).minutes;
    const start = Math.max(arrive, visit.place === 0 ? OPENS : 0);
    clock = start + visit.serviceMinutes;
    const loadKg = aboard;
    aboard -= visit.loads.reduce((sum, load) => sum + at(LOAD_KG, load), 0);
    const isInoculant = visit.loads.some((load) => load % 2 === 1);
    const cool = isInoculant ? runBox(journey, arrive, clock, 0) : null;
    const heat = cool && { ...cool, hotBandMaxC: runBox(journey, arrive, clock, 2).hotBandMaxC };
    return { ...visit, trip, arrive, start, depart: clock, loadKg, heat };
  });
  return { stops, back: clock + at(legs, journey.returnLeg).minutes };
}

const driven = JOURNEYS.map(drive);
const stops = driven.flatMap((one) => one.stops);
const minutes = (x: number) => round(x, 3);
/** A measure of each trip's exposure, up to its last hand-over of inoculant. */
const met = (figure: keyof Exposure) =>
  driven.map((one) => {
    const heat = one.stops.findLast((stop) => stop.heat !== null)?.heat;
    return heat ? round(heat.exposure[figure], 3) : null;
  });
const tripKm = JOURNEYS.map(({ visits, returnLeg }) =>
  [...visits.map((visit) => visit.leg), returnLeg].reduce((sum, l) => sum + at(legs, l).kilometres, 0),
);

// -------------------------------------------------------------------------------------------------- what it gives

const ONSETS = [18, 23, 28];
/** Window of 21 days from the onset; every member sows on its onset, after the goods came, within the window. */
const nitrogenOf = (grain: number) => nitrogenFixedKgPerHa('soybean', grain);

/** Each community: 8.75 ha with seed (525 of 600 kg for 10 ha), all of it coated; inoculant handed over on day 3. */
function outcomeOf(roadLoss: number) {
  const set = survivalSet(at(scenario.products, 0), 'soybean');
  const fresh = log10(cellsPerSeed(1.5e9, 5, 150, 1));
  const left = ONSETS.map(
    // Three days at 25 °C in the depot, then at 31 °C mean air and 2 K more under the roof until the onset.
    (onset) =>
      fresh - 3 * packLog10PerDay(25, set) - roadLoss - (onset - 3) * packLog10PerDay(33, set) - onSeedLog10Loss(6, 30),
  );
  const grain = left.map((log) => 1.28 + 0.116 * lifeValue(log, 5));
  return {
    log10PerSeed: left.reduce((sum, log) => sum + log, 0) / 3,
    reached: left.map((log) => (log >= 5 ? 8.75 : 0)),
    nitrogen: grain.map((t) => 8.75 * nitrogenOf(t)),
    grain: grain.map((t) => 8.75 * t),
    value: left.map((log) => 8.75 * lifeValue(log, 5)),
  };
}

const lossOf = (load: number) => round(stops.find(({ loads }) => loads.includes(load))?.heat?.log10Loss ?? 0, 5);
const given = [outcomeOf(lossOf(1)), outcomeOf(lossOf(3))];
const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
const sumOf = (of: (one: (typeof given)[number]) => readonly number[]) =>
  ONSETS.map((_, m) => given.reduce((sum, one) => sum + at(of(one), m), 0));
const spread = (members: readonly number[], part: number) => {
  const p50 = round(quantile(members, 0.5), 3);
  const at = (step: number) => round(p50 * (1 + step * part), 3);
  return { p10: at(-1), p25: at(-0.5), p50, p75: at(0.5), p90: at(1) };
};
const nitrogen = sumOf((one) => one.nitrogen);
const programme = spread(
  nitrogen.map((kg) => kg - 1.6666667 * nitrogenOf(1.28)),
  0.3,
);
const grain = sumOf((one) => one.grain);
/** Own seed of the first community: 100 of 600 kg for 10 ha. */
const OWN_HA = 10 / 6;
/** 0.93 of the dry grain stands above ground, 0.19 of grain and straw below it, 0.8 % of both is nitrogen. */
const RESIDUE_KG_PER_T = 910 * 0.008 * (0.93 + 0.19 * 1.93);
const half = (x: number) => x / 2;
const reachedMean = given.map((one) => mean(one.reached));
const zoneRange = (kg: number) => ({ p10: round(kg * 0.7, 3), p50: round(kg, 3), p90: round(kg * 1.3, 3) });
const [kgC1, kgC2] = given.map((one) => mean(one.nitrogen)) as [number, number];

const area = (i: number) => {
  const { geometry } = at(scenario.communities, i);
  return geometry.kind === 'area' ? round(polygonAreaHa(geometry.polygons), 6) : null;
};
const zoneArea = scenario.zones.map(({ geometry }) =>
  geometry.kind === 'area' ? round(polygonAreaHa(geometry.polygons), 6) : null,
);
const heats = (of: (heat: Heat) => number, decimals: number) =>
  stops.map(({ heat }) => (heat ? round(of(heat), decimals) : null));
/** Truck twice, pickup once: 100 a day and two of a crew at 5; 2 a kilometre; 6 kg of ice at 0.5. */
const cost = round(3 * (100 + 2 * 5) + 2 * tripKm.reduce((sum, km) => sum + km, 0) + 6 * 0.5, 2);

export const smallPlan: Plan = {
  format: 'nodulary-plan/1',
  engineVersion: '0.0.0',
  scenarioSha256: scenario.sha256,
  decisionsSha256: 'b'.repeat(64),
  seed: 1,
  iterations: 0,
  stoppedBy: 'iterations',
  rounds: 1,
  tools: [],
  stageHashes: {},
  scenario: {
    name: 'small',
    seasonYear: 2026,
    asOf: '2026-11-01',
    currency: 'ZMW',
    timeZone: 'Africa/Lusaka',
    planningFrom: '2026-11-02',
    planningTo: '2026-11-08',
  },
  handovers: { date: [], community: [], lot: [], packs: [], returnedPacks: [], sownOn: [] },

  ids: {
    crops: ['soybean'],
    zones: ['Z1', 'Z2'],
    communities: ['C1', 'C2', 'C3'],
    depots: ['D1', 'D2'],
    products: scenario.products.map(({ id }) => id),
    lots: scenario.lots.map(({ id }) => id),
    vehicles: ['TRUCK', 'PICKUP', 'TRUCK-EAST'],
    places: ['P1', 'C2', 'C3'],
  },
  places: {
    communityAreaHa: [area(0), area(1), area(2)],
    zoneAreaHa: zoneArea,
    // The second community lies half in either zone.
    shares: { community: [0, 1, 1, 2], zone: [0, 0, 1, 1], share: [1, 0.5, 0.5, 1] },
    placeLon: [30.075, 30.2, 30.35],
    placeLat: [-14, -14, -13.92],
    placeGiven: [1, 0, 0],
    communityPlace: [0, 1, 2],
    unreachable: { place: [2], vehicle: [0], reason: ['no-road-within-reach'] },
  },
  season: {
    seasonName: 'main',
    onsetDefinition: 'climate-service',
    memberYears: [2023, 2024, 2025],
    stations: ['ST'],
    stationRiseM: [0],
    zoneStation: [0, 0, 0],
    zoneStationKm: [0, 21.6, 5],
    onset: {
      status: ['expected', 'expected', 'expected'],
      p20: ['2026-11-22', '2026-11-22', '2026-11-22'],
      p50: ['2026-11-25', '2026-11-25', '2026-11-25'],
      p80: ['2026-11-28', '2026-11-28', '2026-11-28'],
      falseStartShare: [0, 0, 0],
      pastSeasons: [4, 4, 4],
    },
    memberOnset: ['2026-11-20', '2026-11-25', '2026-11-30'],
    windows: {
      zone: [0, 1, 2],
      crop: [0, 0, 0],
      anchor: ['onset', 'onset', 'onset'],
      firstOffsetDays: [0, 0, 0],
      lastOffsetDays: [21, 21, 21],
      firstP20: ['2026-11-22', '2026-11-22', '2026-11-22'],
      firstP50: ['2026-11-25', '2026-11-25', '2026-11-25'],
      firstP80: ['2026-11-28', '2026-11-28', '2026-11-28'],
      lastP50: ['2026-12-16', '2026-12-16', '2026-12-16'],
      // The store is empty on 31 December, the last search day, in every member: 100 days before.
      latestSafe: ['2026-09-22', '2026-09-22', '2026-09-22'],
    },
    // 12 mm on 6 November in two of the three seasons: difficult then and the day after.
    roadState: [0, 0, 0, 0, 1, 1, 0],
    // Wednesday the 4th is a holiday, the 8th a Sunday.
    workday: [1, 1, 0, 1, 1, 1, 0],
    sownChance: [],
    airBasis: [],
    tminC: new Array<number>(7).fill(22),
    tmaxC: new Array<number>(7).fill(40),
    hotTmaxC: new Array<number>(7).fill(40),
  },
  needs: {
    community: [0, 1, 1, 2],
    zone: [0, 0, 1, 1],
    crop: [0, 0, 0, 0],
    plannedHa: [10, 5, 5, 2],
    seedKg: [600, 300, 300, 120],
    ownSeedKg: [100, 0, 0, 0],
    inoculantG: [3000, 1500, 1500, 600],
    product: [0, 0, 0, 0],
    packsNeeded: [30, 15, 15, 6],
    stickerPacks: [24, 12, 12, 4.8],
    waterL: [7.2, 3.6, 3.6, 1.44],
    fertiliserKg: [0, 0, 0, 0],
  },
  allocation: {
    lots: {
      reasons: [
        [],
        [],
        [],
        ['expired'],
        ['expires-before-sowing'],
        ['on-hold'],
        ['awaiting'],
        ['count-below-minimum'],
        ['germination-below-minimum'],
        ['treated-seed-not-for-inoculant'],
        ['no-crop-planned'],
      ],
      packsReserved: [3, 2, 2, 0, 0, 0, 0, 0, 0, 0, 0],
      packsHeld: [0, 0, 0, 0, 0, 10, 0, 0, 0, 0, 0],
      packsOffered: [57, 38, 48, 0, 0, 0, 0, 0, 0, 0, 0],
      chanceSownBeforeExpiry: [1, 1, 1, 0, 0.3333333, 1, 1, 1, 1, 1, null],
      countPerG: scenario.lots.map(({ productId, testedCountPerG }) => {
        const { kind, countPerG } = scenario.products.find(({ id }) => id === productId) ?? {};
        return kind === 'inoculant' ? (testedCountPerG ?? countPerG ?? null) : null;
      }),
    },
    grants: {
      community: [0, 0, 0, 1, 1, 1],
      crop: [0, 0, 0, 0, 0, 0],
      lot: [0, 1, 2, 0, 1, 2],
      packs: [27, 17, 21, 27, 21, 21],
      kg: [2.7, 425, 1.05, 2.7, 525, 1.05],
      servesSeedKg: [525, 425, 525, 525, 525, 525],
    },
    shares: {
      community: [0, 1, 2],
      crop: [0, 0, 0],
      plannedHa: [10, 10, 2],
      seedNeedKg: [600, 600, 120],
      ownSeedKg: [100, 0, 0],
      seedThereKg: [0, 0, 0],
      seedGivenKg: [425, 525, 0],
      inoculantNeedSeedKg: [525, 525, 0],
      inoculantGivenSeedKg: [525, 525, 0],
      seedShare: [0.875, 0.875, 0],
      inoculantShare: [0.875, 0.875, 0],
    },
    proofs: [
      {
        commodity: 'seed',
        crops: [0],
        shareRows: [0, 1],
        needKg: [500, 600],
        keptKg: [0, 0],
        // Equal prices: 1100 kg * 1/1100 = 1; the lot's price is the same, 950/1100 the bound.
        communityPrices: [1 / 1100, 1 / 1100],
        lots: [1],
        offeredKg: [950],
        lotPrices: [1 / 1100],
        capPrice: 0,
        leastShare: 0.8636364,
        bound: 0.8636364,
        roundingKg: 25,
      },
      {
        commodity: 'inoculant',
        crops: [0],
        shareRows: [0, 1],
        needKg: [525, 525],
        keptKg: [0, 0],
        communityPrices: [0, 0],
        lots: [0],
        offeredKg: [1140],
        lotPrices: [0],
        capPrice: 1,
        leastShare: 1,
        bound: 1,
        roundingKg: 20,
      },
    ],
    shortfalls: {
      shareRow: [0, 0, 1, 1, 2, 2],
      commodity: ['seed', 'inoculant', 'seed', 'inoculant', 'seed', 'inoculant'],
      shortKg: [75, 75, 75, 75, 120, 120],
      hectares: [1.25, 1.25, 1.25, 1.25, 2, 2],
      reason: [
        'stock-short',
        'no-seed-to-inoculate',
        'stock-short',
        'no-seed-to-inoculate',
        'not-reachable',
        'no-seed-to-inoculate',
      ],
      product: [1, -1, 1, -1, -1, -1],
    },
    remedies: [],
    // 75 kg short in each of two communities, three bags each; inoculant for 60 kg more each, 20 kg a pack. A reserve of
    // 5 percent of six packs is none. No lead time is stated, so it counts from the first planning day.
    orders: {
      product: [0, 1],
      depot: [0, 0],
      verdict: ['ask-lead-time', 'ask-lead-time'],
      packs: [6, 6],
      packsWanted: [6, 6],
      hectares: [2, 2.5],
      hectaresWanted: [2, 2.5],
      cost: [24, 180],
      orderBy: ['2026-11-02', '2026-11-02'],
      arrives: ['2026-11-02', '2026-11-02'],
      usefulUntil: ['2026-11-08', '2026-11-08'],
      lastOrderDay: ['2026-11-08', '2026-11-08'],
      chanceInTime: [1, 1],
      packsAtOnce: [6, null],
    },
    packShares: {
      grant: [0, 3],
      growers: [20, 20],
      growersPerPack: [1, 1],
      openedPackDays: [14, 14],
      sowTogether: [0, 0],
    },
    consignments: {
      community: [0, 0, 1, 1],
      place: [0, 0, 1, 1],
      depot: [0, 0, 0, 0],
      group: ['dry', 'inoculant', 'dry', 'inoculant'],
      grants: [[1, 2], [0], [4, 5], [3]],
      kg: LOAD_KG,
      coolLitres: [0, 5.4, 0, 5.4],
      inoculantKg: [0, 2.7, 0, 2.7],
      maxStorageC: [null, 20, null, 20],
      hectares: [7.083333, 8.75, 8.75, 8.75],
      worth: [531, 108, 651, 108],
      earliest: [date(1), date(0), date(1), date(0)],
      latest: [date(6), date(6), date(6), date(6)],
      reachByDay: [],
      bestReach: [1, 0.9, 1, 0.9],
      bestDay: [date(1), date(6), date(1), date(6)],
    },
  },
  delivery: {
    promisePrice: 0,
    loads: {
      consignment: [0, 1, 2, 3],
      grants: [[1, 2], [0], [4, 5], [3]],
      packs: [[17, 21], [27], [21, 21], [27]],
      kg: LOAD_KG,
      coolLitres: [0, 5.4, 0, 5.4],
      inoculantKg: [0, 2.7, 0, 2.7],
      hectares: [7.083333, 8.75, 8.75, 8.75],
    },
    trips: {
      vehicle: JOURNEYS.map(({ vehicle }) => vehicle),
      date: JOURNEYS.map(({ day }) => date(day)),
      trip: [1, 1, 1],
      leaveMinute: JOURNEYS.map(({ leave }) => minutes(leave)),
      latestLeaveMinute: JOURNEYS.map(({ leave }) => minutes(leave)),
      returnMinute: driven.map(({ back }) => minutes(back)),
      iceKg: JOURNEYS.map(({ iceKg }) => iceKg),
      loadKg: [952.1, 2.7, 2.7],
      coolLitres: [0, 5.4, 5.4],
      kilometres: tripKm.map((km) => round(km, 4)),
      meanKineticC: met('meanKineticC'),
      degreeHours30: met('degreeHours30'),
      hoursAbove30: met('hoursAbove30'),
      hoursAbove35: met('hoursAbove35'),
      hoursAbove40: met('hoursAbove40'),
      returnLeg: JOURNEYS.map(({ returnLeg }) => returnLeg),
    },
    stops: {
      trip: stops.map(({ trip }) => trip),
      place: stops.map(({ place }) => place),
      loads: stops.map(({ loads }) => loads),
      arriveMinute: stops.map(({ arrive }) => minutes(arrive)),
      startMinute: stops.map(({ start }) => minutes(start)),
      departMinute: stops.map(({ depart }) => minutes(depart)),
      restMinutes: stops.map(() => 0),
      leg: stops.map((stop) => stop.leg),
      loadKg: stops.map(({ loadKg }) => round(loadKg, 4)),
      packC: heats(({ packC }) => packC, 3),
      packMaxC: heats(({ packMaxC }) => packMaxC, 3),
      hotBandMaxC: heats(({ hotBandMaxC }) => hotBandMaxC, 3),
      log10Loss: heats(({ log10Loss }) => log10Loss, 5),
      hoursAboveStorage: heats(({ hoursAboveStorage }) => hoursAboveStorage, 3),
    },
    legs,
    curves: [],
    unserved: { load: [], reason: [], hectares: [] },
    cost,
  },
  outcomes: {
    crops: {
      seedHa: [8.75, 8.75, 0],
      seedInTimeHa: [8.75, 8.75, 0],
      inoculatedHa: [8.75, 8.75, 0],
      reachedHa: [...reachedMean.map((ha) => round(ha, 6)), 0],
      log10PerSeed: [...given.map((one) => round(one.log10PerSeed, 5)), null],
      storeLog10: [0.01, 0.01, null],
      roadLog10: [lossOf(1), lossOf(3), null],
      communityLog10: [0.4, 0.4, null],
      seedLog10: [0.5, 0.5, null],
      nitrogenKg: [round(kgC1, 4), round(kgC2, 4), 0],
      grainT: [...given.map((one) => round(mean(one.grain), 4)), 0],
    },
    zones: {
      zone: [0, 1],
      communities: [2, 1],
      farmers: [75, 75],
      plannedHa: [15, 7],
      // All of C1 and half of C2 in the west; C3 in the east gets nothing.
      seedKg: [425 + 262.5, 262.5],
      inoculantPacks: [40.5, 13.5],
      shareMet: [round((8.75 + 4.375) / 15, 7), round(4.375 / 7, 7)],
      reachedHa: [round(at(reachedMean, 0) + half(at(reachedMean, 1)), 6), round(half(at(reachedMean, 1)), 6)],
      reachedRange: [zoneRange(at(reachedMean, 0) + half(at(reachedMean, 1))), zoneRange(half(at(reachedMean, 1)))],
      nitrogenKg: [zoneRange(kgC1 + half(kgC2)), zoneRange(half(kgC2))],
      inTimeChance: [0.6, 0.6],
      signedForHa: [0, 0],
      sownHa: [0, 0],
    },
    seasons: {
      year: ONSETS.map((_, m) => 2023 + m),
      reachedHa: sumOf((one) => one.reached).map((ha) => round(ha, 6)),
      noOnsetHa: ONSETS.map(() => 0),
      lateHa: sumOf((one) => one.reached).map((ha) => round(17.5 - ha, 6)),
      hotHa: ONSETS.map(() => 0),
      waitingHa: ONSETS.map(() => 0),
      weakHa: ONSETS.map(() => 0),
      cost: sumOf((one) => one.reached).map((ha) => (ha < 16 ? 'late' : 'little')),
    },
    headline: {
      plannedHa: 22,
      seedHa: 17.5,
      inoculatedHa: 17.5,
      fertilisedHa: 0,
      phosphorusNitrogenKg: spread([0], 0),
      phosphorusGrainT: spread([0], 0),
      reachedHa: spread(
        sumOf((one) => one.reached),
        0.3,
      ),
      nitrogenKg: spread(nitrogen, 0.4),
      programmeNitrogenKg: programme,
      inoculationNitrogenKg: spread(
        nitrogen.map((kg) => kg * 0.05),
        0.9,
      ),
      grainT: spread(
        sumOf((one) => one.grain),
        0.2,
      ),
      inoculationAtMostKg: spread(nitrogen, 0.5),
      netNitrogenKg: spread(
        nitrogen.map((kg) => kg * 0.4),
        0.9,
      ),
      programmeGrainT: spread(
        grain.map((t) => t - OWN_HA * 1.28),
        0.3,
      ),
      inoculationGrainT: spread(
        grain.map((t) => t - 17.5 * 1.28),
        0.9,
      ),
      central: {
        reachedHa: round(mean(sumOf((one) => one.reached)), 6),
        valueHa: round(mean(sumOf((one) => one.value)), 6),
        // Growers of a community over its 10 ha, for each hectare reached.
        farmersReached: round(
          given.reduce((sum, one, i) => sum + (mean(one.reached) * (scenario.communities[i]?.farmers ?? 0)) / 10, 0),
          2,
        ),
        nitrogenKg: round(mean(nitrogen), 4),
        programmeNitrogenKg: round(mean(nitrogen) - OWN_HA * nitrogenOf(1.28), 4),
        inoculationNitrogenKg: round(mean(nitrogen) - 17.5 * nitrogenOf(1.28), 4),
        inoculationAtMostKg: round(
          mean(sumOf((one) => one.nitrogen.map((kg, m) => (at(one.reached, m) > 0 ? kg : 0)))),
          4,
        ),
        // 6.2 % of the dry matter, 0.91 of the grain, is nitrogen; residues 13.68 kg a ha and 9.02 kg a t (IPCC, soybean).
        netNitrogenKg: round(mean(nitrogen) - mean(grain) * 910 * 0.062, 4),
        residueNitrogenKg: round(17.5 * 1350 * (0.008 + 0.19 * 0.008) + mean(grain) * RESIDUE_KG_PER_T, 4),
        earlierNitrogenKg: round(mean(grain) * 76.5, 4),
        grainT: round(mean(grain), 4),
        programmeGrainT: round(mean(grain) - OWN_HA * 1.28, 4),
        inoculationGrainT: round(mean(grain) - 17.5 * 1.28, 4),
        programmeGrainWorth: null,
        inoculationGrainWorth: null,
        phosphorusNitrogenKg: 0,
        phosphorusGrainT: 0,
      },
      cost: {
        inoculant: 54 * 4,
        otherGoods: 38 * 30 + 42,
        kilometres: round(2 * tripKm.reduce((sum, km) => sum + km, 0), 2),
        vehicleDays: 300,
        crews: 30,
        ice: 3,
        training: null,
        testing: null,
      },
      farmers: 150,
      farmersReached: spread(
        sumOf((one) => one.reached).map((ha) => (150 * ha) / 22),
        0.3,
      ),
      womenShare: null,
      costPerHectare: null,
      deliveryPerHectare: null,
      signedForHa: 0,
      sownHa: 0,
      broughtSeedHa: round(17.5 - 1.6666667, 6),
      residualNitrogenKg: { least: 316.6667, most: 633.3333 },
      residualWorth: { least: 475, most: 950 },
      // 54 packs of inoculant at 4, 38 of seed at 30, 42 of sticker at 1.
      goodsCost: 54 * 4 + 38 * 30 + 42,
      deliveryCost: cost,
      programmeGrainWorth: null,
      inoculationGrainWorth: null,
      valueCostRatio: null,
      inoculantValueCostRatio: null,
      communitiesReached: 2,
      communities: 3,
    },
  },
  defaults: [],
  provenance: [],
  problems: [],
};
