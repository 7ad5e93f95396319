import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Position } from '../../vocabulary/places.ts';
import type { Problem } from '../../vocabulary/problems.ts';
import type { ScenarioPart, ScenarioRecords } from '../../vocabulary/records.ts';
import type { Origin, Scenario } from '../../vocabulary/scenario.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import { applyReadings } from './apply-readings.ts';
import { indexById, type Order, placeMiddle } from './canonical-order.ts';
import { chooseClock } from './choose-clock.ts';
import { compareHandovers } from './compare-handovers.ts';
import { completeYields } from './complete-yields.ts';
import { enterRain } from './enter-rain.ts';
import { IntakeReport } from './intake-report.ts';
import { noteRemoteDepots } from './note-remote-depots.ts';
import { reachToday } from './reach-today.ts';
import { communityOrder, readCommunities, setUnknownZonesAside } from './read-communities.ts';
import { cropWindowOrder, readCropWindows } from './read-crop-windows.ts';
import { readDecisions } from './read-decisions.ts';
import { DEPOT_ORDER, readDepots } from './read-depots.ts';
import { readDocument, type ScenarioDocument } from './read-document.ts';
import { collectOnce, handoverPointOrder, readHandoverPoints } from './read-handover-points.ts';
import { handoverOrder, readHandovers } from './read-handovers.ts';
import { lotOrder, readLots } from './read-lots.ts';
import { PRODUCT_ORDER, readProducts } from './read-products.ts';
import { readReadings } from './read-readings.ts';
import { ROAD_ORDER, readRoads } from './read-roads.ts';
import { countOut, readVehicles, vehicleOrder } from './read-vehicles.ts';
import { readWeather, STATION_ORDER } from './read-weather.ts';
import { readZones, ZONE_ORDER } from './read-zones.ts';
import { reportEmptyParts, reportFaults } from './report-faults.ts';
import type { KeptRow } from './row-reader.ts';
import { locateDistrict, setSwappedAside } from './set-swapped-aside.ts';

export interface ScenarioReading {
  /** Null where a problem of weight `blocks` was met. */
  readonly scenario: Scenario | null;
  readonly decisions: Decisions;
  readonly problems: readonly Problem[];
}

/**
 * Gives records their meaning: a scenario whose every entry is valid and whose order does not depend on the order of file
 * rows, with the defaults it took, and a coded problem for all that was not used as sent. Files are read in the order in
 * which they refer to one another, and to the end even where a plan is already out of the question, so that everything
 * wrong is said at once.
 */
export function readScenario(records: ScenarioRecords): ScenarioReading {
  const report = new IntakeReport();
  reportFaults(report, records);
  const sent = readDocument(report, records.document);
  const stated = reachToday(report, sent, records);
  const places = readPlaces(report, records, stated);
  const supply = readSupply(report, records, stated, places);
  const decisions = readDecisions(report, records, {
    communities: places.communityIndex,
    lots: new Set(supply.lots.map((lot) => lot.id)),
    vehicles: new Set(supply.vehicles.map((vehicle) => vehicle.id)),
    stations: new Set(places.weather.map((station) => station.id)),
    asOf: stated.asOf,
  });
  const weather = enterRain(places.weather, decisions.decisions, sent.asOf, stated.asOf);
  const scenario = assembleScenario(report, records, stated, { ...places, weather }, supply);
  return { scenario: report.blocks ? null : scenario, decisions, problems: report.problems() };
}

type PlacesRead = ReturnType<typeof readPlaces>;
type SupplyRead = ReturnType<typeof readSupply>;

/** Communities first: they tell where the district lies. */
function readPlaces(report: IntakeReport, records: ScenarioRecords, stated: ScenarioDocument) {
  const { crops, communities: sent } = readCommunities(report, records.communities);
  const district = locateDistrict(sent.map(({ value }) => placeMiddle(value.geometry)));
  const near = <T>(rows: readonly KeptRow<T>[], place: (value: T) => Position) =>
    setSwappedAside(report, district, rows, place);

  const zoneRows = near(readZones(report, records.zones), (zone) => placeMiddle(zone.geometry));
  const zones = arrange(zoneRows, ZONE_ORDER);
  const zoneIndex = indexById(zones);
  const inDistrict = near(sent, (community) => placeMiddle(community.geometry));
  const communities = arrange(setUnknownZonesAside(report, inDistrict, zoneIndex), communityOrder(zoneIndex));
  const communityIndex = indexById(communities);
  const points = near(readHandoverPoints(report, records.handoverPoints, communityIndex), (point) => point.position);
  const depots = near(readDepots(report, records.depots), (depot) => depot.position);
  const roads = near(readRoads(report, records.roads), (road) => road.positions[0] as Position);
  const lastDay = dayNumber(stated.asOf + stated.forecastHorizonDays);
  const weather = near(readWeather(report, records.weather, lastDay), (station) => station.position);
  noteRemoteDepots(report, depots, communities);
  const origins = [
    ...originsOf('zones', zoneRows),
    ...originsOf('communities', inDistrict),
    ...originsOf('depots', depots),
  ];
  return {
    origins,
    crops,
    zones,
    zoneIndex,
    communities,
    communityIndex,
    handoverPoints: collectOnce(report, points, handoverPointOrder(communityIndex)),
    depots: arrange(depots, DEPOT_ORDER),
    roads: arrange(roads, ROAD_ORDER),
    weather: arrange(weather, STATION_ORDER),
  };
}

function readSupply(
  report: IntakeReport,
  records: ScenarioRecords,
  stated: ScenarioDocument,
  { zoneIndex, communityIndex, depots }: PlacesRead,
) {
  const { asOf, seasonYear } = stated;
  const depotIndex = indexById(depots);
  const productRows = readProducts(report, records.products);
  const products = arrange(productRows, PRODUCT_ORDER);
  const productIndex = indexById(products);
  const stock = readLots(report, records.lots, { products: productIndex, depots: depotIndex, asOf });
  const lots = arrange(stock, lotOrder(depotIndex, productIndex));
  const lotIndex = indexById(lots);
  const fleet = readVehicles(report, records.vehicles, { depots: depotIndex, perDiem: stated.perDiem });
  const signed = readHandovers(report, records.handovers, { communities: communityIndex, lots: lotIndex, asOf });
  const happened = compareHandovers(report, signed, lots);
  const windows = readCropWindows(report, records.cropWindows, {
    zones: zoneIndex,
    seasons: stated.seasons.map((season) => season.name),
    seasonYear,
  });
  return {
    origins: [...originsOf('products', productRows), ...originsOf('lots', stock)],
    products,
    lots,
    vehicles: countOut(report, fleet, vehicleOrder(depotIndex)),
    handovers: arrange(happened, handoverOrder(communityIndex, lotIndex)),
    cropWindows: arrange(windows, cropWindowOrder(zoneIndex)),
  };
}

const arrange = <T>(rows: readonly KeptRow<T>[], order: Order<T>): readonly T[] =>
  rows.map(({ value }) => value).sort(order);

const originsOf = (part: ScenarioPart, rows: readonly KeptRow<{ readonly id: string }>[]): readonly Origin[] =>
  rows.map(({ file, row, value: { id } }) => ({ part, id, file, row }));

function assembleScenario(
  report: IntakeReport,
  records: ScenarioRecords,
  { ownYieldsTPerHa, perDiem, timeZone, ...stated }: ScenarioDocument,
  { zoneIndex, communityIndex, ...places }: PlacesRead,
  supply: SupplyRead,
): Scenario {
  reportEmptyParts(report, records, { ...places, ...supply });
  const { crops, communities } = places;
  const clock = chooseClock(report, records, timeZone, communities);
  const { lots, products } = supply;
  const ground = { lots, products, asOf: stated.asOf, utcOffsetMinutes: clock.utcOffsetMinutes };
  const readings = readReadings(report, records.readings, ground);
  return {
    ...stated,
    ...clock,
    yieldsTPerHa: completeYields(report, ownYieldsTPerHa, crops),
    ...places,
    ...supply,
    lots: applyReadings(report, lots, products, readings),
    readings,
    origins: [...places.origins, ...supply.origins],
    defaults: report.defaults(),
    sha256: records.sha256,
  };
}
