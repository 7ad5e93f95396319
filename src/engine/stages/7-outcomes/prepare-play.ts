import { log10 } from '../../numerics/elementary.ts';
import { CROP_FACTS, cropFact } from '../../reference/crops.ts';
import { lotsOutside } from '../../science/depot-store.ts';
import { grainNitrogenKgPerT, residueLine } from '../../science/harvest-nitrogen.ts';
import { earlierNitrogenKgPerT, type NitrogenColumns, nitrogenColumns } from '../../science/nitrogen.ts';
import { phosphorusResponseTPerHa, repeatFactor } from '../../science/yield-response.ts';
import type {
  Allocation,
  Crop,
  Delivery,
  Load,
  LotVerdict,
  Needs,
  Places,
  Scenario,
  SeasonOutlook,
  Stop,
  Trip,
  VehicleDay,
} from '../../vocabulary/index.ts';
import { type DrawShape, drawWidth, nitrogenSpread } from './draw-parameters.ts';
import { gatherHandedGoods, type HandedGoods, listVisits, type Visit } from './handed-goods.ts';
import { type CropLand, divideLand, type LandPortion } from './land-portions.ts';
import { followInoculant, type InoculantWay } from './live-inoculant.ts';
import { weatherOfSeasons } from './season-weather.ts';
import { StoreLosses, type StoreTotals } from './store-losses.ts';
import { type PlayRule, visitInSeasons } from './visits-in-seasons.ts';

/** A plan and the season it is played in. */
export interface PlayParts {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly season: SeasonOutlook;
  readonly needs: Needs;
  readonly allocation: Pick<Allocation, 'grants' | 'shares'> & {
    readonly lots: readonly Pick<LotVerdict, 'countPerG'>[];
  };
  readonly delivery: DrivenLoads;
}

/** What a play and its money need of a delivery: loads, and the trips and stops that bring them. */
export interface DrivenLoads {
  readonly cost: Delivery['cost'];
  readonly loads: readonly Pick<Load, 'grants' | 'packs' | 'inoculantKg'>[];
  readonly vehicleDays: readonly (Pick<VehicleDay, 'vehicle' | 'day'> & {
    readonly trips: readonly (Pick<Trip, 'kilometres' | 'iceKg'> & {
      readonly stops: readonly Pick<Stop, 'site' | 'loads' | 'packMaxC' | 'hotBandMaxC' | 'log10Loss'>[];
    })[];
  })[];
}

/** Land of one crop, community and zone: a row of the needs. */
interface PlayFields {
  readonly shareRow: Int32Array;
  /** Index of the zone; the number of zones stands for outside all of them. */
  readonly zone: Int32Array;
  readonly community: Int32Array;
  readonly crop: Int32Array;
  /** Row of the season's windows. */
  readonly window: Int32Array;
  /** Part of the row of shares that lies in this zone, 0 to 1. */
  readonly part: Float64Array;
  /** Sown from own seed whatever the programme does. */
  readonly ownHa: Float64Array;
  /** The community's farmers per hectare it plans of all crops; nought where they are not counted. */
  readonly farmersPerHa: Float64Array;
  /** Part of the response that is left after earlier inoculation, 0 to 1. */
  readonly repeat: Float64Array;
}

/** Land of a field that gets the same goods on the same day. */
interface PlayParcels {
  readonly field: Int32Array;
  readonly crop: Int32Array;
  readonly hectares: Float64Array;
  /** Visit that hands over its last goods; -1 for own seed alone. */
  readonly visit: Int32Array;
  /** log10 rhizobia per seed if coated on the first planning day; NaN where sown uncoated. */
  readonly log10PerSeed: Float64Array;
  readonly inoculated: Uint8Array;
  /** Visit that hands over its fertiliser; -1 without. */
  readonly bagsVisit: Int32Array;
  /** Grain that its fertiliser adds in the mean, t per ha; nought where the phosphorus or the crop's response is not known. */
  readonly phosphorusT: Float64Array;
  readonly roadLog10: Float64Array;
  readonly depotRow: Int32Array;
  readonly communityRow: Int32Array;
}

/** What is known of each crop planned, in the order of scenario.crops. */
export interface PlayCrops {
  readonly names: readonly Crop[];
  readonly coefficients: NitrogenColumns;
  readonly yieldTPerHa: Float64Array;
  readonly responseT: Float64Array;
  readonly responseSdT: Float64Array;
  readonly delayLossPerDay: Float64Array;
  readonly delayFreeDays: Float64Array;
  /** Spread of the share from the air and of the rest of the method, and the most the share can grow by (see nitrogenSpread). */
  readonly airSd: Float64Array;
  readonly methodSd: Float64Array;
  readonly airMost: Float64Array;
  /** Nitrogen that leaves with grain, kg per t. */
  readonly grainNKgPerT: Float64Array;
  /** Nitrogen in residues, kg per ha sown and per t of grain; NaN where no coefficients are given. */
  readonly residueKgPerHa: Float64Array;
  readonly residueKgPerT: Float64Array;
  /** By the method of 2008, kg per t of grain. */
  readonly earlierKgPerT: Float64Array;
  /** NaN where no price is given. */
  readonly pricePerT: Float64Array;
}

/** A fixed plan made ready to be played against any member of its season and any draw: plain columns, so that a worker can be sent it. */
export interface PreparedPlay {
  readonly members: number;
  readonly zones: number;
  readonly shape: DrawShape;
  readonly planningDays: number;
  /** Length of a draw. */
  readonly drawWidth: number;
  readonly floorLog10: number;
  /** First and last sowing day, offset from planning.from, [member * windows + window]; NaN without onset. */
  readonly firstDay: Float64Array;
  readonly lastDay: Float64Array;
  readonly windows: number;
  readonly crops: PlayCrops;
  readonly fields: PlayFields;
  readonly parcels: PlayParcels;
  readonly visits: readonly Visit[];
  readonly visitVehicle: Int32Array;
  /** What becomes of each visit in each member (see VisitsInSeasons), [member * visits + visit]. */
  readonly visitDay: Float64Array;
  readonly visitOnHold: Uint8Array;
  readonly losses: StoreTotals;
  /** Per row of shares, and everything handed over, for those who add up. */
  readonly land: readonly CropLand[];
  readonly goods: readonly HandedGoods[];
}

/** Columns for `playSeason`; made once, so that a play allocates nothing. */
export function preparePlay(parts: PlayParts, rule: PlayRule = 'as-printed'): PreparedPlay {
  const { scenario, places, season, allocation, delivery } = parts;
  const visits = listVisits(delivery);
  const goods = gatherHandedGoods(scenario, allocation, delivery, visits);
  const goodsOfRow: HandedGoods[][] = Array.from(allocation.shares.community, () => []);
  for (const handed of goods) goodsOfRow[handed.shareRow]?.push(handed);
  const land = goodsOfRow.map((handed, row) => divideLand(allocation.shares, row, handed));
  const weather = weatherOfSeasons(scenario, season);
  const inSeasons = visitInSeasons(scenario, places, season, visits, weather, rule);
  const losses = new StoreLosses(season, weather);
  const fields = layFields(parts, land);
  const parcels = layParcels(parts, land, fields, losses);
  const shape: DrawShape = {
    crops: scenario.crops.length,
    communities: scenario.communities.length,
    vehicles: scenario.vehicles.length,
  };
  return {
    members: season.members.length,
    zones: scenario.zones.length,
    shape,
    planningDays: season.planningDays,
    drawWidth: drawWidth(shape),
    floorLog10: log10(scenario.policy.cellsPerSeedFloor),
    firstDay: memberDays(season, ({ firstDay }) => firstDay),
    lastDay: memberDays(season, ({ lastDay }) => lastDay),
    windows: season.windows.length,
    crops: cropColumns(scenario),
    fields,
    parcels,
    visits,
    visitVehicle: Int32Array.from(visits, ({ vehicle }) => vehicle),
    visitDay: inSeasons.day,
    visitOnHold: inSeasons.onHold,
    losses: losses.totalsByRow(),
    land,
    goods,
  };
}

function layFields({ scenario, needs, allocation }: PlayParts, land: readonly CropLand[]): PlayFields {
  const { shares } = allocation;
  const shareRows = new Map(Array.from(shares.community, (c, row) => [`${c} ${shares.crop[row]}`, row]));
  const shareRow = needs.community.map((c, row) => shareRows.get(`${c} ${needs.crop[row]}`) ?? -1);
  const plannedHa = new Float64Array(land.length);
  shareRow.forEach((share, row) => {
    if (share >= 0) plannedHa[share] = (plannedHa[share] as number) + (needs.plannedHa[row] as number);
  });
  const zone = needs.zone.map((z) => (z < 0 ? scenario.zones.length : z));
  const part = needs.plannedHa.map((ha, row) => ha / (plannedHa[shareRow[row] as number] ?? Number.NaN));
  return {
    shareRow,
    zone,
    community: needs.community,
    crop: needs.crop,
    window: needs.crop.map((crop, row) => (zone[row] as number) * scenario.crops.length + crop),
    part,
    ownHa: part.map((share, row) => share * (land[shareRow[row] as number]?.ownHa ?? 0)),
    farmersPerHa: spreadFarmers(scenario, needs),
    repeat: Float64Array.from(needs.community, (c) => {
      const year = scenario.communities[c]?.lastInoculatedYear ?? null;
      return repeatFactor(year === null ? null : scenario.seasonYear - year);
    }),
  };
}

/** Farmers of each field's community over the hectares that the community plans. */
function spreadFarmers({ communities }: Scenario, { community, plannedHa }: Needs): Float64Array {
  const planned = new Float64Array(communities.length);
  community.forEach((c, row) => {
    planned[c] = (planned[c] as number) + (plannedHa[row] as number);
  });
  return Float64Array.from(community, (c) => {
    const hectares = planned[c] as number;
    return hectares > 0 ? (communities[c]?.farmers ?? 0) / hectares : 0;
  });
}

function layParcels(parts: PlayParts, land: readonly CropLand[], fields: PlayFields, losses: StoreLosses): PlayParcels {
  const way: InoculantWay = { ...parts, verdicts: parts.allocation.lots, losses, outside: lotsOutside(parts.scenario) };
  const cropName = (crop: number): Crop => parts.scenario.crops[crop] as Crop;
  const rows = Array.from(fields.shareRow).flatMap((shareRow, field) =>
    (land[shareRow]?.portions ?? []).map((portion: LandPortion) => {
      const [community, crop] = [fields.community[field] as number, fields.crop[field] as number];
      const live =
        portion.inoculant &&
        followInoculant(way, portion.inoculant, community, cropName(crop), parts.needs.seedsPerKg[crop] as number);
      const { bags, visit } = portion;
      const phosphorusT = bags ? gainByBags(parts.scenario, bags.lot, cropName(crop)) : 0;
      const hectares = portion.hectares * (fields.part[field] as number);
      return { field, hectares, visit, live, bagsVisit: bags?.visit ?? -1, phosphorusT };
    }),
  );
  return {
    field: Int32Array.from(rows, ({ field }) => field),
    crop: Int32Array.from(rows, ({ field }) => fields.crop[field] as number),
    hectares: Float64Array.from(rows, ({ hectares }) => hectares),
    visit: Int32Array.from(rows, ({ visit }) => visit),
    log10PerSeed: Float64Array.from(rows, ({ live }) => live?.log10PerSeed ?? Number.NaN),
    inoculated: Uint8Array.from(rows, ({ live }) => (live ? 1 : 0)),
    bagsVisit: Int32Array.from(rows, ({ bagsVisit }) => bagsVisit),
    phosphorusT: Float64Array.from(rows, ({ phosphorusT }) => phosphorusT),
    roadLog10: Float64Array.from(rows, ({ live }) => live?.roadLog10 ?? 0),
    depotRow: Int32Array.from(rows, ({ live }) => live?.depotRow ?? -1),
    communityRow: Int32Array.from(rows, ({ live }) => live?.communityRow ?? -1),
  };
}

/** Grain that a lot of fertiliser adds at its rate, t per ha; nought where its phosphorus is not stated. */
function gainByBags({ lots, products }: Scenario, lot: number, crop: Crop): number {
  const product = products.find(({ id }) => id === lots[lot]?.productId);
  const { rateKgPerHa = null, phosphorusPercent = null } = product ?? {};
  if (rateKgPerHa === null || phosphorusPercent === null) return 0;
  return phosphorusResponseTPerHa(crop, (rateKgPerHa * phosphorusPercent) / 100);
}

/** Yields: the programme's own, else the reference. Responses published as a fraction are taken of that yield. */
function cropColumns({ crops, yieldsTPerHa, assumptions, prices }: Scenario): PlayCrops {
  const yieldTPerHa = Float64Array.from(
    crops,
    (crop) => yieldsTPerHa[crop] ?? cropFact(crop, 'yieldTPerHa', assumptions).value,
  );
  const column = (of: (crop: Crop) => number) => Float64Array.from(crops, of);
  const response = (crop: Crop, index: number, what: 'mean' | 'sd'): number => {
    const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
    if (responseTPerHa) return responseTPerHa[what].value;
    return (responseFraction?.[what].value ?? 0) * (yieldTPerHa[index] as number);
  };
  return {
    names: crops,
    coefficients: nitrogenColumns(crops),
    yieldTPerHa,
    responseT: Float64Array.from(crops, (crop, i) => response(crop, i, 'mean')),
    responseSdT: Float64Array.from(crops, (crop, i) => response(crop, i, 'sd')),
    delayLossPerDay: column((crop) => cropFact(crop, 'delayLossPerDay', assumptions).value),
    delayFreeDays: column((crop) => CROP_FACTS[crop].delayFreeDays),
    airSd: column((crop) => nitrogenSpread(crop).air),
    methodSd: column((crop) => nitrogenSpread(crop).method),
    airMost: column((crop) => nitrogenSpread(crop).most),
    grainNKgPerT: column(grainNitrogenKgPerT),
    residueKgPerHa: column((crop) => residueLine(crop)?.perHa ?? Number.NaN),
    residueKgPerT: column((crop) => residueLine(crop)?.perT ?? Number.NaN),
    earlierKgPerT: column(earlierNitrogenKgPerT),
    pricePerT: column((crop) => prices.grainPerT[crop] ?? Number.NaN),
  };
}

function memberDays(
  { members, windows, firstDay }: SeasonOutlook,
  daysOf: (window: SeasonOutlook['windows'][number]) => Float64Array,
): Float64Array {
  const days = new Float64Array(members.length * windows.length);
  windows.forEach((window, w) => {
    const column = daysOf(window);
    for (let m = 0; m < members.length; m++) days[m * windows.length + w] = (column[m] as number) - firstDay;
  });
  return days;
}
