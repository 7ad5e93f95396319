import type { Commodity, Crop, Decision, Plan } from '../../engine/index.ts';
import { groupParts, type Land, type LandPart, landShare, sumLand } from './stock-land.ts';

/** What a planner holds by hand in a cell. */
export interface FixedShare {
  readonly commodity: Commodity;
  /** 0 to 1; null where not all communities of the cell are held, or not at one share. */
  readonly share: number | null;
}

/** One crop in one place: a zone, or a community. */
export interface Cell {
  readonly crop: Crop;
  readonly land: Land;
  /** Share of planned land with seed and inoculant, 0 to 1; null where none is planned. */
  readonly share: number | null;
  /** Communities that a decision on this cell speaks of. */
  readonly communityIds: readonly string[];
  readonly fixed: readonly FixedShare[];
}

/** Decisions in force on community, crop and commodity: of those on one cell the later has the last word. */
export type Holds = ReadonlyMap<string, number | null>;

const holdKey = (communityId: string, crop: string, commodity: Commodity) => `${commodity} ${crop} ${communityId}`;

export function holdsOf(decisions: readonly Decision[]): Holds {
  const holds = new Map<string, number | null>();
  for (const decision of decisions) {
    if (!('crop' in decision) || (decision.kind === 'forbid' && decision.lotId !== undefined)) continue;
    const key = holdKey(decision.communityId, decision.crop, decision.commodity);
    // A floor or a cap changes what a fix held, so the cell is fixed no longer.
    holds.set(key, decision.kind === 'fix' ? decision.share : decision.kind === 'forbid' ? 0 : null);
  }
  return holds;
}

/** Cells of one place, one for each crop of the plan. */
export function cellsOf(plan: Plan, parts: readonly LandPart[], holds: Holds): Cell[] {
  const byCrop = groupParts(parts, ({ crop }) => crop);
  return plan.ids.crops.map((crop, index) => {
    const ofCrop = byCrop.get(index) ?? [];
    const land = sumLand(ofCrop);
    const communityIds = ownCommunities(ofCrop).map((community) => plan.ids.communities[community] ?? '');
    return {
      crop,
      land,
      share: land.plannedHa > 0 ? landShare(land, 'inoculant') : null,
      communityIds,
      fixed: fixedShares(communityIds, crop, holds),
    };
  });
}

/** Communities whose land of the crop lies at least half within: one that reaches over a border is held once, not twice. */
function ownCommunities(ofCrop: readonly LandPart[]): number[] {
  return [...groupParts(ofCrop, ({ community }) => community)].flatMap(([community, parts]) =>
    parts.reduce((sum, { part }) => sum + part, 0) >= 0.5 ? [community] : [],
  );
}

function fixedShares(communityIds: readonly string[], crop: Crop, holds: Holds): FixedShare[] {
  return (['inoculant', 'seed'] as const).flatMap((commodity): FixedShare[] => {
    const held = communityIds.map((id) => holds.get(holdKey(id, crop, commodity)) ?? null);
    const first = held.find((share) => share !== null);
    if (first === undefined) return [];
    return [{ commodity, share: held.every((share) => share === first) ? (first as number) : null }];
  });
}

/** How a cell may be held by hand: at a share, at least, at most, or without any. */
export type HoldKind = 'fix' | 'floor' | 'cap' | 'forbid';

/** The decisions that hold a cell: one for each of its communities. `share` counts for all kinds but `forbid`. */
export function holdCell(
  { communityIds, crop }: Pick<Cell, 'communityIds' | 'crop'>,
  commodity: Commodity,
  kind: HoldKind,
  share: number,
): Decision[] {
  return communityIds.map((communityId) =>
    kind === 'forbid' ? { kind, communityId, crop, commodity } : { kind, communityId, crop, commodity, share },
  );
}

/**
 * How many decisions at the end of the list hold this cell: so many steps of undo release it. 0 where something
 * else was decided after it.
 */
export function stepsToRelease(decisions: readonly Decision[], cell: Pick<Cell, 'communityIds' | 'crop'>): number {
  let steps = 0;
  for (let i = decisions.length - 1; i >= 0; i--) {
    const decision = decisions[i];
    const isOfCell =
      decision !== undefined &&
      isHold(decision) &&
      decision.crop === cell.crop &&
      cell.communityIds.includes(decision.communityId);
    if (!isOfCell) break;
    steps += 1;
  }
  return steps;
}

type Hold = Extract<Decision, { readonly kind: HoldKind }>;

const isHold = (decision: Decision): decision is Hold =>
  decision.kind === 'fix' || decision.kind === 'floor' || decision.kind === 'cap' || decision.kind === 'forbid';
