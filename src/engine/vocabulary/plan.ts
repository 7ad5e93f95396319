import type { Crop } from './crops.ts';
import type { Problem } from './problems.ts';
import type { DefaultUsed, FigureProvenance } from './provenance.ts';
import type { LotReason, SeasonCost, ShortfallReason, UnreachableReason, UnservedReason } from './reasons.ts';
import type { Commodity, Remedy, StockOrder } from './stage-results/allocation.ts';
import type { Bounds, CentralTotals, CostParts, Range, Spread } from './stage-results/outcomes.ts';
import type { OnsetStatus } from './stage-results/season.ts';

/**
 * The plan document, `nodulary-plan/1`: what is written is what is checked. Columns are arrays of equal length; indexes
 * point into `ids`; numbers are rounded to the decimals named in engine/record/rounding.ts; null stands for NaN. Days are
 * ISO dates; minutes count from local midnight; road states are indexes into ROAD_STATES. No clock and no machine.
 */
export interface Plan {
  readonly format: 'nodulary-plan/1';
  readonly engineVersion: string;
  /** SHA-256 over the scenario's files as sent. */
  readonly scenarioSha256: string;
  readonly decisionsSha256: string;
  readonly seed: number;
  readonly iterations: number;
  readonly stoppedBy: 'iterations' | 'time';
  readonly rounds: number;
  readonly tools: readonly { readonly name: string; readonly version: string; readonly options: string }[];
  /** Hash of each stage's inputs, by stage name. */
  readonly stageHashes: Readonly<Record<string, string>>;

  readonly scenario: {
    readonly name: string;
    readonly seasonYear: number;
    readonly asOf: string;
    readonly currency: string;
    readonly timeZone: string;
    readonly planningFrom: string;
    readonly planningTo: string;
  };

  readonly ids: {
    readonly crops: readonly Crop[];
    readonly zones: readonly string[];
    readonly communities: readonly string[];
    readonly depots: readonly string[];
    readonly products: readonly string[];
    readonly lots: readonly string[];
    readonly vehicles: readonly string[];
    /** Hand-over places: point id, or the id of the one community whose place was derived. */
    readonly places: readonly string[];
  };

  /** Hand-overs that were recorded when this was planned, as sent. */
  readonly handovers: {
    readonly date: readonly string[];
    readonly community: readonly number[];
    readonly lot: readonly number[];
    readonly packs: readonly number[];
    readonly returnedPacks: readonly number[];
    readonly sownOn: readonly (string | null)[];
  };

  readonly places: {
    readonly communityAreaHa: readonly (number | null)[];
    readonly zoneAreaHa: readonly (number | null)[];
    readonly shares: {
      readonly community: readonly number[];
      readonly zone: readonly number[];
      readonly share: readonly number[];
    };
    readonly placeLon: readonly number[];
    readonly placeLat: readonly number[];
    /** 1 where the place was given, 0 where it was derived. */
    readonly placeGiven: readonly number[];
    readonly communityPlace: readonly number[];
    readonly unreachable: {
      readonly place: readonly number[];
      /** A vehicle of the class that does not reach it. */
      readonly vehicle: readonly number[];
      readonly reason: readonly UnreachableReason[];
    };
  };

  readonly season: {
    readonly seasonName: string;
    readonly onsetDefinition: string;
    readonly memberYears: readonly number[];
    /** A station's id, once for each height at which its air is taken. */
    readonly stations: readonly string[];
    /** Height of the places above their station, m in steps of 100; 0 where either height is unknown. */
    readonly stationRiseM: readonly number[];
    /** Per zone and, last, for communities outside all zones. */
    readonly zoneStation: readonly number[];
    readonly zoneStationKm: readonly number[];
    readonly onset: {
      readonly status: readonly OnsetStatus[];
      readonly p20: readonly (string | null)[];
      readonly p50: readonly (string | null)[];
      readonly p80: readonly (string | null)[];
      readonly falseStartShare: readonly (number | null)[];
      readonly pastSeasons: readonly number[];
    };
    /** Onset of each member at each weather place, [member * stations + station]. */
    readonly memberOnset: readonly (string | null)[];
    readonly windows: {
      readonly zone: readonly number[];
      readonly crop: readonly number[];
      readonly anchor: readonly string[];
      readonly firstOffsetDays: readonly number[];
      readonly lastOffsetDays: readonly number[];
      /** Quantiles over members of the first and the last day. */
      readonly firstP20: readonly (string | null)[];
      readonly firstP50: readonly (string | null)[];
      readonly firstP80: readonly (string | null)[];
      readonly lastP50: readonly (string | null)[];
      /** Last day from which the crop still ripens before the rains end in four seasons of five. */
      readonly latestSafe: readonly (string | null)[];
    };
    /** Per planning day. */
    readonly roadState: readonly number[];
    readonly workday: readonly number[];
    /** Chance that fields can be sown, over all planned hectares, per planning day. */
    readonly sownChance: readonly number[];
    /** Where a day's air comes from, [station * planningDays + day]: 0 observed, 1 forecast, 2 past seasons, 3 assumed. */
    readonly airBasis: readonly number[];
    /** Expected extremes, [station * planningDays + day]. */
    readonly tminC: readonly number[];
    readonly tmaxC: readonly number[];
    /** Maximum of a day as hot as one in ten. */
    readonly hotTmaxC: readonly number[];
  };

  readonly needs: {
    /** -1 outside all zones. */
    readonly zone: readonly number[];
    readonly community: readonly number[];
    readonly crop: readonly number[];
    readonly plannedHa: readonly number[];
    readonly seedKg: readonly number[];
    readonly ownSeedKg: readonly number[];
    readonly inoculantG: readonly number[];
    /** -1: no compatible product. */
    readonly product: readonly number[];
    readonly packsNeeded: readonly number[];
    readonly stickerPacks: readonly number[];
    readonly waterL: readonly number[];
    readonly fertiliserKg: readonly number[];
  };

  readonly allocation: {
    readonly lots: {
      /** Reasons joined by `;`, empty where the lot may be given. */
      readonly reasons: readonly (readonly LotReason[])[];
      readonly packsReserved: readonly number[];
      readonly packsOffered: readonly number[];
      readonly packsHeld: readonly number[];
      readonly chanceSownBeforeExpiry: readonly (number | null)[];
      /** Rhizobia per gram on the first planning day; null for what is no inoculant and where nobody states a count. */
      readonly countPerG: readonly (number | null)[];
    };
    readonly grants: {
      readonly community: readonly number[];
      readonly crop: readonly number[];
      readonly lot: readonly number[];
      readonly packs: readonly number[];
      readonly kg: readonly number[];
      readonly servesSeedKg: readonly number[];
    };
    readonly shares: {
      readonly community: readonly number[];
      readonly crop: readonly number[];
      readonly plannedHa: readonly number[];
      readonly seedNeedKg: readonly number[];
      readonly ownSeedKg: readonly number[];
      readonly seedThereKg: readonly number[];
      readonly seedGivenKg: readonly number[];
      readonly inoculantNeedSeedKg: readonly number[];
      readonly inoculantGivenSeedKg: readonly number[];
      readonly seedShare: readonly number[];
      readonly inoculantShare: readonly number[];
    };
    readonly proofs: readonly {
      readonly commodity: Commodity;
      readonly crops: readonly number[];
      readonly shareRows: readonly number[];
      readonly needKg: readonly number[];
      readonly keptKg: readonly number[];
      readonly communityPrices: readonly number[];
      readonly lots: readonly number[];
      readonly offeredKg: readonly number[];
      readonly lotPrices: readonly number[];
      readonly capPrice: number;
      readonly leastShare: number;
      readonly bound: number;
      readonly roundingKg: number;
    }[];
    readonly shortfalls: {
      readonly shareRow: readonly number[];
      readonly commodity: readonly Commodity[];
      readonly shortKg: readonly number[];
      readonly hectares: readonly number[];
      readonly reason: readonly ShortfallReason[];
      readonly product: readonly number[];
    };
    readonly remedies: readonly Remedy[];
    /** One row a line of the order list, by the day it is to be ordered. */
    readonly orders: {
      readonly product: readonly number[];
      readonly depot: readonly number[];
      readonly verdict: readonly StockOrder['verdict'][];
      readonly packs: readonly number[];
      readonly packsWanted: readonly number[];
      readonly hectares: readonly number[];
      readonly hectaresWanted: readonly number[];
      readonly cost: readonly (number | null)[];
      readonly orderBy: readonly string[];
      readonly arrives: readonly string[];
      readonly usefulUntil: readonly string[];
      readonly lastOrderDay: readonly string[];
      readonly chanceInTime: readonly number[];
      /** Null for goods that need no cool store. */
      readonly packsAtOnce: readonly (number | null)[];
    };
    readonly packShares: {
      readonly grant: readonly number[];
      readonly growers: readonly (number | null)[];
      readonly growersPerPack: readonly (number | null)[];
      readonly openedPackDays: readonly number[];
      readonly sowTogether: readonly number[];
    };
    readonly consignments: {
      readonly community: readonly number[];
      readonly place: readonly number[];
      readonly depot: readonly number[];
      readonly group: readonly ('dry' | 'inoculant' | 'both' | 'fertiliser')[];
      readonly grants: readonly (readonly number[])[];
      readonly kg: readonly number[];
      readonly coolLitres: readonly number[];
      readonly inoculantKg: readonly number[];
      readonly maxStorageC: readonly (number | null)[];
      readonly hectares: readonly number[];
      readonly worth: readonly (number | null)[];
      readonly earliest: readonly string[];
      readonly latest: readonly string[];
      /** Share of its value had if handed over that planning day with no loss on the road. */
      readonly reachByDay: readonly (readonly number[])[];
      /** Best share of its value over all days at no loss on the road, and the day of it. */
      readonly bestReach: readonly number[];
      readonly bestDay: readonly string[];
    };
  };

  readonly delivery: {
    readonly loads: {
      readonly consignment: readonly number[];
      readonly grants: readonly (readonly number[])[];
      readonly packs: readonly (readonly number[])[];
      readonly kg: readonly number[];
      readonly coolLitres: readonly number[];
      readonly inoculantKg: readonly number[];
      readonly hectares: readonly number[];
    };
    /** One row a trip; the trips of a vehicle-day in order. */
    readonly trips: {
      readonly vehicle: readonly number[];
      readonly date: readonly string[];
      /** 1 first trip of the day. */
      readonly trip: readonly number[];
      readonly leaveMinute: readonly number[];
      readonly latestLeaveMinute: readonly number[];
      readonly returnMinute: readonly number[];
      readonly iceKg: readonly number[];
      readonly loadKg: readonly number[];
      readonly coolLitres: readonly number[];
      readonly kilometres: readonly number[];
      /** What the packs met up to the last hand-over of inoculant; null without inoculant. */
      readonly meanKineticC: readonly (number | null)[];
      readonly degreeHours30: readonly (number | null)[];
      readonly hoursAbove30: readonly (number | null)[];
      readonly hoursAbove35: readonly (number | null)[];
      readonly hoursAbove40: readonly (number | null)[];
      readonly returnLeg: readonly number[];
    };
    /** One row a stop, in the order of trips and stops. */
    readonly stops: {
      readonly trip: readonly number[];
      readonly place: readonly number[];
      readonly loads: readonly (readonly number[])[];
      readonly arriveMinute: readonly number[];
      readonly startMinute: readonly number[];
      readonly departMinute: readonly number[];
      /** Rest of the crew on arrival, before service. */
      readonly restMinutes: readonly number[];
      /** Index into legs. */
      readonly leg: readonly number[];
      readonly loadKg: readonly number[];
      readonly packC: readonly (number | null)[];
      readonly packMaxC: readonly (number | null)[];
      readonly hotBandMaxC: readonly (number | null)[];
      readonly log10Loss: readonly (number | null)[];
      readonly hoursAboveStorage: readonly (number | null)[];
    };
    /** Every leg driven, once, with its path along the roads. Sites: depots first, then places. */
    readonly legs: readonly {
      readonly fromSite: number;
      readonly toSite: number;
      /** A vehicle that drives it, whose roads and speeds hold. */
      readonly vehicle: number;
      readonly date: string;
      readonly minutes: number;
      readonly kilometres: number;
      /** [road index, from, to] in vertices along the road line; road indexes in scenario order. */
      readonly pieces: readonly (readonly [number, number, number])[];
    }[];
    /** Temperatures along each trip, one entry a row of `trips`; empty without inoculant. */
    readonly curves: readonly {
      readonly minute: readonly number[];
      readonly packC: readonly number[];
      readonly hotBandC: readonly number[];
      readonly boxAirC: readonly number[];
      readonly shadeC: readonly number[];
    }[];
    readonly unserved: {
      readonly load: readonly number[];
      readonly reason: readonly UnservedReason[];
      readonly hectares: readonly number[];
    };
    readonly cost: number | null;
    readonly promisePrice: number;
  };

  readonly outcomes: {
    /** One row per row of allocation.shares. */
    readonly crops: {
      readonly seedHa: readonly number[];
      readonly seedInTimeHa: readonly number[];
      readonly inoculatedHa: readonly number[];
      readonly reachedHa: readonly number[];
      readonly log10PerSeed: readonly (number | null)[];
      readonly storeLog10: readonly (number | null)[];
      readonly roadLog10: readonly (number | null)[];
      readonly communityLog10: readonly (number | null)[];
      readonly seedLog10: readonly (number | null)[];
      readonly nitrogenKg: readonly number[];
      readonly grainT: readonly number[];
    };
    readonly zones: {
      readonly zone: readonly number[];
      readonly communities: readonly number[];
      readonly farmers: readonly number[];
      readonly plannedHa: readonly number[];
      readonly seedKg: readonly number[];
      readonly inoculantPacks: readonly number[];
      readonly shareMet: readonly number[];
      readonly reachedHa: readonly number[];
      readonly reachedRange: readonly Range[];
      readonly nitrogenKg: readonly Range[];
      readonly inTimeChance: readonly (number | null)[];
      readonly signedForHa: readonly number[];
      readonly sownHa: readonly number[];
    };
    /** One row per member of the season, at the central parameters. */
    readonly seasons: {
      readonly year: readonly number[];
      readonly reachedHa: readonly number[];
      readonly noOnsetHa: readonly number[];
      readonly lateHa: readonly number[];
      readonly hotHa: readonly number[];
      readonly waitingHa: readonly number[];
      readonly weakHa: readonly number[];
      readonly cost: readonly SeasonCost[];
    };
    readonly headline: {
      readonly plannedHa: number;
      readonly seedHa: number;
      readonly inoculatedHa: number;
      readonly fertilisedHa: number;
      readonly reachedHa: Spread;
      readonly nitrogenKg: Spread;
      readonly programmeNitrogenKg: Spread;
      readonly inoculationNitrogenKg: Spread;
      readonly inoculationAtMostKg: Spread;
      readonly netNitrogenKg: Spread;
      readonly grainT: Spread;
      readonly programmeGrainT: Spread;
      readonly inoculationGrainT: Spread;
      readonly phosphorusNitrogenKg: Spread;
      readonly phosphorusGrainT: Spread;
      /** Null where a price is missing. */
      readonly central: { readonly [K in keyof CentralTotals]: number | null };
      readonly cost: CostParts;
      readonly farmers: number;
      readonly farmersReached: Spread;
      readonly womenShare: number | null;
      readonly signedForHa: number;
      readonly sownHa: number;
      readonly costPerHectare: Range | null;
      readonly deliveryPerHectare: number | null;
      readonly broughtSeedHa: number;
      readonly residualNitrogenKg: Bounds;
      readonly residualWorth: Bounds | null;
      readonly goodsCost: number | null;
      readonly deliveryCost: number | null;
      readonly programmeGrainWorth: Range | null;
      readonly inoculationGrainWorth: Range | null;
      readonly valueCostRatio: Range | null;
      readonly inoculantValueCostRatio: Range | null;
      readonly communitiesReached: number;
      readonly communities: number;
    };
  };

  readonly defaults: readonly DefaultUsed[];
  readonly provenance: readonly FigureProvenance[];
  readonly problems: readonly Problem[];
}
