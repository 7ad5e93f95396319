import { BALANCE_SPOILS } from './spoils/balance.ts';
import { FAIRNESS_SPOILS } from './spoils/fairness.ts';
import { HEAT_SPOILS } from './spoils/heat.ts';
import { LAZY_SPOILS } from './spoils/lazy.ts';
import { NEEDS_SPOILS } from './spoils/needs.ts';
import { OUTCOMES_SPOILS } from './spoils/outcomes.ts';
import { PATHS_SPOILS } from './spoils/paths.ts';
import { PLACES_SPOILS } from './spoils/places.ts';
import { SEASON_SPOILS } from './spoils/season.ts';
import { SHAPE_SPOILS } from './spoils/shape.ts';
import type { Spoil } from './spoils/spoil.ts';
import { STOCK_SPOILS } from './spoils/stock.ts';
import { TIMES_SPOILS } from './spoils/times.ts';
import { VEHICLES_SPOILS } from './spoils/vehicles.ts';

export { applySpoil, type Spoil } from './spoils/spoil.ts';

/** Every way to spoil a plan, in the order of the list in the checker's README. */
export const SPOILS: readonly Spoil[] = [
  ...SHAPE_SPOILS,
  ...PLACES_SPOILS,
  ...SEASON_SPOILS,
  ...NEEDS_SPOILS,
  ...STOCK_SPOILS,
  ...BALANCE_SPOILS,
  ...FAIRNESS_SPOILS,
  ...VEHICLES_SPOILS,
  ...TIMES_SPOILS,
  ...PATHS_SPOILS,
  ...HEAT_SPOILS,
  ...LAZY_SPOILS,
  ...OUTCOMES_SPOILS,
];
