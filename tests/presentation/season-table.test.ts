import { expect, test } from 'vitest';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { readScenario } from '../../src/engine/index.ts';
import { readingsTable } from '../../src/presentation/season-table.ts';
import { textTable } from '../../src/presentation/text-table.ts';
import { tinyFiles } from '../app/planner-at-hand.ts';

test('names stand over their columns, the first flush left, the others flush right', () => {
  expect(
    textTable(
      ['zone', 'ha'],
      [
        ['West', '1.5'],
        ['Far east', '12.0'],
      ],
    ),
  ).toBe(['zone        ha', 'West       1.5', 'Far east  12.0'].join('\n'));
});

test('readings stand with their measures beside the loss by three sets', () => {
  const files = new Map(tinyFiles());
  const document = JSON.parse(new TextDecoder().decode(files.get('scenario.json')));
  document.files.readings = 'readings';
  const encoder = new TextEncoder();
  files.set('scenario.json', encoder.encode(JSON.stringify(document)));
  const rows = ['2026-11-18 08:00,30', '2026-11-18 10:00,34', '2026-11-18 12:00,30'];
  files.set('readings/run.csv', encoder.encode(`time,temp_c,trip\n${rows.map((row) => `${row},MOTO 1`).join('\n')}\n`));
  const { scenario } = readScenario(recordsFromFiles(files));
  if (!scenario) throw new Error('blocked');
  const table = readingsTable(scenario);
  // A trip of no lot: its set is unknown. Straight lines from 30 to 34 °C and back: above 30 °C all four hours, 35 °C never.
  expect(table).toMatch(/MOTO 1 +4\.0 +30\.0 - 34\.0 +32\.\d +4\.0 +0\.0 +0\.0 +unknown +0\.002, 0\.00\d/);
});
