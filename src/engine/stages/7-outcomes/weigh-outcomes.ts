import type {
  Allocation,
  Delivery,
  Needs,
  Outcomes,
  Places,
  Scenario,
  SeasonOutlook,
  StageResult,
} from '../../vocabulary/index.ts';
import { averageSeasons } from './average-seasons.ts';
import { describeOutcomes } from './describe-outcomes.ts';
import { countHandedOver } from './handed-over.ts';
import { noteOutcomes } from './note-outcomes.ts';
import { playPastSeasons } from './past-seasons.ts';
import { type PlayParts, preparePlay } from './prepare-play.ts';
import { rangeOverPlays } from './range-over-plays.ts';
import { summarisePlan, zoneOutcomes } from './summarise-plan.ts';

/**
 * Stage 7: what is handed over, what of it is alive and in time at sowing, what it fixes and what it costs. Averages over
 * the season's members at the central parameters; ranges over members and draws of the parameters together.
 */
export function weighOutcomes(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  allocation: Allocation,
  delivery: Delivery,
): StageResult<Outcomes> {
  const parts: PlayParts = { scenario, places, season, needs, allocation, delivery };
  const prepared = preparePlay(parts);
  const average = averageSeasons(parts, prepared);
  const ranges = rangeOverPlays(prepared);
  const handedOver = countHandedOver(parts);
  return {
    result: {
      crops: average.crops,
      zones: zoneOutcomes(parts, prepared, average, ranges, handedOver),
      seasons: playPastSeasons(
        prepared,
        season.members.map(({ year }) => year),
      ),
      headline: summarisePlan(parts, prepared, average, ranges, handedOver),
    },
    problems: noteOutcomes(parts, prepared, average.crops),
    provenance: describeOutcomes(scenario),
  };
}
