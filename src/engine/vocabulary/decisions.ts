import type { Crop } from './crops.ts';

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
    | { readonly kind: 'flag-cleared'; readonly lotId: string; readonly evidence: string }
  );

export interface Decisions {
  readonly format: 'nodulary-decisions/1';
  readonly decisions: readonly Decision[];
  readonly sha256: string;
}
