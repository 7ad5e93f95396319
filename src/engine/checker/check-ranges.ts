import type { Problem } from '../vocabulary/problems.ts';
import { at, type CheckedCase } from './checked-case.ts';
import { finding } from './finding.ts';

const SPREADS = [
  'reachedHa',
  'nitrogenKg',
  'programmeNitrogenKg',
  'inoculationNitrogenKg',
  'inoculationAtMostKg',
  'netNitrogenKg',
  'grainT',
  'programmeGrainT',
  'inoculationGrainT',
  'phosphorusNitrogenKg',
  'phosphorusGrainT',
  'farmersReached',
] as const;

const MONEY_RANGES = [
  'costPerHectare',
  'programmeGrainWorth',
  'inoculationGrainWorth',
  'valueCostRatio',
  'inoculantValueCostRatio',
] as const;

/** The figures of every range rise. */
export function checkRanges(c: CheckedCase): readonly Problem[] {
  const { headline, zones } = c.plan.outcomes;
  const found: Problem[] = [];
  const judge = (column: string, row: number | null, figures: readonly number[]) => {
    const rises = figures.every((figure, i) => i === 0 || figure >= at(figures, i - 1));
    if (!rises) found.push(finding('E8953', `outcomes.${column}`, row, figures.join(' ')));
  };
  for (const name of SPREADS) {
    const { p10, p25, p50, p75, p90 } = headline[name];
    judge(`headline.${name}`, null, [p10, p25, p50, p75, p90]);
  }
  for (const name of MONEY_RANGES) {
    const range = headline[name];
    if (range) judge(`headline.${name}`, null, [range.p10, range.p50, range.p90]);
  }
  zones.inTimeChance.forEach((chance, row) => {
    if (chance !== null && !(chance >= 0 && chance <= 1))
      found.push(finding('E8953', 'outcomes.zones.inTimeChance', row, chance));
  });
  zones.reachedRange.forEach(({ p10, p50, p90 }, row) => {
    judge('zones.reachedRange', row, [p10, p50, p90]);
  });
  zones.nitrogenKg.forEach((range, row) => {
    judge('zones.nitrogenKg', row, [range.p10, range.p50, range.p90]);
  });
  return found;
}
