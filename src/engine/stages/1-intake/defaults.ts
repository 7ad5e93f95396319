import type { RoadClass } from '../../vocabulary/places.ts';
import { type Sourced, type Status, sourced } from '../../vocabulary/provenance.ts';

/**
 * What a blank entry is taken for, written as the file would state it. Every use is counted and listed in the plan with
 * the status and source given here.
 */
const as =
  (status: Status) =>
  <T extends number | string>(value: T, source: string): Sourced<T> =>
    sourced(value, status, source);
const assumed = as('assumed');
const read = as('read');

// -------------------------------------------------------------------------------------------------- scenario.json
export const SCENARIO_NAME = assumed('unnamed scenario', 'the scenario has no name');
export const NO_CURRENCY = assumed('XXX', 'ISO 4217 code for no currency; none was stated');
export const FORECAST_HORIZON_DAYS = assumed(10, 'usual length of a daily forecast; later rows are ignored');
export const WORKDAYS = assumed('1;2;3;4;5;6', 'Monday to Saturday');
export const NO_HOLIDAYS = assumed('none', 'no holidays stated');
export const SEASON = assumed(
  'planning',
  'no season stated: rains are looked for from 30 days before planning to its end',
);
export const SEASON_LEAD_DAYS = 30;
export const FAIRNESS = assumed('equal-share', 'equal share first, then most hectares');
export const EQUAL_OVER = assumed('community', 'share of need met is compared between communities');
export const PRIORITY_WEIGHTS = assumed('none', 'all communities alike while stock is short');
export const HECTARE_VALUE = assumed('land', 'every hectare counts alike');
export const RESERVE_PERCENT = assumed(0, 'no reserve asked for');
export const CONTINGENCY_PERCENT = assumed(0, 'no contingency asked for');
export const CELLS_PER_SEED_FLOOR = read(
  1e5,
  'beans, peas and soybeans: Canada, Fertilizers Regulations C.R.C. c.666 s.10.2 (2006 to 2013)',
);
export const HEAT_RULE = assumed('label', 'the label decides');
export const CARRY = assumed('apart', 'seed is bulky and goes early, inoculant is alive and goes late');
export const MARKET_DAYS = assumed('prefer', 'market days are preferred, not required');
export const TRAINING_MINUTES = assumed(0, 'no training asked for');
const DRIVING_RULE =
  'driving rule of the European type, a rest of 45 min after 4.5 h (te-logistics.com/en/infos/lenkzeiten-en.php)';
export const REST_AFTER_HOURS = read(4.5, DRIVING_RULE);
export const REST_MINUTES = read(45, DRIVING_RULE);

// -------------------------------------------------------------------------------------------------------- places
export const NO_PLANNED_LAND = assumed(0, 'blank: no land planned');
export const NO_OWN_SEED = assumed(0, 'blank: no farmer-saved seed');
export const LAST_PRIORITY = assumed(9, 'blank: after all that state a priority of 1 to 8');
export const STORE = assumed('room', 'an ordinary room; colder stores must be stated');
export const DEPOT_KIND = assumed('depot', 'not a seed group unless stated');
export const DEPOT_OPENS = assumed('06:00', 'daylight hours');
export const DEPOT_CLOSES = assumed('18:00', 'daylight hours');
export const NO_COOL_STORE = assumed(0, 'blank: no cool store');
export const NO_ICE = assumed(0, 'blank: no ice');
export const NO_OUTAGE = assumed(0, 'blank: no power cuts');
export const LOADING_MINUTES_PER_T = assumed(30, 'loading by hand; no published figure taken');
export const ONEWAY = assumed('no', 'open both ways unless stated');

const SURFACE_SOURCE = 'by road class: trunk and primary paved, secondary and tertiary gravel, others earth';
const PAVED = assumed('paved', SURFACE_SOURCE);
const GRAVEL = assumed('gravel', SURFACE_SOURCE);
const EARTH = assumed('earth', SURFACE_SOURCE);
export const SURFACE_BY_CLASS: Readonly<Record<RoadClass, Sourced<string>>> = {
  trunk: PAVED,
  primary: PAVED,
  secondary: GRAVEL,
  tertiary: GRAVEL,
  unclassified: EARTH,
  track: EARTH,
  path: EARTH,
};

// -------------------------------------------------------------------------------------------------------- supply
const INDIA = 'India, Fertiliser (Control) Order, Schedule III, as quoted at docsbay.net/type-of-carrier';
export const MIN_COUNT_CARRIER = read(5e7, `at least 5 x 10^7 per g of carrier: ${INDIA}`);
export const MIN_COUNT_LIQUID = read(1e8, `at least 1 x 10^8 per mL of liquid: ${INDIA}`);
export const MIN_GERMINATION_PERCENT = assumed(70, 'national seed rules differ; state the one that holds');
export const WATER_ML_PER_KG = assumed(15, 'common practice, no source; the label decides');
export const NOT_TREATED = assumed('no', 'blank: seed not treated with a chemical');
export const ORDER_MULTIPLE = assumed(1, 'single packs can be ordered');
export const LOT_STATUS = assumed('cleared', 'blank: no hold is known');

// --------------------------------------------------------------------------------------------------------- fleet
export const NO_BOX = assumed(0, 'blank: no cold box');
export const CARRIAGE = assumed('open_bed', 'the box rides in the sun unless stated');
export const CONDITIONED_ICE = assumed(0, 'ice packs left at room temperature until water moves in them');
export const PARKED = assumed('sun', 'no shade is counted on unless stated');
export const NO_COST = assumed(0, 'blank: not priced, so costs are understated');
export const CREW = assumed(1, 'the driver');
export const SHIFT_START = assumed('06:00', 'about sunrise');
export const MAX_HOURS = read(
  9,
  'driving rule of the European type, 9 h a day (te-logistics.com/en/infos/lenkzeiten-en.php)',
);
export const NOTHING_RETURNED = assumed(0, 'blank: no packs came back');
