import type { MonthDay } from './calendar.ts';
import type { Crop } from './crops.ts';
import type { Vehicle } from './fleet.ts';
import type { PlaceGeometry, Position, RoadClass, Surface } from './places.ts';
import type { DefaultUsed } from './provenance.ts';
import type { LoggerReading } from './readings.ts';
import type { ScenarioPart } from './records.ts';
import type { Lot, Product } from './supply.ts';
import type { DayNumber, MinuteOfDay } from './units.ts';

export const FAIRNESS_RULES = ['equal-share', 'most-hectares', 'priority-first'] as const;
export type Fairness = (typeof FAIRNESS_RULES)[number];
export const EQUAL_OVERS = ['community', 'zone', 'grower'] as const;
export type EqualOver = (typeof EQUAL_OVERS)[number];
/** What "most hectares" counts: every hectare alike, or a hectare by the grain its goods are expected to bring. */
export type HectareValue = 'land' | 'gain';
export type HeatRule = 'label' | 'model';
export type Carry = 'together' | 'apart';
export type MarketDays = 'prefer' | 'only';
export type Store = 'none' | 'room' | 'clay_pot' | 'fridge';

export interface Policy {
  readonly fairness: Fairness;
  readonly equalOver: EqualOver;
  /**
   * How much more of its need a community of priority 1, 2 and so on is given while stock is short, relative to one another; the last
   * holds for all that follow. Empty: all alike.
   */
  readonly priorityWeights: readonly number[];
  readonly hectareValue: HectareValue;
  /** Most that may be spent on orders, in the scenario's currency. Null: no limit stated. */
  readonly orderBudget: number | null;
  /** One buffer kept back at the depot, percent of each lot as it came. */
  readonly reservePercent: number;
  /** Added to the packs a need asks for, percent. */
  readonly contingencyPercent: number;
  readonly cellsPerSeedFloor: number;
  readonly heatRule: HeatRule;
  /** Hard limit of hours above the pack's storage limit on the road. Null: shown, no limit. */
  readonly hoursAboveStorage: number | null;
  readonly carry: Carry;
  readonly marketDays: MarketDays;
  /** Currency per broken promise. Null: unstated. */
  readonly promisePrice: number | null;
  readonly trainingMinutes: number;
  /** Crews rest after at most so many hours of driving. Zero minutes: no such rule. */
  readonly restAfterHours: number;
  readonly restMinutes: number;
  /** Zones wait until this much rain falls in three days. Null: no waiting. */
  readonly releaseMmInThreeDays: number | null;
}

export interface Prices {
  readonly nitrogenPerKg: number | null;
  readonly grainPerT: Readonly<Partial<Record<Crop, number>>>;
  readonly icePerKg: number | null;
  readonly perDiem: number | null;
}

/** A season to look for rains in, recurring every year; `to` may fall in the next year. */
export interface SeasonSearch {
  readonly name: string;
  readonly from: MonthDay;
  readonly to: MonthDay;
}

export interface CropPlan {
  readonly crop: Crop;
  readonly plannedHa: number;
  readonly growers: number | null;
  readonly ownSeedKg: number;
  readonly seedRateKgPerHa: number | null;
}

export interface Community {
  readonly id: string;
  readonly name: string;
  readonly zoneId: string | null;
  readonly farmers: number | null;
  readonly farmersWomen: number | null;
  /** One entry per crop column of the file, zero hectares included, in the order of CROPS. */
  readonly crops: readonly CropPlan[];
  readonly marketDay: number | null;
  /** 1 first. */
  readonly priority: number;
  readonly lastInoculatedYear: number | null;
  readonly store: Store;
  readonly closedFrom: DayNumber | null;
  readonly closedTo: DayNumber | null;
  readonly elevationM: number | null;
  readonly geometry: PlaceGeometry;
}

export interface Zone {
  readonly id: string;
  readonly name: string;
  readonly closedFrom: DayNumber | null;
  readonly closedTo: DayNumber | null;
  readonly geometry: PlaceGeometry;
}

export interface HandoverPoint {
  readonly id: string;
  readonly name: string;
  readonly position: Position;
  readonly communityIds: readonly string[];
  readonly opens: MinuteOfDay | null;
  readonly closes: MinuteOfDay | null;
  readonly store: Store | null;
  readonly contact: string | null;
}

export interface CropWindow {
  readonly zoneId: string | null;
  readonly crop: Crop;
  readonly season: string | null;
  /** What the offsets count from: `date` is a fixed day of the season's year. */
  readonly anchor:
    | { readonly kind: 'onset' }
    | { readonly kind: 'cessation' }
    | { readonly kind: 'date'; readonly on: DayNumber };
  readonly firstOffsetDays: number;
  readonly lastOffsetDays: number;
}

export interface Depot {
  readonly id: string;
  readonly name: string;
  readonly position: Position;
  readonly kind: 'depot' | 'seed_group';
  readonly opens: MinuteOfDay;
  readonly closes: MinuteOfDay;
  readonly coolStoreLitres: number;
  readonly coolStoreC: number | null;
  readonly iceKgPerDay: number;
  readonly outageHours: number;
  readonly loadingMinutesPerT: number;
  readonly elevationM: number | null;
}

export interface RoadLine {
  readonly positions: readonly Position[];
  readonly roadClass: RoadClass;
  readonly surface: Surface;
  /** `forward`: only in the order of the positions; `backward`: only against it. */
  readonly oneway: 'no' | 'forward' | 'backward';
  readonly closedFrom: DayNumber | null;
  readonly closedTo: DayNumber | null;
}

/** One station's daily record in columns, sorted by day, every day at most once; NaN where a value is missing. */
export interface WeatherStation {
  readonly id: string;
  readonly position: Position;
  readonly elevationM: number | null;
  /** Day numbers, ascending. Rows after the forecast horizon are already left out. */
  readonly days: Int32Array;
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  readonly rainMm: Float64Array;
}

/** What happened: one hand-over that was signed for. */
export interface Handover {
  readonly date: DayNumber;
  readonly communityId: string;
  readonly lotId: string;
  readonly packs: number;
  readonly kg: number | null;
  readonly boxC: number | null;
  readonly returnedPacks: number;
  readonly sownOn: DayNumber | null;
  /** Growers who took part, and women among them. */
  readonly growers: number | null;
  readonly growersWomen: number | null;
  /** Who brought them; two vehicles may bring the same on one day. */
  readonly vehicleId: string | null;
  /** Why packs came back, in the words of who brought them. */
  readonly reason: string | null;
}

/** File and row that an entry was read from. */
export interface Origin {
  readonly part: ScenarioPart;
  readonly id: string;
  readonly file: string;
  readonly row: number;
}

/** All that the programme supplies, already valid. Arrays stand in an order that the order of file rows cannot change. */
export interface Scenario {
  readonly name: string;
  readonly seasonYear: number;
  readonly asOf: DayNumber;
  readonly forecastHorizonDays: number;
  readonly timeZone: string;
  readonly utcOffsetMinutes: number;
  readonly currency: string;
  /** Phone of the programme that people are told to call; null: none is stated. */
  readonly contact: string | null;
  readonly planning: {
    readonly from: DayNumber;
    readonly to: DayNumber;
    /** ISO weekdays worked. */
    readonly workdays: readonly number[];
    readonly holidays: readonly DayNumber[];
    readonly roadHours: { readonly opens: MinuteOfDay; readonly closes: MinuteOfDay } | null;
  };
  readonly seasons: readonly SeasonSearch[];
  readonly policy: Policy;
  readonly prices: Prices;
  /** t per ha; the programme's own, else the reference's. */
  readonly yieldsTPerHa: Readonly<Partial<Record<Crop, number>>>;
  /** Reference values that the programme replaces, by the reference value's name. */
  readonly assumptions: Readonly<Record<string, number>>;
  /** Crops with a column in the communities file, in the order of CROPS. */
  readonly crops: readonly Crop[];
  readonly communities: readonly Community[];
  readonly zones: readonly Zone[];
  readonly handoverPoints: readonly HandoverPoint[];
  readonly cropWindows: readonly CropWindow[];
  readonly depots: readonly Depot[];
  readonly products: readonly Product[];
  readonly lots: readonly Lot[];
  readonly vehicles: readonly Vehicle[];
  readonly roads: readonly RoadLine[];
  readonly weather: readonly WeatherStation[];
  readonly handovers: readonly Handover[];
  /** What loggers recorded; the lots above are as the readings left them. */
  readonly readings: readonly LoggerReading[];
  readonly defaults: readonly DefaultUsed[];
  /** Where each entry stood in the files. Not part of any stage's input: rows may be sent in any order. */
  readonly origins: readonly Origin[];
  /** SHA-256 over the files as sent. Not part of any stage's input. */
  readonly sha256: string;
}
