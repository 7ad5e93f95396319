import { describe, expect, it, test } from 'vitest';
import { readLoggerTimes } from '../../../../src/engine/stages/1-intake/logger-times.ts';
import { dayFromCivil } from '../../../../src/engine/vocabulary/calendar.ts';
import { survives } from './expect-problems.ts';
import { type Files, problemsOf, read, SMALL_FILES, scenarioOf, withChange } from './small-scenario.ts';

/** Files of the small scenario (known up to 4 November 2026) with logger files of the lot L1, peat, beside them. */
const withReadings = (readings: Files, more: Files = SMALL_FILES): Files => ({
  ...more,
  'scenario.json': (more['scenario.json'] as string).replace('"files":{', '"files":{"readings":"readings",'),
  ...Object.fromEntries(Object.entries(readings).map(([name, text]) => [`readings/${name}`, text])),
});
const lines = (...rows: string[]): string => `${rows.join('\n')}\n`;
/** So many hourly readings from midnight of 1 November. */
const hourly = (celsius: readonly (number | string)[], header = 'time,temp_c', lot = ''): string =>
  lines(
    header,
    ...celsius.map((c, i) => {
      const [day, hour] = [1 + Math.floor(i / 24), i % 24];
      return `2026-11-0${day} ${String(hour).padStart(2, '0')}:00,${c}${lot}`;
    }),
  );
const lotOf = (files: Files, id = 'L1') => scenarioOf(files).lots.find((lot) => lot.id === id);
const loggerOf = (files: Files) => {
  const [logger] = scenarioOf(files).readings;
  if (!logger) throw new Error('no reading was kept');
  return logger;
};

describe('times as loggers write them', () => {
  const minute = dayFromCivil(2026, 11, 2) * 1440 + 14 * 60 + 30;
  it.each([
    ['2026-11-02T14:30'],
    ['2026-11-02 14:30:00'],
    ['2026-11-02 14:30:00.000'],
    ['2026/11/02 14:30'],
    ['2026-11-02 2:30 PM'],
    ['2026-11-02T12:30:00Z'], // the scenario's clock is two hours ahead of UTC
    ['2026-11-02T15:30+03:00'],
  ])('%s', (text) => {
    expect(readLoggerTimes([text], 120).minutes[0]).toBe(minute);
  });
  test('day or month first is told by a number above twelve anywhere in the file', () => {
    expect(readLoggerTimes(['02/11/2026 14:30', '13/11/2026 14:30'], 120)).toMatchObject({ order: 'day-first' });
    expect(readLoggerTimes(['02/11/2026 14:30', '13/11/2026 14:30'], 120).minutes[0]).toBe(minute);
    expect(readLoggerTimes(['11/02/2026 14:30', '11/13/26 14:30'], 120).minutes[0]).toBe(minute);
    expect(readLoggerTimes(['02.11.2026 14:30'], 120)).toEqual({
      order: 'unknown',
      minutes: Float64Array.of(minute),
    });
  });
  it.each(['yesterday', '2026-11-31 10:00', '2026-11-02 25:00', '2026-11-02', ''])('%s is no time', (text) => {
    expect(readLoggerTimes([text], 120).minutes[0]).toBeNaN();
  });
});

describe('a logger file', () => {
  const day = [28, 31, 35, 39, 39, 33];

  it('is tied to a lot by its name or by a column, in any order of columns and rows', () => {
    const byName = loggerOf(withReadings({ 'L1__box7.csv': hourly(day) }));
    const turned = lines(
      'lot_id,Temperature (°C),Date,Time',
      ...day.map((c, i) => `L1,${c},2026-11-01,0${i}:00`).reverse(),
    );
    const byColumn = loggerOf(withReadings({ 'any.csv': turned }));
    expect(byColumn.lotId).toBe('L1');
    expect(byColumn.exposure).toEqual(byName.exposure);
    expect(byColumn.log10Loss).toBe(byName.log10Loss);
  });

  it('gives the measures of the exposure rows: straight lines between hourly samples', () => {
    // Row 67 of the thermal sheet (derived), its peak of 41 °C kept out of the lot's way by a trip.
    const { exposure, trip } = loggerOf(
      withReadings({ 'L1.csv': hourly([28, 31, 35, 41, 39, 33], 'time,temp_c,trip', ',TRUCK 2026-11-01 1') }),
    );
    expect(trip).toBe('TRUCK 2026-11-01 1');
    expect(exposure.degreeHours30).toBeCloseTo(27.1667, 4);
    expect(exposure.hoursAbove30).toBeCloseTo(4.3333, 4);
    expect(exposure.hoursAbove40).toBeCloseTo(0.6667, 4);
    expect(exposure).toMatchObject({ hours: 5, minC: 28, maxC: 41 });
  });

  it('in °F says the same as in °C, by header or by cell', () => {
    const inC = loggerOf(withReadings({ 'L1.csv': hourly(day) }));
    const fahrenheit = day.map((c) => (c * 9) / 5 + 32);
    const byHeader = loggerOf(withReadings({ 'L1.csv': hourly(fahrenheit, 'time,temp_f') }));
    const byCell = loggerOf(
      withReadings({
        'L1.csv': hourly(
          fahrenheit.map((f) => `${f} °F`),
          'time,temp',
        ),
      }),
    );
    expect(byHeader.exposure.degreeHours30).toBeCloseTo(inC.exposure.degreeHours30, 9);
    expect(byCell.exposure.maxC).toBeCloseTo(39, 9);
  });

  it('lowers the count of its lot by what the record cost, and by nothing that came before its test', () => {
    // A day at 35 °C of a pack whose carrier nobody calls sterile: D35 of the cautious set is 14 * 10^(5/14) days.
    const record = { 'L1.csv': hourly(Array(25).fill(35)) };
    const lost = 1 / (14 * 10 ** (5 / 14));
    expect(lotOf(withReadings(record))?.testedCountPerG).toBeCloseTo(1.2e9 * 10 ** -lost, -3);
    expect(problemsOf(read(withReadings(record)), 'E1982')[0]).toMatchObject({ weight: 'noted', value: 'L1' });
    const header = /tested_count_per_g,germination_percent/;
    const tested = withChange('lots.csv', header, 'tested_count_per_g,germination_percent,tested_on');
    const files = {
      ...tested,
      'lots.csv': (tested['lots.csv'] as string)
        .replace('1.2e9,', '1.2e9,,2026-11-02')
        .replace(/,(88|84)\n/g, ',$1,\n'),
    };
    expect(lotOf(withReadings(record, files))?.testedCountPerG).toBe(1.2e9);
  });

  it('of two loggers at one time the worse counts, of two in turn both', () => {
    const one = { 'L1__a.csv': hourly(Array(25).fill(35)) };
    const both = { ...one, 'L1__b.csv': hourly(Array(25).fill(30)) };
    expect(lotOf(withReadings(both))?.testedCountPerG).toBe(lotOf(withReadings(one))?.testedCountPerG);
  });

  it('at 40 °C puts the lot on hold until a named person clears it on stated evidence', () => {
    const hot = withReadings({ 'L1.csv': hourly([30, 40, 30]) });
    expect(lotOf(hot)?.status).toBe('on_hold');
    expect(problemsOf(read(hot), 'E1981')).toHaveLength(1);
    expect(lotOf(withReadings({ 'L1.csv': hourly([30, 39.9, 30]) }))?.status).toBe('cleared');
    expect(lotOf(withReadings({ 'L1.csv': hourly([30, 40, 30], 'time,temp_c,trip', ',T1') }))?.status).toBe('cleared');
  });

  it('hotter than survival is known for: on hold, no count claimed', () => {
    const files = withReadings({ 'L1.csv': hourly([30, 65, 30]) });
    expect(lotOf(files)).toMatchObject({ status: 'on_hold', testedCountPerG: 1.2e9 });
    expect(problemsOf(read(files), 'E1985')).toHaveLength(1);
    expect(loggerOf(files).log10Loss).toBeNaN();
  });

  it('says what else the packs met: frost, and seven days above 35 °C', () => {
    expect(problemsOf(read(withReadings({ 'L1.csv': hourly([4, -3, 4]) })), 'E1983')).toHaveLength(1);
    const long = lines(
      'time,temp_c',
      '2026-10-20 00:00,36',
      ...Array.from({ length: 99 }, (_, i) => {
        const day = 20 + Math.floor(((i + 1) * 2) / 24);
        const hour = ((i + 1) * 2) % 24;
        return `2026-10-${day} ${String(hour).padStart(2, '0')}:00,36`;
      }),
    );
    expect(problemsOf(read(withReadings({ 'L1.csv': long })), 'E1984')).toHaveLength(1);
  });

  it('sets nothing else in motion where it is of seed', () => {
    const files = withReadings({ 'L2.csv': hourly([30, 41, 30]) });
    expect(lotOf(files, 'L2')).toMatchObject({ status: 'cleared' });
    expect(loggerOf(files).log10Loss).toBeNaN();
  });
});

describe('what loggers and people get wrong', () => {
  const kept = (text: string, code: Parameters<typeof survives>[1], place: Parameters<typeof survives>[2]) =>
    survives(withReadings({ 'L1.csv': text }), code, place).readings;

  it('Fahrenheit without saying so: read as °F where nothing else can be, else not used', () => {
    expect(kept(hourly([86, 88, 95], 'time,temp'), 'E1973', { column: 'temp' })[0]?.exposure.maxC).toBeCloseTo(35, 9);
    expect(kept(hourly([46, 50, 59], 'time,temp'), 'E1974', { column: 'temp' })).toEqual([]);
    expect(kept(hourly([20, 30, 25], 'time,temp'), 'E1972', { column: 'temp' })).toHaveLength(1);
  });
  it('hours missing: a short gap is a straight line, over a long one the hotter end holds', () => {
    const short = lines('time,temp_c', '2026-11-01 00:00,20', '2026-11-01 02:00,30', '2026-11-01 03:00,30');
    expect(loggerOf(withReadings({ 'L1.csv': short })).gapHours).toBe(0);
    const long = lines(
      'time,temp_c',
      '2026-11-01 00:00,20',
      '2026-11-01 01:00,20',
      '2026-11-01 13:00,38',
      '2026-11-01 14:00,20',
    );
    const [logger] = kept(long, 'E1979', {});
    expect(logger?.gapHours).toBe(12);
    expect(logger?.exposure.hoursAbove35).toBeGreaterThan(12);
  });
  it('clocks set back: the hour that comes twice counts once, with the hotter of its readings', () => {
    const twice = lines(
      'time,temp_c',
      '2026-11-01 00:00,20',
      '2026-11-01 01:00,22',
      '2026-11-01 00:30,25',
      '2026-11-01 01:00,24',
    );
    const [logger] = kept(twice, 'E1978', {});
    expect([...(logger?.celsius ?? [])]).toEqual([20, 25, 24]);
  });
  it('rows that cannot be read are gaps; the others stand', () => {
    const [logger] = kept(hourly([30, 'ERR', 31]), 'E1976', { row: 3, column: 'temp_c', value: 'ERR' });
    expect(logger?.celsius).toHaveLength(2);
    expect(
      kept(lines('time,temp_c', '2026-11-01 00:00,20', 'noon,21', '2026-11-01 01:00,20'), 'E1976', { row: 3 }),
    ).toHaveLength(1);
    expect(
      kept(lines('time,temp_c', '2026-11-01 00:00,20', '2026-11-01 01:00,200'), 'E1976', { value: '200' }),
    ).toHaveLength(1);
  });
  it('blank cells are gaps that need no word; decimal commas are read', () => {
    const { problems, scenario } = read(withReadings({ 'L1.csv': hourly([30, '', '"31,5"']) }));
    expect(problems.filter(({ code }) => code === 'E1976')).toEqual([]);
    expect([...(scenario?.readings[0]?.celsius ?? [])]).toEqual([30, 31.5]);
  });
  it('a day that may be a month', () => {
    expect(kept(lines('time,temp_c', '01/11/2026 00:00,20', '01/11/2026 01:00,21'), 'E1975', { row: 2 })).toHaveLength(
      1,
    );
  });
  it('readings after the as-of day are ignored', () => {
    expect(
      kept(lines('time,temp_c', '2026-11-04 23:00,20', '2026-11-05 00:00,45'), 'E1977', {})[0]?.exposure.maxC,
    ).toBe(20);
  });
  it('a file without times or temperatures, and one of nobody’s lot, are set aside', () => {
    expect(kept(lines('serial,model', '7,X'), 'E1970', { row: 1 })).toEqual([]);
    expect(
      survives(withReadings({ 'box.csv': hourly([20, 21]) }), 'E1971', { file: 'readings/box.csv' }).readings,
    ).toEqual([]);
    const unknown = hourly([20, 21], 'time,temp_c,lot_id', ',L99');
    expect(survives(withReadings({ 'box.csv': unknown }), 'E1971', { value: 'L99' }).readings).toEqual([]);
  });
  it('a header alone, one reading alone', () => {
    expect(scenarioOf(withReadings({ 'L1.csv': lines('time,temp_c') })).readings).toEqual([]);
    expect(loggerOf(withReadings({ 'L1.csv': hourly([33]) })).exposure).toMatchObject({ hours: 0, maxC: 33 });
  });
});

describe('weather', () => {
  it('Fahrenheit without saying so: no temperature of the station is used, its rain is', () => {
    const files = withChange('weather.csv', /18\.5,30\.(\d+)/g, '59,88');
    const scenario = survives(files, 'E1905', { column: 'tmax_c', value: '88' });
    expect(scenario.weather.every(({ tminC, tmaxC }) => [...tminC, ...tmaxC].every(Number.isNaN))).toBe(true);
    expect(scenario.weather[0]?.rainMm[1]).toBe(1);
  });
  it('2,000 mm in a day, more than the wettest day on record (1,825 mm, WMO), counts as missing', () => {
    const files = withChange('weather.csv', '2026-11-03,18.5,30.2,2', '2026-11-03,18.5,30.2,2000');
    const scenario = survives(files, 'E1302', { row: 4, column: 'rain_mm', value: '2000' });
    expect(scenario.weather.find(({ id }) => id === 'WEST')?.rainMm[2]).toBeNaN();
  });
});

describe('the clock', () => {
  it('says where clocks change while planning runs', () => {
    const files = withChange('scenario.json', 'Africa/Lusaka', 'Europe/Paris');
    const spring = {
      ...files,
      'scenario.json': (files['scenario.json'] as string)
        .replace('"asOf":"2026-11-04"', '"asOf":"2027-03-20"')
        .replace('"from":"2026-11-05","to":"2026-12-15"', '"from":"2027-03-22","to":"2027-04-10"'),
    };
    survives(spring, 'E1210', { column: 'timeZone', value: 'Europe/Paris' });
    expect(problemsOf(read(SMALL_FILES), 'E1210')).toEqual([]);
  });
});

describe('boxes as the fleet file states them', () => {
  const HEADER = 'cool_litres,ice_kg,carriage';
  const fleet = (header: string, truck: string, moto: string): Files => {
    const withHeader = withChange('vehicles.csv', HEADER, header);
    const sent = withHeader['vehicles.csv'] as string;
    return { ...withHeader, 'vehicles.csv': sent.replace('60,10,covered_bed', truck).replace('8,1,pannier', moto) };
  };
  const vehicleOf = (files: Files, id: string) => scenarioOf(files).vehicles.find((vehicle) => vehicle.id === id);

  it('insulation from a rated cold life: 1.6 kg of ice for 15 h at 43 °C is 0.230 W/K (row 43, derived)', () => {
    const files = fleet('cool_litres,ice_kg,cold_life_h,carriage', '60,1.6,15,covered_bed', '8,1,,pannier');
    expect(vehicleOf(files, 'TRUCK')?.coolUaWPerK).toBeCloseTo(0.23, 3);
    expect(vehicleOf(files, 'MOTO#1')?.coolUaWPerK).toBeNull();
  });
  it('a stated insulation comes before a cold life; a cold life without ice says nothing', () => {
    const both = fleet(
      'cool_litres,ice_kg,cold_life_h,cool_ua_w_per_k,carriage',
      '60,1.6,15,0.4,covered_bed',
      '8,1,,,pannier',
    );
    expect(vehicleOf(both, 'TRUCK')?.coolUaWPerK).toBe(0.4);
    const bare = fleet('cool_litres,ice_kg,cold_life_h,carriage', '60,0,15,covered_bed', '8,1,,pannier');
    survives(bare, 'E1802', { row: 2, column: 'cold_life_h', value: '15' });
    expect(vehicleOf(bare, 'TRUCK')?.coolUaWPerK).toBeNull();
  });
  it('cool water packs as a choice; packs straight from a freezer are said and reckoned as ice', () => {
    const files = fleet('cool_litres,ice_kg,packs_c,carriage', '60,10,5,covered_bed', '8,1,-18,pannier');
    survives(files, 'E1801', { row: 3, column: 'packs_c', value: '-18' });
    expect([vehicleOf(files, 'TRUCK')?.coolantC, vehicleOf(files, 'MOTO#1')?.coolantC]).toEqual([5, 0]);
    expect(
      scenarioOf(SMALL_FILES).vehicles.every(({ coolantC, parksInShade }) => coolantC === 0 && !parksInShade),
    ).toBe(true);
  });
  it('parked in shade', () => {
    const files = fleet('cool_litres,ice_kg,parked,carriage', '60,10,shade,covered_bed', '8,1,tree,pannier');
    survives(files, 'E1305', { row: 3, column: 'parked', value: 'tree' });
    expect([vehicleOf(files, 'TRUCK')?.parksInShade, vehicleOf(files, 'MOTO#1')?.parksInShade]).toEqual([true, false]);
  });
});
