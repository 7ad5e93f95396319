import type { Exposure } from '../readings.ts';
import type { UnservedReason } from '../reasons.ts';

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
  /** Rest of the crew on arrival, before service, as the driving rule asks for it. */
  readonly restMinutes: number;
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
  /** Latest minute, in steps of five from the planned one, at which it could leave and still keep every rule. */
  readonly latestLeaveMinute: number;
  readonly returnMinute: number;
  readonly iceKg: number;
  readonly loadKg: number;
  readonly coolLitres: number;
  readonly stops: readonly Stop[];
  readonly kilometres: number;
  readonly curve: TripCurve;
  /** What the packs still aboard met, from the depot to the last hand-over of inoculant; null without inoculant. */
  readonly exposure: Exposure | null;
  readonly returnLegMinutes: number;
  readonly returnLegKm: number;
}

/** A planned trip, to be told as it would go if it left at another hour. */
export interface TripQuestion {
  readonly vehicle: number;
  /** Offset from planning.from. */
  readonly day: number;
  readonly iceKg: number;
  readonly leaveMinute: number;
  readonly stops: readonly {
    readonly site: number;
    readonly legMinutes: number;
    /** Rest on arrival, before service. */
    readonly restMinutes: number;
    readonly serviceMinutes: number;
    readonly opensMinute: number;
    /** Handed over there. */
    readonly inoculantKg: number;
  }[];
  readonly returnLegMinutes: number;
  /** Lowest storage limit on the labels aboard; null where none states one. */
  readonly storageLimitC: number | null;
}

export interface TripAtHour {
  readonly leaveMinute: number;
  readonly returnMinute: number;
  readonly curve: TripCurve;
  readonly packMaxC: number;
  readonly hotBandMaxC: number;
  readonly hoursAboveStorage: number | null;
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
  /** What a consignment that comes on another day than told is reckoned to cost, in the same currency. */
  readonly promisePrice: number;
}
