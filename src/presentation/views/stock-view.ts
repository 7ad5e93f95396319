import {
  type Decision,
  type EqualOver,
  type Fairness,
  type Plan,
  type Scenario,
  sharingPolicy,
} from '../../engine/index.ts';
import { localNumber, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { type Holds, holdsOf } from './stock-cells.ts';
import { type StockGrid, stockGrid } from './stock-grid.ts';
import { stockHeadline } from './stock-headline.ts';
import { type LandPart, landParts, sumLand } from './stock-land.ts';
import { type Shortage, shortages } from './stock-shortages.ts';
import type { Told } from './stock-told.ts';

/** What the stock view says of a plan. */
export interface StockView {
  readonly headline: Told;
  readonly shortages: readonly Shortage[];
  /** Hectares of all shortages together: planned land that does not get both seed and inoculant. */
  readonly together: string;
  readonly grid: StockGrid;
  /** Communities that no vehicle reaches. */
  readonly cutOff: number;
  readonly parts: readonly LandPart[];
  readonly holds: Holds;
}

/** The rule by which what is short is shared: the scenario's, or as decided since. */
export interface SharingRule {
  readonly fairness: Fairness;
  readonly equalOver: EqualOver;
  readonly reservePercent: number;
  readonly floor: string;
}

export function stockView(plan: Plan, scenario: Scenario, decisions: readonly Decision[], words: Words): StockView {
  const parts = landParts(plan);
  const land = sumLand(parts);
  const short = shortages(plan, scenario, parts, words);
  const holds = holdsOf(decisions);
  const grid = stockGrid(plan, scenario, parts, short, holds, words);
  const hectares = (value: number) => withUnit(localNumber(value, words, 1), 'ha');
  return {
    headline: stockHeadline(plan, land, short, words),
    shortages: short,
    together: words.stock.together(hectares(land.plannedHa - land.inoculatedHa), hectares(land.plannedHa)),
    grid,
    cutOff: grid.all.cutOff,
    parts,
    holds,
  };
}

export function sharingRule(scenario: Scenario, decisions: readonly Decision[], words: Words): SharingRule {
  const { fairness, equalOver, reservePercent, cellsPerSeedFloor } = sharingPolicy(scenario.policy, decisions);
  return { fairness, equalOver, reservePercent, floor: words.stock.floor(localNumber(cellsPerSeedFloor, words)) };
}
