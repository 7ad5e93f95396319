import {
  AIR_OFFSETS,
  BOX_UA_W_PER_K,
  CARRIER_UA_W_PER_K,
  CARTON_TAU_HOURS,
  COOL_STORE_CELSIUS,
  HOT_BAND_KELVIN,
  HOT_LIMIT_CELSIUS,
  ICE_MELT_J_PER_KG,
  LINER_J_PER_K,
  PACKS_J_PER_KG_K,
} from '../../reference/boxes.ts';
import { MOTORCYCLE_SERVICE_MINUTES, SERVICE_MINUTES, UNLOADING_MINUTES_PER_T } from '../../reference/service-times.ts';
import { SURVIVAL_SETS } from '../../reference/survival-sets.ts';
import type { FigureInput, FigureProvenance, Sourced } from '../../vocabulary/provenance.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import { DEAREST_JOURNEYS_UNSERVED, HECTARES_PER_DEAREST_DAY, OFF_MARKET_SHARE } from './assumptions.ts';

/** How every figure of the delivery was made. */
export function deliveryProvenance(scenario: Scenario): FigureProvenance[] {
  const money = scenario.currency;
  const heat = heatInputs();
  const figure = (
    name: string,
    unit: string,
    formula: string,
    inputs: readonly FigureInput[],
    source = 'this stage',
  ): FigureProvenance => ({ figure: `delivery.${name}`, unit, formula, inputs, status: 'derived', source });
  return [
    figure(
      'loads.packs',
      'packs',
      'consignment cut into full loads of the largest vehicle that reaches the place, then the rest',
      [
        column('vehicles.csv:payload_kg', 'kg'),
        column('vehicles.csv:cool_litres', 'L'),
        column('depots.csv:loading_minutes_per_t', 'min/t'),
        reference('UNLOADING_MINUTES_PER_T', 'min/t', UNLOADING_MINUTES_PER_T),
        from('figure:allocation.grants.packs', 'packs'),
      ],
    ),
    figure('loads.hectares', 'ha', 'hectares of the consignment in proportion to what its packs serve', [
      from('figure:allocation.consignments.hectares', 'ha'),
      from('figure:allocation.grants.packs', 'packs'),
    ]),
    figure('trips.kilometres', 'km', 'sum of the legs driven, out and back', [
      from('figure:delivery.legs.kilometres', 'km'),
    ]),
    figure('trips.loadKg', 'kg', 'sum over its loads', [from('figure:allocation.consignments.kg', 'kg')]),
    figure('trips.coolLitres', 'L', 'sum over its loads of inoculant, ice not counted', [
      from('figure:allocation.consignments.coolLitres', 'L'),
    ]),
    figure('trips.latestLeaveMinute', 'min', 'latest of every five minutes from leaving at which no rule breaks', [
      column('handover-points.csv:closes', 'min'),
      column('vehicles.csv:max_hours', 'h'),
      from('figure:delivery.stops.hotBandMaxC', '°C'),
    ]),
    figure(
      'trips.leaveMinute',
      'min',
      'max(shift start, depot opens, sunrise, road opens, ready + rest + loading), later where the first place opens later or the packs lose less on a later quarter hour',
      [
        column('vehicles.csv:shift_start', 'min'),
        column('depots.csv:opens', 'min'),
        column('depots.csv:loading_minutes_per_t', 'min/t'),
        from('figure:season.sunriseMinute', 'min'),
      ],
    ),
    figure(
      'trips.returnMinute',
      'min',
      'leave + legs + rests + waits + service, at most min(shift end, depot closes, sunset, road closes)',
      [
        from('figure:places.travel.minutes', 'min'),
        column('vehicles.csv:max_hours', 'h'),
        from('figure:season.sunsetMinute', 'min'),
      ],
    ),
    figure(
      'stops.departMinute',
      'min',
      'start + hand-over + unloading per t of dry goods + training once per community',
      [
        reference('SERVICE_MINUTES', 'min', SERVICE_MINUTES),
        reference('MOTORCYCLE_SERVICE_MINUTES', 'min', MOTORCYCLE_SERVICE_MINUTES),
        reference('UNLOADING_MINUTES_PER_T', 'min/t', UNLOADING_MINUTES_PER_T),
        column('scenario.json:policy.trainingMinutes', 'min'),
      ],
    ),
    figure(
      'stops.restMinutes',
      'min',
      'a rest on arrival where the next leg would take the crew beyond the driving allowed',
      [
        from('figure:places.travel.minutes', 'min'),
        column('scenario.json:policy.restAfterHours', 'h'),
        column('scenario.json:policy.restMinutes', 'min'),
      ],
    ),
    figure('trips.iceKg', 'kg', 'the fill of the box where the depot has as much left of the day, else none', [
      column('vehicles.csv:ice_kg', 'kg'),
      column('depots.csv:ice_kg_per_day', 'kg/d'),
    ]),
    figure(
      'stops.packC',
      '°C',
      '0 while ice is left, dm/dt = UA Ta / L; then C dT/dt = UA (Ta - T), C = melt water + packs + liner; quarter hours of constant effective air',
      heat,
    ),
    figure('curves', '°C', 'the same after every quarter hour, arrival and hand-over', heat),
    figure('stops.packMaxC', '°C', 'hottest from the depot to the hand-over', heat),
    figure('stops.hotBandMaxC', '°C', 'the same in effective air 2 K higher throughout; always below 40', [
      ...heat,
      reference('HOT_BAND_KELVIN', 'K', HOT_BAND_KELVIN),
      reference('HOT_LIMIT_CELSIUS', '°C', HOT_LIMIT_CELSIUS),
    ]),
    figure(
      'stops.log10Loss',
      'log10',
      "integral of 1 / D(T) from leaving to hand-over, Simpson's rule on each quarter hour",
      [
        ...heat,
        {
          ...from('reference:SURVIVAL_SETS', 'd'),
          status: SURVIVAL_SETS.default.status,
          source: SURVIVAL_SETS.default.source,
        },
      ],
    ),
    figure(
      'trips.meanKineticC',
      '°C',
      '10 000 K / -ln(mean of exp(-10 000 K / T)), from leaving to the last hand-over',
      heat,
    ),
    figure('trips.degreeHours30', 'K h', 'integral of what the packs are above 30 °C, straight between steps', heat),
    figure('trips.hoursAbove30', 'h', 'hours above 30 °C, straight between steps; likewise 35 and 40 °C', heat),
    figure(
      'stops.hoursAboveStorage',
      'h',
      'hours from leaving to hand-over above the lowest storage limit aboard for the stop',
      [...heat, column('products.csv:max_storage_c', '°C')],
    ),
    figure('cost', money, 'vehicle-days + crew per-diem + kilometres + ice', [
      column('vehicles.csv:cost_per_day', money),
      column('vehicles.csv:cost_per_km', `${money}/km`),
      column('vehicles.csv:per_diem', money),
      column('scenario.json:prices.ice', `${money}/kg`),
    ]),
    figure('unserved.hectares', 'ha', 'hectares of the loads left at the depot', [
      from('figure:delivery.loads.hectares', 'ha'),
    ]),
    figure('unserved.reason', 'reason', 'the last rule that any vehicle-day standing idle got as far as', [
      reference('DEAREST_JOURNEYS_UNSERVED', 'journeys', DEAREST_JOURNEYS_UNSERVED),
      reference('HECTARES_PER_DEAREST_DAY', 'ha', HECTARES_PER_DEAREST_DAY),
      reference('OFF_MARKET_SHARE', '1', OFF_MARKET_SHARE),
    ]),
  ];
}

function heatInputs(): FigureInput[] {
  return [
    from('figure:season.airC', '°C'),
    from('figure:season.sunLoad', '1'),
    column('vehicles.csv:cool_ua_w_per_k', 'W/K'),
    column('depots.csv:cool_store_c', '°C'),
    reference('CARRIER_UA_W_PER_K', 'W/K', CARRIER_UA_W_PER_K),
    reference('BOX_UA_W_PER_K', 'W/K', BOX_UA_W_PER_K),
    reference('CARTON_TAU_HOURS', 'h', CARTON_TAU_HOURS),
    reference('COOL_STORE_CELSIUS', '°C', COOL_STORE_CELSIUS),
    reference('ICE_MELT_J_PER_KG', 'J/kg', ICE_MELT_J_PER_KG),
    reference('PACKS_J_PER_KG_K', 'J/kgK', PACKS_J_PER_KG_K),
    reference('LINER_J_PER_K', 'J/K', LINER_J_PER_K),
    { ...from('reference:AIR_OFFSETS', 'K'), status: 'derived', source: AIR_OFFSETS.open_bed.parked.source },
  ];
}

function column(name: string, unit: string): FigureInput {
  return { name: name.slice(name.lastIndexOf(':') + 1), from: name, unit, status: 'given', source: 'the programme' };
}

function from(name: string, unit: string): FigureInput {
  return { name: name.slice(name.indexOf(':') + 1), from: name, unit, status: 'derived', source: 'an earlier stage' };
}

function reference(name: string, unit: string, value: Sourced<number>): FigureInput {
  return { name, from: `reference:${name}`, unit, value: value.value, status: value.status, source: value.source };
}
