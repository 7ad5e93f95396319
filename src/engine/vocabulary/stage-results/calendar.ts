import type { Carriage } from '../fleet.ts';
import type { DayNumber } from '../units.ts';

/** The trip that the calendar is reckoned with: the same every day, so that days can be compared. */
export interface ReferenceTrip {
  /** Index into scenario.vehicles: whose roads, hours and depots count. -1: there is no vehicle. */
  readonly vehicle: number;
  /** Minute of the local day; null: as early as shift, depot, sun and road hours allow. */
  readonly leaveMinute: number | null;
  readonly carriage: Carriage;
  /** W/K of the box; null: cartons without a box. */
  readonly uaWPerK: number | null;
  readonly iceKg: number;
  /** Temperature of its packs of water; above 0 °C they melt nothing. */
  readonly coolantC: number;
  readonly parksInShade: boolean;
  readonly packsKg: number;
}

/** What a person may ask of the reference trip; what is left out is the vehicle's own. */
export type TripWish = Partial<ReferenceTrip>;

/** What keeps a zone's hectares from their full value, as parts that add up with `value` to 1. */
export interface ValueLost {
  /** No way for the vehicle, roads shut by rain, or too far to be back in time. */
  readonly noRoad: Float64Array;
  /** Packs that would reach 40 °C in the hot band: never driven. */
  readonly tooHot: Float64Array;
  /** No planting rains, or sown after the window. */
  readonly late: Float64Array;
  /** Too few rhizobia in the pack as bought, or nobody states how many. */
  readonly asBought: Float64Array;
  readonly depotStore: Float64Array;
  readonly road: Float64Array;
  readonly communityStore: Float64Array;
  readonly onSeed: Float64Array;
}

/** log10 of the rhizobia lost on the way, mean over members that sow. */
export interface CellsLost {
  readonly depotStore: Float64Array;
  readonly road: Float64Array;
  readonly communityStore: Float64Array;
  readonly onSeed: Float64Array;
}

/** What comes of holding a zone's inoculant back until so much rain has fallen in three days. Per zone. */
export interface ReleaseRule {
  readonly mm: number;
  /** Days from that rain to the hand-over. */
  readonly leadDays: number;
  /** Measured over the as-of day and the two before; NaN where none of them was. */
  readonly fallenMm: Float64Array;
  /** Day on which the rule let go by what is measured; NaN while it holds. */
  readonly firedOn: Float64Array;
  /** Day on which that rain has fallen, day numbers, quantiles over the members that see it. */
  readonly p20: Float64Array;
  readonly p50: Float64Array;
  readonly p80: Float64Array;
  /** Share of hectares and members that are sown after their window because of the wait, or never although it rained. */
  readonly tooLate: Float64Array;
  /** Share of members in which that rain never falls. */
  readonly never: Float64Array;
  /** Expected share of value kept by the rule, to be held against the best fixed day. */
  readonly value: Float64Array;
}

/**
 * What handing a zone its inoculant on each planning day is worth. Rows are zones in the scenario's order and, last, the
 * land outside all zones; a cell stands at [zone * planningDays + day]. NaN where the zone has no planned land.
 */
export interface SeasonCalendar {
  readonly trip: ReferenceTrip;
  readonly firstDay: DayNumber;
  readonly planningDays: number;
  readonly plannedHa: Float64Array;
  /** Index into scenario.depots of the depot that most of the zone is supplied from; -1: none reaches it. */
  readonly depot: Int32Array;
  /** Expected share of value kept, 0 to 1. */
  readonly value: Float64Array;
  readonly lost: ValueLost;
  readonly log10Lost: CellsLost;
  /** Workday on which most is kept, offset from the first day; -1 where no day keeps anything. */
  readonly bestDay: Int32Array;
  /** Mean minutes to the zone's hand-over places on the road state planned for that day; NaN where none is reached. */
  readonly driveMinutes: Float64Array;
  readonly leaveMinute: Float64Array;
  /** Hottest packs and hot band of the reference trip, °C. */
  readonly packMaxC: Float64Array;
  readonly hotBandMaxC: Float64Array;
  /** Latest leaving quarter hour up to which the hot band stays below 40 °C and the crew is back in time; NaN: none. */
  readonly latestLeaveMinute: Float64Array;
  /** Chance that fields have been sown or can be, over the zone's planned hectares. */
  readonly sownChance: Float64Array;
  /** Shade air. */
  readonly maximumC: Float64Array;
  readonly hoursAbove30: Float64Array;
  readonly hoursAbove35: Float64Array;
  readonly hoursAbove40: Float64Array;
  /** The same of a day as hot as one in ten. */
  readonly hotDayMaximumC: Float64Array;
  readonly hotDayHoursAbove40: Float64Array;
  /** Per planning day: 1 where vehicles may run. */
  readonly workday: Uint8Array;
  /** Chance of each road state, [day * 3 + state]. */
  readonly roadStateChance: Float64Array;
  readonly release: ReleaseRule;
}
