import { log10 } from '../../numerics/elementary.ts';
import { CROP_FACTS, cropFact } from '../../reference/crops.ts';
import { lotsOutside } from '../../science/depot-store.ts';
import type { Allocation, Crop, Delivery, Needs, Places, Scenario, SeasonOutlook } from '../../vocabulary/index.ts';
import { DRAW } from './draw-parameters.ts';
import { gatherHandedGoods, type HandedGoods } from './handed-goods.ts';
import { type CropLand, divideLand, type LandPortion } from './land-portions.ts';
import { followInoculant, type InoculantWay } from './live-inoculant.ts';
import { StoreLosses } from './store-losses.ts';

/** A plan and the season it is played in. */
export interface PlayParts {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly season: SeasonOutlook;
  readonly needs: Needs;
  readonly allocation: Allocation;
  readonly delivery: Delivery;
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
}

/** Land of a field that gets the same goods on the same day. */
interface PlayParcels {
  readonly field: Int32Array;
  readonly hectares: Float64Array;
  readonly day: Float64Array;
  /** log10 rhizobia per seed if coated on the first planning day; NaN where sown uncoated. */
  readonly log10PerSeed: Float64Array;
  readonly inoculated: Uint8Array;
  readonly storeLog10: Float64Array;
  readonly roadLog10: Float64Array;
  readonly communityRow: Int32Array;
}

/** What is known of each crop planned, in the order of scenario.crops. */
export interface PlayCrops {
  readonly names: readonly Crop[];
  readonly yieldTPerHa: Float64Array;
  readonly responseT: Float64Array;
  readonly responseSdT: Float64Array;
  readonly delayLossPerDay: Float64Array;
  readonly delayFreeDays: Float64Array;
}

/** A fixed plan made ready to be played against any member of its season and any draw of the parameters. */
export interface PreparedPlay {
  readonly members: number;
  readonly communities: number;
  readonly zones: number;
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
  readonly losses: StoreLosses;
  /** Per row of shares, and everything handed over, for those who add up. */
  readonly land: readonly CropLand[];
  readonly goods: readonly HandedGoods[];
}

/** Columns for `playSeason`; made once, so that a play allocates nothing. */
export function preparePlay(parts: PlayParts): PreparedPlay {
  const { scenario, season, allocation, delivery } = parts;
  const goods = gatherHandedGoods(scenario, allocation, delivery);
  const goodsOfRow: HandedGoods[][] = Array.from(allocation.shares.community, () => []);
  for (const handed of goods) goodsOfRow[handed.shareRow]?.push(handed);
  const land = goodsOfRow.map((handed, row) => divideLand(allocation.shares, row, handed));
  const losses = new StoreLosses(season);
  const fields = layFields(parts, land);
  return {
    members: season.members.length,
    communities: scenario.communities.length,
    zones: scenario.zones.length,
    drawWidth: DRAW.crops + scenario.crops.length + scenario.communities.length,
    floorLog10: log10(scenario.policy.cellsPerSeedFloor),
    firstDay: memberDays(season, ({ firstDay }) => firstDay),
    lastDay: memberDays(season, ({ lastDay }) => lastDay),
    windows: season.windows.length,
    crops: cropColumns(scenario),
    fields,
    parcels: layParcels(parts, land, fields, losses),
    losses,
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
  const way: InoculantWay = { ...parts, losses, outside: lotsOutside(parts.scenario) };
  const cropName = (crop: number): Crop => parts.scenario.crops[crop] as Crop;
  const rows = Array.from(fields.shareRow).flatMap((shareRow, field) =>
    (land[shareRow]?.portions ?? []).map((portion: LandPortion) => {
      const [community, crop] = [fields.community[field] as number, fields.crop[field] as number];
      const live =
        portion.inoculant &&
        followInoculant(way, portion.inoculant, community, cropName(crop), parts.needs.seedsPerKg[crop] as number);
      return { field, hectares: portion.hectares * (fields.part[field] as number), day: portion.day, live };
    }),
  );
  return {
    field: Int32Array.from(rows, ({ field }) => field),
    hectares: Float64Array.from(rows, ({ hectares }) => hectares),
    day: Float64Array.from(rows, ({ day }) => day),
    log10PerSeed: Float64Array.from(rows, ({ live }) => live?.log10PerSeed ?? Number.NaN),
    inoculated: Uint8Array.from(rows, ({ live }) => (live ? 1 : 0)),
    storeLog10: Float64Array.from(rows, ({ live }) => live?.storeLog10 ?? 0),
    roadLog10: Float64Array.from(rows, ({ live }) => live?.roadLog10 ?? 0),
    communityRow: Int32Array.from(rows, ({ live }) => live?.communityRow ?? -1),
  };
}

/** Yields: the programme's own, else the reference. Responses published as a fraction are taken of that yield. */
function cropColumns({ crops, yieldsTPerHa, assumptions }: Scenario): PlayCrops {
  const yieldTPerHa = Float64Array.from(
    crops,
    (crop) => yieldsTPerHa[crop] ?? cropFact(crop, 'yieldTPerHa', assumptions).value,
  );
  const response = (crop: Crop, index: number, what: 'mean' | 'sd'): number => {
    const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
    if (responseTPerHa) return responseTPerHa[what].value;
    return (responseFraction?.[what].value ?? 0) * (yieldTPerHa[index] as number);
  };
  return {
    names: crops,
    yieldTPerHa,
    responseT: Float64Array.from(crops, (crop, i) => response(crop, i, 'mean')),
    responseSdT: Float64Array.from(crops, (crop, i) => response(crop, i, 'sd')),
    delayLossPerDay: Float64Array.from(crops, (crop) => cropFact(crop, 'delayLossPerDay', assumptions).value),
    delayFreeDays: Float64Array.from(crops, (crop) => CROP_FACTS[crop].delayFreeDays),
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
