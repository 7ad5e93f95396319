import type { Crop } from './crops.ts';
import type { MultiPolygon, Position, RoadClass } from './places.ts';
import type { Problem } from './problems.ts';
import type { FigureProvenance, Status } from './provenance.ts';
import type { LotReason, SeasonCost, ShortfallReason, UnreachableReason, UnservedReason } from './reasons.ts';
import type { Store } from './scenario.ts';
import type { DayNumber } from './units.ts';

/** What every stage gives back beside its result. */
export interface StageResult<T> {
  readonly result: T;
  readonly problems: readonly Problem[];
  readonly provenance: readonly FigureProvenance[];
}

// ---------------------------------------------------------------------------------------------------- 2-places

/** Parts of communities in zones. Row k: part of community[k] in zone[k]; sorted by community, then zone. */
export interface ZoneShares {
  readonly community: Int32Array;
  /** Index of the zone, -1 outside all zones. */
  readonly zone: Int32Array;
  /** Fraction of the community's area, 0 to 1; the rows of one community sum to 1. */
  readonly share: Float64Array;
}

/** Where vehicles go: the depots first (same order as scenario.depots), then the hand-over places. */
export interface Site {
  readonly kind: 'depot' | 'handover';
  /** Index among depots or among handover places. */
  readonly index: number;
  readonly position: Position;
}

export interface HandoverPlace {
  /** Null where the place was derived from the community's own geometry (status assumed). */
  readonly pointId: string | null;
  readonly name: string;
  readonly position: Position;
  readonly status: Status;
  /** Communities (indexes) that collect here. */
  readonly communities: readonly number[];
  readonly opensMinute: number | null;
  readonly closesMinute: number | null;
  readonly store: Store;
}

/** Vehicles that may use the same roads at the same speeds. */
export interface VehicleClass {
  readonly roadsAllowed: readonly RoadClass[];
  readonly motorcycle: boolean;
  /** Indexes into scenario.vehicles. */
  readonly vehicles: readonly number[];
}

/**
 * Travel between sites for one vehicle class, road state and set of closed roads. Sparse rows: legs of origin o stand at
 * offsets[o] to offsets[o+1], destinations ascending. A pair that is absent cannot be driven, or is farther than the
 * nearest legs kept.
 */
export interface TravelTable {
  readonly offsets: Int32Array;
  readonly destinations: Int32Array;
  readonly minutes: Float64Array;
  readonly kilometres: Float64Array;
}

/** The compressed road graph: junctions and sites joined by arcs that follow road lines. Kept to trace the path of a leg. */
export interface RoadGraph {
  readonly nodeCount: number;
  /** Arcs of node n: arcOffsets[n] to arcOffsets[n+1]. */
  readonly arcOffsets: Int32Array;
  readonly arcTo: Int32Array;
  readonly arcKm: Float64Array;
  /** Index into `arcPieces` of the road pieces an arc follows. */
  readonly arcPieces: readonly (readonly RoadPiece[])[];
  /** Index of the site's node per vehicle class and site: siteNode[class][site], -1 where it joins no road. */
  readonly siteNode: readonly Int32Array[];
  /** Kilometres from the site to its road, per class and site. */
  readonly siteAccessKm: readonly Float64Array[];
}

/**
 * Part of a road line: from one place along it to another, counted in vertices (2.5 is half way between the vertices 2
 * and 3). `from > to` runs against the order of the positions.
 */
export interface RoadPiece {
  readonly road: number;
  readonly from: number;
  readonly to: number;
}

export interface TravelTables {
  readonly classes: readonly VehicleClass[];
  /** Class of each vehicle. */
  readonly vehicleClass: Int32Array;
  /** Sets of roads closed at a time; set 0 comes first in time. Each lists road indexes, ascending. */
  readonly closureSets: readonly (readonly number[])[];
  /** Closure set of each planning day. */
  readonly dayClosureSet: Int32Array;
  /** tables[class][closureSet][roadState]; road states as in ROAD_STATES. */
  readonly tables: readonly (readonly (readonly TravelTable[])[])[];
  readonly graph: RoadGraph;
}

export interface Unreachable {
  readonly place: number;
  readonly vehicleClass: number;
  readonly reason: UnreachableReason;
}

export interface Places {
  /** Repaired polygons per community, null for a point. */
  readonly communityPolygons: readonly (MultiPolygon | null)[];
  readonly zonePolygons: readonly (MultiPolygon | null)[];
  /** Hectares on the ellipsoid, equal-area (EPSG:6933); NaN for points. */
  readonly communityAreaHa: Float64Array;
  readonly zoneAreaHa: Float64Array;
  readonly shares: ZoneShares;
  readonly handoverPlaces: readonly HandoverPlace[];
  /** Hand-over place of each community. */
  readonly communityPlace: Int32Array;
  readonly sites: readonly Site[];
  readonly travel: TravelTables;
  /** One row per place and vehicle class that no depot of that class reaches and returns from. */
  readonly unreachable: readonly Unreachable[];
}

/** A leg that a plan drives, with the road pieces it follows: the certificate that the checker walks. */
export interface LegPath {
  readonly fromSite: number;
  readonly toSite: number;
  readonly vehicleClass: number;
  readonly closureSet: number;
  readonly roadState: number;
  readonly minutes: number;
  readonly kilometres: number;
  readonly pieces: readonly RoadPiece[];
}

// ---------------------------------------------------------------------------------------------------- 3-season

/** One past season (or this one) as the planning season could go: dates already moved to the planning season's days. */
export interface SeasonMember {
  readonly year: number;
  /** Onset day per weather place; NaN where no onset was found in that season. */
  readonly onset: Float64Array;
}

export type OnsetStatus = 'confirmed' | 'unconfirmed' | 'expected' | 'no data';

export interface ZoneOnset {
  /** `confirmed` or `unconfirmed` by this season's own record; `expected` from past seasons. */
  readonly status: OnsetStatus;
  readonly p20: number;
  readonly p50: number;
  readonly p80: number;
  /** Share of past seasons whose first candidate was a false start; NaN without past seasons. */
  readonly falseStartShare: number;
  readonly pastSeasons: number;
}

/** When a zone sows a crop: first and last day per member, NaN where that season had no onset. */
export interface SowingWindow {
  readonly zone: number;
  readonly crop: Crop;
  readonly anchor: 'onset' | 'cessation' | 'date';
  readonly firstOffsetDays: number;
  readonly lastOffsetDays: number;
  readonly status: Status;
  readonly firstDay: Float64Array;
  readonly lastDay: Float64Array;
  /** Chance of having begun to sow by each outlook day (share of members whose first day has come). */
  readonly sownChance: Float64Array;
}

/**
 * Days run from `firstDay` (planning.from) for `outlookDays` days, the first `planningDays` of which may be driven.
 * A weather place is a station.
 */
export interface SeasonOutlook {
  readonly seasonName: string;
  readonly onsetDefinition: string;
  readonly firstDay: DayNumber;
  readonly planningDays: number;
  readonly outlookDays: number;
  /** Index into scenario.weather, per weather place; a single -1 where the scenario has no station. */
  readonly stations: Int32Array;
  /** Weather place of each zone, and the distance to it; the extra last entry serves communities outside all zones. */
  readonly zoneStation: Int32Array;
  readonly zoneStationKm: Float64Array;
  /** Weather place of each site (depots, then hand-over places). */
  readonly siteStation: Int32Array;
  readonly members: readonly SeasonMember[];
  /** Per zone; the extra last entry serves communities outside all zones. */
  readonly onsets: readonly ZoneOnset[];
  /** Every zone (and the extra one) for every planned crop: windows[zone * crops + crop]. */
  readonly windows: readonly SowingWindow[];
  /** Expected daily extremes, [weatherPlace * outlookDays + day]: observed, forecast, else the median of past seasons. */
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  /** Where a day's extremes come from. 0 observed, 1 forecast, 2 past seasons, 3 assumed. */
  readonly airBasis: Int8Array;
  /** Shade air at each quarter hour of local clock time, [(weatherPlace * planningDays + day) * 96 + quarter]. */
  readonly airC: Float32Array;
  /** Sun load 0 to 1 (1000 W/m2 = 1) at each quarter hour, same layout. */
  readonly sunLoad: Float32Array;
  /** Local clock minutes of sunrise and sunset, [weatherPlace * planningDays + day]. */
  readonly sunriseMinute: Float64Array;
  readonly sunsetMinute: Float64Array;
  /** Road state of each planning day, index into ROAD_STATES, and the chance of each state, [day * 3 + state]. */
  readonly roadState: Int8Array;
  readonly roadStateChance: Float64Array;
  /** 1 where vehicles may run: a workday, no holiday. */
  readonly workday: Uint8Array;
}

// ---------------------------------------------------------------------------------------------------- 4-needs

/** One row per zone, community and crop with planned hectares above nought; sorted by community, zone, crop. */
export interface Needs {
  readonly zone: Int32Array;
  readonly community: Int32Array;
  /** Index into scenario.crops. */
  readonly crop: Int32Array;
  readonly plannedHa: Float64Array;
  /** Seed to be sown, kg at reference germination, the growers' own included. */
  readonly seedKg: Float64Array;
  readonly ownSeedKg: Float64Array;
  /** Seed the programme must bring: seedKg less ownSeedKg, never below nought. */
  readonly programmeSeedKg: Float64Array;
  /** By the dose of the reference product, for all seed sown, the growers' own included. */
  readonly inoculantG: Float64Array;
  /** Index into scenario.products of the reference inoculant; -1 where no compatible product exists. */
  readonly product: Int32Array;
  /** Fractions allowed. */
  readonly packsNeeded: Float64Array;
  readonly stickerPacks: Float64Array;
  readonly waterL: Float64Array;
  readonly fertiliserKg: Float64Array;
  /** Per crop, seeds in one kilogram and seed rate used where the community gives none. */
  readonly seedsPerKg: Float64Array;
}

// ---------------------------------------------------------------------------------------------------- 5-allocation

export type Commodity = 'seed' | 'inoculant';

export interface LotVerdict {
  readonly lot: number;
  /** Empty: the lot may be given. */
  readonly reasons: readonly LotReason[];
  readonly packsReserved: number;
  readonly packsOffered: number;
  /** Chance that the last sowing it serves comes before it expires; NaN where that does not apply. */
  readonly chanceSownBeforeExpiry: number;
}

/** Whole packs of one lot for one community and crop; columns, sorted by community, crop, lot. */
export interface Grants {
  readonly community: Int32Array;
  readonly crop: Int32Array;
  readonly lot: Int32Array;
  readonly packs: Int32Array;
  /** Pack contents in kg. */
  readonly kg: Float64Array;
  /** Seed these packs are (seed) or coat (inoculant), kg, not more than asked for. */
  readonly servesSeedKg: Float64Array;
}

/** What a community gets of one crop; columns, one row per community and crop with planned hectares above nought. */
export interface Shares {
  readonly community: Int32Array;
  readonly crop: Int32Array;
  readonly plannedHa: Float64Array;
  readonly seedNeedKg: Float64Array;
  readonly ownSeedKg: Float64Array;
  readonly seedGivenKg: Float64Array;
  /** Seed to coat: seed given plus own seed, at most seedNeedKg. */
  readonly inoculantNeedSeedKg: Float64Array;
  readonly inoculantGivenSeedKg: Float64Array;
  /** (seed given + own seed) / need, 0 to 1. */
  readonly seedShare: Float64Array;
  /** Seed coated / all seed the planned land asks for, 0 to 1. */
  readonly inoculantShare: Float64Array;
}

/**
 * Proof that no allocation from this pool of stock gives every community a larger least share: prices on communities
 * and lots with Sum(need * communityPrice) + capPrice >= 1, communityPrice <= lotPrice wherever the lot may go to the
 * community, so the least share is at most Sum(offered * lotPrice) + Sum(kept * communityPrice) + capPrice (linear
 * programming duality). In a second round the packs already promised are kept, and only the rest is offered.
 */
export interface FairShareProof {
  readonly commodity: Commodity;
  readonly crops: readonly number[];
  /** Rows of `Shares` in the pool that some lot may reach, their need in kg of seed, and their prices. */
  readonly shareRows: readonly number[];
  readonly needKg: readonly number[];
  /** What each row was promised in the first round, kg of seed. */
  readonly keptKg: readonly number[];
  readonly communityPrices: readonly number[];
  readonly lots: readonly number[];
  readonly offeredKg: readonly number[];
  readonly lotPrices: readonly number[];
  readonly capPrice: number;
  /** Least share before packs are made whole, and the bound that the prices prove. */
  readonly leastShare: number;
  readonly bound: number;
  /** Largest pack in the pool, kg of seed: how far rounding to whole packs may fall short. */
  readonly roundingKg: number;
}

export interface Shortfall {
  readonly shareRow: number;
  readonly commodity: Commodity;
  readonly shortKg: number;
  readonly hectares: number;
  readonly reason: ShortfallReason;
  /** Product whose stock binds, -1 where none. */
  readonly product: number;
}

/** Something that would lift shortfalls, best value first. */
export interface Remedy {
  readonly kind: 'more-packs' | 'release-lot' | 'replace-lot' | 'lower-reserve';
  readonly product: number;
  readonly lot: number;
  readonly packs: number;
  readonly hectares: number;
  readonly communities: number;
  readonly cost: number | null;
}

/** How the packs of one lot are shared out inside a community: which growers use which packs. */
export interface PackShare {
  readonly grant: number;
  /** Growers that share, in equal parts; NaN where the number of growers is not known. */
  readonly growers: number;
  /** Whole packs opened and emptied within one day's batch, and growers to each pack. */
  readonly growersPerPack: number;
  /** An opened pack must be used within this many days (label, else reference). */
  readonly openedPackDays: number;
  readonly sowTogether: boolean;
}

/** What moves: goods of one kind for one hand-over place from one depot. */
export interface Consignment {
  readonly community: number;
  readonly place: number;
  readonly depot: number;
  /** `apart`: seed and other dry goods, or inoculant. `both`: carried together. */
  readonly group: 'dry' | 'inoculant' | 'both';
  /** Rows of Grants. */
  readonly grants: readonly number[];
  readonly kg: number;
  readonly coolLitres: number;
  /** Kilograms of inoculant in it, the thermal mass in the box. */
  readonly inoculantKg: number;
  /** Lowest storage limit among its packs, °C; null where no label states one. */
  readonly maxStorageC: number | null;
  /** Hectares it serves: sown with its seed, or inoculated with its packs. */
  readonly hectares: number;
  /** What its packs cost, in the scenario's currency; null where a price is missing. */
  readonly worth: number | null;
  /** First and last planning day (offset from planning.from) on which handing it over is of use. */
  readonly earliest: number;
  readonly latest: number;
  readonly reach: ReachCurve;
}

/**
 * Share of its hectares' value still had, by hand-over day and log10 loss on the road: value[day * lossBreaks.length + k]
 * at loss lossBreaks[k]; straight lines between, never rising; flat beyond the last break. Days count from planning.from.
 */
export interface ReachCurve {
  readonly lossBreaks: Float64Array;
  readonly value: Float64Array;
  /** Chance of being in time for the sowing window, by hand-over day. */
  readonly inTime: Float64Array;
}

export interface Allocation {
  /** 1, or 2 where stock freed by what could not be delivered was given again. */
  readonly round: number;
  readonly lots: readonly LotVerdict[];
  readonly grants: Grants;
  readonly shares: Shares;
  readonly proofs: readonly FairShareProof[];
  readonly shortfalls: readonly Shortfall[];
  readonly remedies: readonly Remedy[];
  readonly packShares: readonly PackShare[];
  readonly consignments: readonly Consignment[];
}

// ---------------------------------------------------------------------------------------------------- 6-delivery

/** A part of a consignment that one vehicle can carry. Grants of a load: whole packs, columns beside each other. */
export interface Load {
  readonly consignment: number;
  readonly grants: readonly number[];
  readonly packs: readonly number[];
  readonly kg: number;
  readonly coolLitres: number;
  readonly inoculantKg: number;
  /** Part of the consignment's hectares. */
  readonly hectares: number;
}

export interface Stop {
  /** Site of the hand-over place. */
  readonly site: number;
  readonly loads: readonly number[];
  readonly arriveMinute: number;
  readonly startMinute: number;
  readonly departMinute: number;
  /** Leg from the site before. */
  readonly legMinutes: number;
  readonly legKm: number;
  /** kg aboard on arrival. */
  readonly loadKg: number;
  /** Packs at the hand-over, and the hottest they have been so far. NaN without inoculant. */
  readonly packC: number;
  readonly packMaxC: number;
  /** Hottest so far where effective air is 2 K higher throughout. NaN without inoculant. */
  readonly hotBandMaxC: number;
  /** log10 loss of the cells from leaving the depot to this hand-over; NaN without inoculant. */
  readonly log10Loss: number;
  readonly hoursAboveStorage: number;
}

/**
 * Temperatures along a trip, from the depot to the last hand-over of inoculant: columns by the end of each step of at most a
 * quarter hour. The first row is the start. Empty without inoculant.
 */
export interface TripCurve {
  readonly minute: readonly number[];
  readonly packC: readonly number[];
  /** Where effective air is 2 K higher throughout. */
  readonly hotBandC: readonly number[];
  /** Air as the box felt it during the step that ends here. */
  readonly boxAirC: readonly number[];
  readonly shadeC: readonly number[];
}

export interface Trip {
  readonly leaveMinute: number;
  readonly returnMinute: number;
  readonly iceKg: number;
  readonly loadKg: number;
  readonly coolLitres: number;
  readonly stops: readonly Stop[];
  readonly kilometres: number;
  readonly curve: TripCurve;
  readonly returnLegMinutes: number;
  readonly returnLegKm: number;
}

export interface VehicleDay {
  readonly vehicle: number;
  /** Offset from planning.from. */
  readonly day: number;
  readonly trips: readonly Trip[];
}

export interface Unserved {
  readonly load: number;
  readonly reason: UnservedReason;
  readonly hectares: number;
}

export interface Delivery {
  readonly loads: readonly Load[];
  readonly vehicleDays: readonly VehicleDay[];
  readonly unserved: readonly Unserved[];
  readonly iterationsDone: number;
  readonly stoppedBy: 'iterations' | 'time';
  /** Travel, vehicle-days, crew and ice, in the scenario's currency. Null where none of it is priced. */
  readonly cost: number | null;
}

// ---------------------------------------------------------------------------------------------------- 7-outcomes

/** One row per row of Shares. Hectares: expected over the season's members. */
export interface CropOutcomes {
  /** Sown with seed, own or brought. */
  readonly seedHa: Float64Array;
  /** Of those, seed in hand before the window closes. */
  readonly seedInTimeHa: Float64Array;
  /** Inoculated, packs handed over. */
  readonly inoculatedHa: Float64Array;
  /** Inoculated, in time, and at or above the floor of rhizobia per seed. */
  readonly reachedHa: Float64Array;
  /** log10 rhizobia per seed at sowing, expected; NaN where nothing is inoculated. */
  readonly log10PerSeed: Float64Array;
  /** Losses in log10, expected: store, road, community, seed. */
  readonly storeLog10: Float64Array;
  readonly roadLog10: Float64Array;
  readonly communityLog10: Float64Array;
  readonly seedLog10: Float64Array;
  readonly nitrogenKg: Float64Array;
  readonly grainT: Float64Array;
}

export interface Range {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** A range with its quarters. */
export interface Spread extends Range {
  readonly p25: number;
  readonly p75: number;
}

/** Bounds that are no quantiles. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}

export interface ZoneOutcome {
  /** -1: outside all zones. */
  readonly zone: number;
  readonly communities: number;
  readonly farmers: number;
  readonly plannedHa: number;
  readonly seedKg: number;
  readonly inoculantPacks: number;
  readonly shareMet: number;
  readonly reachedHa: number;
  /** Over seasons and draws; `reachedHa` is the mean over seasons at the central parameters. */
  readonly reachedRange: Range;
  readonly nitrogenKg: Range;
  /** Hectares that the packs signed for coat, and of those the hectares reported sown. */
  readonly signedForHa: number;
  readonly sownHa: number;
}

/**
 * The plan in each member of its season at the central parameters, in hectares. Reached, and why the rest of the inoculated
 * land was not: they add up to the land inoculated.
 */
export interface PastSeasons {
  readonly year: Int32Array;
  readonly reachedHa: Float64Array;
  /** The season had no onset. */
  readonly noOnsetHa: Float64Array;
  /** The window closed before the goods could be sown. */
  readonly lateHa: Float64Array;
  /** Above the floor when handed over, below it at sowing: what the wait for rain cost. */
  readonly waitingHa: Float64Array;
  /** Below the floor however soon it is sown, or of unknown count. */
  readonly weakHa: Float64Array;
  readonly cost: readonly SeasonCost[];
}

export interface Headline {
  readonly plannedHa: number;
  readonly seedHa: number;
  readonly inoculatedHa: number;
  readonly reachedHa: Spread;
  readonly nitrogenKg: Spread;
  /**
   * Nitrogen owed to the programme: fixed with the plan, less what the growers' own seed alone would fix, uncoated, in the
   * same season and draw. Counts what the inoculant adds and all that grows from seed brought.
   */
  readonly programmeNitrogenKg: Spread;
  /**
   * Of all nitrogen fixed, what inoculation itself adds: fixed with the plan, less the same land sown on the same days without
   * its inoculant, in the same season and draw. Comes from the gain in yield alone and may be below nought in a draw.
   */
  readonly inoculationNitrogenKg: Spread;
  readonly grainT: Spread;
  /** In communities that plan land, where their number is given. */
  readonly farmers: number;
  /** Farmers of each community, in proportion to the part of its planned hectares that is reached. */
  readonly farmersReached: Spread;
  /** Women among the farmers expected to be reached, 0 to 1, where both are counted; null where nowhere. */
  readonly womenShare: number | null;
  /** Hectares that the packs signed for coat, and of those the hectares reported sown. */
  readonly signedForHa: number;
  readonly sownHa: number /** Goods and delivery over the hectares reached: least where most are reached. Null where a price is missing or none is reached. */;
  readonly costPerHectare: Range | null;
  /** The same of delivery alone, at the middle. */
  readonly deliveryPerHectare: number | null;
  /** Hectares sown because the programme brought the seed. */
  readonly broughtSeedHa: number;
  /** Fertiliser nitrogen that a cereal after those hectares can do without, and its price. */
  readonly residualNitrogenKg: Bounds;
  readonly residualWorth: Bounds | null;
  /** Null where prices are not given. */
  readonly goodsCost: number | null;
  readonly deliveryCost: number | null;
  readonly nitrogenWorth: number | null;
  readonly communitiesReached: number;
  readonly communities: number;
}

export interface Outcomes {
  readonly crops: CropOutcomes;
  readonly zones: readonly ZoneOutcome[];
  readonly seasons: PastSeasons;
  readonly headline: Headline;
}
