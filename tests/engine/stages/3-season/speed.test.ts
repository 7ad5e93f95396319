import { expect, test } from 'vitest';
import { CARRIAGES, dayNumber, type Position, type SeasonOutlook } from '../../../../src/engine/index.ts';
import { SURVIVAL_SETS } from '../../../../src/engine/reference/survival-sets.ts';
import { tabulateEffectiveAir } from '../../../../src/engine/science/effective-air.ts';
import { reachCurve } from '../../../../src/engine/science/reach.ts';
import { quarterHourAir } from '../../../../src/engine/stages/3-season/quarter-hour-air.ts';

/** Least processor seconds of several runs, after one to warm up: what the work takes, whatever else runs beside it. */
function leastSeconds(runs: number, work: () => void): number {
  work();
  return Math.min(
    ...Array.from({ length: runs }, () => {
      const from = process.cpuUsage();
      work();
      const { user, system } = process.cpuUsage(from);
      return (user + system) / 1e6;
    }),
  );
}

test('effective air of 300 weather places, 60 days and 4 carriages: under 1 s and 100 MB', () => {
  const positions = Array.from({ length: 300 }, (_, i): Position => [28 + i / 100, -13 - i / 200]);
  const column = (celsius: number) => new Float64Array(300 * 135).fill(celsius);
  const extremes = { tminC: column(18), tmaxC: column(32) } as Parameters<typeof quarterHourAir>[1];
  let bytes = 0;
  const seconds = leastSeconds(3, () => {
    const air = quarterHourAir(positions, extremes, dayNumber(20_760), 60, 135, 120);
    const tables = CARRIAGES.map((carriage) => tabulateEffectiveAir(air as unknown as SeasonOutlook, carriage, false));
    bytes = tables.reduce((sum, { moving, parked }) => sum + moving.byteLength + parked.byteLength, 0);
    bytes += air.airC.byteLength + air.sunLoad.byteLength;
  });
  console.info(
    `effective air of 300 places, 60 days, 4 carriages: ${seconds.toFixed(2)} s of processor, ${(bytes / 1e6).toFixed(0)} MB`,
  );
  expect(seconds).toBeLessThan(1);
  expect(bytes).toBeLessThan(100e6);
});

test('reach curves of 2,000 consignments over 60 days and 30 seasons: under 10 s', () => {
  const seconds = leastSeconds(2, () => {
    for (let i = 0; i < 2000; i++) {
      reachCurve({
        from: 0,
        planningDays: 60,
        firstDay: Array.from({ length: 30 }, (_, season) => season + (i % 7)),
        lastDay: Array.from({ length: 30 }, (_, season) => season + 21 + (i % 7)),
        delayLossPerDay: 0.01,
        delayFreeDays: 0,
        inoculant: {
          log10PerSeed: 6.1,
          survival: SURVIVAL_SETS.default.value,
          depotCelsius: new Float64Array(60).fill(8),
          communityCelsius: new Float64Array(135).fill(28 + (i % 5)),
          floorCellsPerSeed: 1e5,
        },
      });
    }
  });
  console.info(`2,000 reach curves over 60 days and 30 seasons: ${seconds.toFixed(2)} s of processor`);
  expect(seconds).toBeLessThan(10);
});
