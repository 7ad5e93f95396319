import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { depotCelsius, fillCoolStores } from '../../../src/engine/science/depot-store.ts';
import { planFiles, readFolderFiles } from '../../plan-files.ts';

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
