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
    | { readonly kind: 'flag-cleared'; readonly lotId: string; readonly evidence: string }
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
