import type { FigureInput, FigureProvenance } from '../../vocabulary/index.ts';
import { figure, given, reference } from './figure-entries.ts';
import { LITTLE_LOST_SHARE } from './past-seasons.ts';

/** Quantiles over every member of the season played with every draw. */
export function describeRanges(
  fixing: readonly FigureInput[],
  reaching: readonly FigureInput[],
  grain: readonly FigureInput[],
  draws: readonly FigureInput[],
  own: FigureInput,
): FigureProvenance[] {
  const over = 'p10, p25, p50, p75, p90 over seasons and draws';
  const farmers = given('farmers, where counted', 'file:communities.geojson:farmers', 'people', 'given');
  const women = given('women farmers, where counted', 'file:communities.geojson:farmers_women', 'people', 'given');
  const reached = given('hectares reached', 'figure:outcomes.headline.reachedHa', 'ha', 'assumed');
  return [
    figure('outcomes.headline.nitrogenKg', 'kg', `${over} of the nitrogen fixed on all land sown`, fixing),
    figure(
      'outcomes.headline.programmeNitrogenKg',
      'kg',
      'nitrogen with the plan - nitrogen of own seed alone, uncoated, in the same season and draw',
      [...fixing, own],
    ),
    figure(
      'outcomes.headline.inoculationNitrogenKg',
      'kg',
      'nitrogen with the plan - nitrogen of the same land sown on the same days without inoculant, in the same season and draw: by larger yields alone, because the method cannot credit a higher share from the air',
      fixing,
    ),
    figure('outcomes.headline.reachedHa', 'ha', over, reaching),
    figure('outcomes.zones.reachedRange', 'ha', over, reaching),
    figure('outcomes.headline.grainT', 't', over, [...grain, ...draws]),
    figure(
      'outcomes.headline.farmersReached',
      'people',
      'sum over communities of farmers * hectares reached / hectares planned; a share of farmers as of land, not a count of who was met',
      [farmers, reached],
    ),
    figure(
      'outcomes.headline.womenShare',
      '1',
      'sum of women farmers * share of land reached / sum of farmers * share of land reached, where both are counted',
      [women, farmers, reached],
    ),
  ];
}

export function describeSeasons(reaching: readonly FigureInput[]): FigureProvenance[] {
  const least = reference('share of hectares lost that is worth a name', '1', LITTLE_LOST_SHARE);
  return [
    figure(
      'outcomes.seasons',
      'ha',
      'this plan in the weather of each past season at the central parameters: its onset, heat and roads; what cost most = the largest of no onset, late, too hot, waiting, weak',
      [...reaching, least],
    ),
  ];
}
