import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { depotCelsius, fillCoolStores } from '../../../src/engine/science/depot-store.ts';
import { planFiles, readFolderFiles } from '../../plan-files.ts';
import { blankDepot } from '../blank-scenario.ts';

const tiny = readFolderFiles(fileURLToPath(new URL('../../../scenarios/tiny-district', import.meta.url)));
const encode = (text: string) => new TextEncoder().encode(text);
const text = (name: string) => new TextDecoder().decode(tiny.get(name));

/** The tiny district with three lots of inoculant and a smaller cool store. */
function withStore(litres: number) {
  const lots = `${text('lots.csv')}LOT-LATE,INO-SOY,D-RISE,30,cleared,2026-11-01,2027-08-31,2000000000,2026-11-05,\nLOT-COMING,INO-SOY,D-RISE,500,cleared,2026-11-23,2027-08-31,2000000000,,\n`;
  const depots = text('depots.csv').replace(',50,8,', `,${litres},8,`);
  return planFiles(new Map([...tiny, ['lots.csv', encode(lots)], ['depots.csv', encode(depots)]]), 200);
}

describe('a depot whose cool store is too small', () => {
  it('puts outside what expires last: 40 + 30 packs of 0.2 L are 14 L; 10 L hold the 8 L that expire first', () => {
    const { scenario, plan } = withStore(10);
    const [store] = fillCoolStores(scenario);
    expect(store?.litres).toBeCloseTo(14, 9);
    expect(store?.outside.map((lot) => scenario.lots[lot]?.id)).toEqual(['LOT-LATE']);
    expect(plan.problems.find(({ code }) => code === 'E5015')).toMatchObject({
      file: 'depots.csv',
      row: 2,
      value: '10',
    });
  });

  it('holds everything where there is room, and lots that come later take none of it', () => {
    const { scenario, plan } = withStore(14);
    expect(fillCoolStores(scenario)[0]?.outside).toEqual([]);
    expect(plan.problems.some(({ code }) => code === 'E5015')).toBe(false);
  });

  it('keeps those packs as a room does, 2 K above the air, and loses more of them', () => {
    const { scenario } = withStore(10);
    const depot = scenario.depots[0] as NonNullable<(typeof scenario.depots)[0]>;
    expect([depotCelsius(depot, true, 24), depotCelsius(depot, false, 24)]).toEqual([26, 8]);
  });
});

describe('a cool store without power for some hours of the day', () => {
  const store = (outageHours: number) => blankDepot({ coolStoreLitres: 50, coolStoreC: 6, outageHours });
  it('drifts to the air with a time constant of ten hours, and counts the outage as warm as it ends', () => {
    // Eight hours from 6 towards 26 °C: 26 - 20 exp(-0.8) = 17.01 °C; a third of the day of that: 6 + 11.01 / 3.
    expect(depotCelsius(store(8), false, 26)).toBeCloseTo(6 + (20 * (1 - Math.exp(-0.8))) / 3, 9);
    expect(depotCelsius(store(0), false, 26)).toBe(6);
  });
  it('longer outages never keep it cooler, and air cooler than the store does it no harm', () => {
    for (let hours = 1; hours <= 24; hours++)
      expect(depotCelsius(store(hours), false, 30)).toBeGreaterThan(depotCelsius(store(hours - 1), false, 30));
    expect(depotCelsius(store(12), false, 2)).toBe(6);
  });
  it('means nothing to a depot without a cool store', () => {
    expect(depotCelsius(blankDepot({ outageHours: 12 }), false, 27)).toBe(27);
  });
});
