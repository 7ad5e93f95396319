import type { Crop } from './crops.ts';
import type { Scenario } from './scenario.ts';

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
    | { readonly kind: 'flag-cleared'; readonly lotId: string; readonly evidence: string }
  );

export interface Decisions {
  readonly format: 'nodulary-decisions/1';
  readonly decisions: readonly Decision[];
  readonly sha256: string;
}

/** The scenario with the reference values that decisions replaced; of two on one value the later has the last word. */
export function withAssumptions(scenario: Scenario, { decisions }: Decisions): Scenario {
  const own = decisions.flatMap((decision) => (decision.kind === 'assume' ? [[decision.name, decision.value]] : []));
  if (own.length === 0) return scenario;
  return { ...scenario, assumptions: { ...scenario.assumptions, ...Object.fromEntries(own) } };
}
