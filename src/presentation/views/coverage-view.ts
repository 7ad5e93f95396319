import type { Plan, Scenario } from '../../engine/index.ts';

/** A range on a scale that starts at nought, or below where an outcome does. All in one unit. */
export interface RangeFigure {
  readonly path: string;
  readonly low: number;
  readonly lowQuarter: number;
  readonly middle: number;
  readonly highQuarter: number;
  readonly high: number;
  /** Drawn dashed; null where nothing is planned in this unit. */
  readonly planned: number | null;
  readonly scaleFrom: number;
  readonly scaleTo: number;
}

/** Hectares at each of the four steps from plan to field; null: nothing is signed for yet. */
export interface FourSteps {
  readonly planned: number;
  readonly expected: number;
  readonly signedFor: number | null;
  readonly sown: number | null;
}

export interface CoverageFigures {
  /** False where no past season can be played: then nothing can be expected. */
  readonly playable: boolean;
  readonly steps: FourSteps;
  readonly expectedHa: RangeFigure;
  readonly farmers: RangeFigure;
  /** Percent; null where women are not counted. */
  readonly womenPercent: number | null;
  readonly programmeNitrogen: RangeFigure;
  readonly allNitrogen: RangeFigure;
  readonly inoculation: RangeFigure;
  /** Null where no fertiliser is handed over. */
  readonly phosphorus: { readonly nitrogen: RangeFigure; readonly hectares: number; readonly grainT: number } | null;
}

/** The headline as figures with ranges. The three of nitrogen share a scale, so that none is mistaken for another. */
export function coverageFigures({ outcomes, season }: Plan, scenario: Scenario): CoverageFigures {
  const { headline } = outcomes;
  const { reachedHa, farmersReached, nitrogenKg, programmeNitrogenKg, inoculationNitrogenKg, womenShare } = headline;
  const nitrogen = [nitrogenKg, programmeNitrogenKg, inoculationNitrogenKg];
  const nitrogenFrom = Math.min(0, ...nitrogen.map(({ p10 }) => p10));
  const nitrogenTo = Math.max(...nitrogen.map(({ p90 }) => p90));
  const isSigned = scenario.handovers.length > 0;
  return {
    playable: season.memberYears.length > 0,
    steps: {
      planned: headline.plannedHa,
      expected: reachedHa.p50,
      signedFor: isSigned ? headline.signedForHa : null,
      sown: isSigned ? headline.sownHa : null,
    },
    expectedHa: rangeFigure('reachedHa', reachedHa, 0, headline.plannedHa, headline.plannedHa),
    farmers: rangeFigure('farmersReached', farmersReached, 0, headline.farmers, headline.farmers),
    womenPercent: womenShare === null ? null : womenShare * 100,
    programmeNitrogen: rangeFigure('programmeNitrogenKg', programmeNitrogenKg, nitrogenFrom, nitrogenTo, null),
    allNitrogen: rangeFigure('nitrogenKg', nitrogenKg, nitrogenFrom, nitrogenTo, null),
    inoculation: rangeFigure('inoculationNitrogenKg', inoculationNitrogenKg, nitrogenFrom, nitrogenTo, null),
    phosphorus:
      headline.fertilisedHa > 0
        ? {
            nitrogen: rangeFigure(
              'phosphorusNitrogenKg',
              headline.phosphorusNitrogenKg,
              nitrogenFrom,
              nitrogenTo,
              null,
            ),
            hectares: headline.fertilisedHa,
            grainT: headline.phosphorusGrainT.p50,
          }
        : null,
  };
}

function rangeFigure(
  name: string,
  { p10, p25, p50, p75, p90 }: Plan['outcomes']['headline']['reachedHa'],
  scaleFrom: number,
  scaleTo: number,
  planned: number | null,
): RangeFigure {
  return {
    path: `outcomes.headline.${name}`,
    low: p10,
    lowQuarter: p25,
    middle: p50,
    highQuarter: p75,
    high: p90,
    planned,
    scaleFrom,
    // Never an empty scale; and room for what lies beyond the plan.
    scaleTo: Math.max(scaleTo, p90, scaleFrom + 1e-9),
  };
}

/** Place on the scale of a range, percent of its length. */
export function placeOnScale(
  value: number,
  { scaleFrom, scaleTo }: Pick<RangeFigure, 'scaleFrom' | 'scaleTo'>,
): number {
  return (100 * (value - scaleFrom)) / (scaleTo - scaleFrom);
}
