import type { ReplayedPlan, ReplayedSeason, Scenario } from '../engine/index.ts';
import { seasonLabel } from './views/coverage-seasons.ts';
import type { PaperWords } from './wording/paper-words.ts';

const PLACES_NAMED = 3;

interface PlayedWhere {
  readonly scenario: Scenario;
  /** By index of the zone; null for land outside all zones. */
  readonly zoneNames: readonly (string | null)[];
}

/**
 * One season in words: what was lost, to what, where, and which trips waited.
 *
 * @param figure how the reader's language writes a number to so many decimals
 */
export function explainSeason(
  season: ReplayedSeason,
  { inoculatedHa }: ReplayedPlan,
  { scenario, zoneNames }: PlayedWhere,
  words: PaperWords['replay'],
  figure: (value: number, decimals?: number) => string,
): string {
  const losses = Object.entries(season.lostHa)
    .filter(([, ha]) => ha >= 0.05)
    .sort((a, b) => b[1] - a[1])
    .map(([cause, ha]) => {
      const places = season.zoneLosses
        .filter((loss) => loss.cause === cause)
        .slice(0, PLACES_NAMED)
        .map(({ zone, hectares }) => words.inZone(zoneNames[zone] ?? words.outside, figure(hectares, 1)));
      return `${words.lost[cause as keyof typeof words.lost](figure(ha, 1))}, ${words.where(places.join(', '))}`;
    });
  const waits = [
    ...(season.tripsMoved > 0 ? [words.moved(season.tripsMoved, season.daysMoved)] : []),
    ...(season.tripsNever > 0 ? [words.never(season.tripsNever)] : []),
  ];
  const said = [...losses, ...waits];
  const start = words.worst(
    seasonLabel(season.year, scenario),
    figure(season.reachedHa, 1),
    figure(inoculatedHa, 1),
    figure(100 * season.valueKept),
  );
  return `${start} ${said.length === 0 ? capital(words.noneLost) : `${capital(said.join('; '))}.`}`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
