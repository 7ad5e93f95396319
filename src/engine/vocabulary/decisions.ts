import type { Crop } from './crops.ts';
import type { Policy, Scenario } from './scenario.ts';

/** A cell of the allocation that a planner holds by hand. */
export interface AllocationCell {
  readonly communityId: string;
  readonly crop: Crop;
  readonly commodity: 'seed' | 'inoculant';
}

interface Edit {
  /** Who decided, and on what ground, in their own words. */
  readonly by?: string;
  readonly because?: string;
}

/** One typed edit. The list is append-only; undo drops its tail. */
export type Decision = Edit &
  (
    | ({ readonly kind: 'fix' | 'floor' | 'cap'; readonly share: number } & AllocationCell)
    | ({ readonly kind: 'forbid'; readonly lotId?: string } & AllocationCell)
    /** Hold a community's hand-over on a vehicle and a day. */
    | {
        readonly kind: 'lock';
        readonly communityId: string;
        readonly commodity: 'seed' | 'inoculant';
        readonly vehicleId: string;
        readonly date: string;
      }
    /** The community was told this date. */
    | {
        readonly kind: 'promise';
        readonly communityId: string;
        readonly commodity: 'seed' | 'inoculant';
        readonly date: string;
      }
    | { readonly kind: 'vehicle-away'; readonly vehicleId: string; readonly from: string; readonly to: string }
    /** Closes the road line nearest to a point. */
    | {
        readonly kind: 'road-closed';
        readonly lon: number;
        readonly lat: number;
        readonly from: string;
        readonly to: string;
      }
    /** Puts the programme's own figure in the place of a reference value, by its name, such as `soybean.seedRateKgPerHa`. */
    | { readonly kind: 'assume'; readonly name: string; readonly value: number }
    /** Puts parts of the sharing policy in the place of the scenario's. */
    | ({ readonly kind: 'sharing' } & Partial<SharingPolicy>)
    /** Packs of a lot put on hold, so many of them or all. */
    | { readonly kind: 'hold'; readonly lotId: string; readonly packs?: number }
    /** Lifts what was put on hold of a lot before; packs returned from a hot box only where `on` is no earlier than their return. */
    | { readonly kind: 'flag-cleared'; readonly lotId: string; readonly evidence: string; readonly on?: string }
    /** Rain measured at a station on a day, in the place of what the weather file says. */
    | { readonly kind: 'rain'; readonly stationId: string; readonly date: string; readonly mm: number }
    /** All that happened up to this day is entered: what follows is planned from the next day on. */
    | { readonly kind: 'day-closed'; readonly date: string }
  );

/** What a meeting may decide of the sharing policy. */
export type SharingPolicy = Pick<Policy, 'fairness' | 'equalOver' | 'reservePercent'>;

export interface Decisions {
  readonly format: 'nodulary-decisions/1';
  readonly decisions: readonly Decision[];
  readonly sha256: string;
}

/**
 * The scenario with the reference values and the parts of the sharing policy that decisions replaced; of two on one value
 * the later has the last word.
 */
export function withAssumptions(scenario: Scenario, { decisions }: Decisions): Scenario {
  const own = decisions.flatMap((decision) => (decision.kind === 'assume' ? [[decision.name, decision.value]] : []));
  const policy = sharingPolicy(scenario.policy, decisions);
  if (own.length === 0 && policy === scenario.policy) return scenario;
  return { ...scenario, policy, assumptions: { ...scenario.assumptions, ...Object.fromEntries(own) } };
}

/** The policy with the parts that decisions replaced; the same object where none did. */
export function sharingPolicy(policy: Policy, decisions: readonly Decision[]): Policy {
  const sharing: Partial<SharingPolicy>[] = decisions.filter((decision) => decision.kind === 'sharing').reverse();
  if (sharing.length === 0) return policy;
  return {
    ...policy,
    fairness: sharing.find(({ fairness }) => fairness !== undefined)?.fairness ?? policy.fairness,
    equalOver: sharing.find(({ equalOver }) => equalOver !== undefined)?.equalOver ?? policy.equalOver,
    reservePercent:
      sharing.find(({ reservePercent }) => reservePercent !== undefined)?.reservePercent ?? policy.reservePercent,
  };
}

/** What decisions have put on hold of a lot and not lifted since. */
export interface StandingHold {
  /** All packs, whatever the lot's own row says. */
  readonly isWhole: boolean;
  readonly packs: number;
  /** Whether a flag on the lot itself is lifted. */
  readonly isCleared: boolean;
  /** ISO date up to which packs returned from a hot box are cleared; null: none are. */
  readonly clearedOn: string | null;
}

/** Holds and clearings of a lot in their order: a clearing lifts what stands before it, and nothing that follows. */
export function standingHold(decisions: readonly Decision[], lotId: string): StandingHold {
  let hold: StandingHold = { isWhole: false, packs: 0, isCleared: false, clearedOn: null };
  for (const decision of decisions) {
    if (decision.kind === 'hold' && decision.lotId === lotId) {
      hold = {
        ...hold,
        isWhole: hold.isWhole || decision.packs === undefined,
        packs: hold.packs + (decision.packs ?? 0),
      };
    }
    if (decision.kind !== 'flag-cleared' || decision.lotId !== lotId) continue;
    const on = decision.on ?? '';
    const clearedOn = on > (hold.clearedOn ?? '') ? on : hold.clearedOn;
    hold = { isWhole: false, packs: 0, isCleared: true, clearedOn };
  }
  return hold;
}
