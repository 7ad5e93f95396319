import type { Allocation } from './stage-results/allocation.ts';
import type { Load } from './stage-results/delivery.ts';

/** What stage 6 needs of a delivery to begin from it. */
export interface KnownDelivery {
  readonly loads: readonly Omit<Load, 'hectares' | 'coolLitres'>[];
  readonly vehicleDays: readonly {
    readonly vehicle: number;
    /** Offset from planning.from. */
    readonly day: number;
    readonly trips: readonly {
      readonly returnMinute: number;
      readonly iceKg: number;
      readonly stops: readonly {
        readonly loads: readonly number[];
        readonly startMinute: number;
        readonly departMinute: number;
      }[];
    }[];
  }[];
}

export interface KnownAllocation {
  readonly grants: Pick<Allocation['grants'], 'community' | 'crop' | 'lot' | 'packs'>;
  readonly consignments: readonly Pick<Allocation['consignments'][number], 'community' | 'depot' | 'group'>[];
}

/** Packs of one lot that a community was told of for one crop. */
export interface ToldPacks {
  readonly community: number;
  readonly crop: number;
  readonly lot: number;
  readonly packs: number;
  /** Offset of the day told from planning.from; negative where it is over and they did not come. */
  readonly day: number;
}

/** First planning day on which goods of one kind are known to come to a community from a depot. */
export interface ToldDay {
  readonly community: number;
  readonly depot: number;
  readonly group: Allocation['consignments'][number]['group'];
  readonly day: number;
}

/** A plan that people know, by the indexes and days of a scenario that has moved on since. */
export interface ToldPlan {
  /** Packs told of and not handed over yet, those of the earliest days first. */
  readonly packs: readonly ToldPacks[];
  readonly days: readonly ToldDay[];
  readonly allocation: KnownAllocation;
  /** Its trips from planning.from on. */
  readonly delivery: KnownDelivery;
}
