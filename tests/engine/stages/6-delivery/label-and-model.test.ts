import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Delivery, Stop } from '../../../../src/engine/index.ts';
import { noteLabelAndModel } from '../../../../src/engine/stages/6-delivery/note-label-and-model.ts';
import { deliver, type NetworkSpec } from './small-network.ts';

const deliveryOf = (stops: readonly Partial<Stop>[]) =>
  ({ vehicleDays: [{ trips: [{ stops }] }] }) as unknown as Delivery;
const codes = (stops: readonly Partial<Stop>[]) => noteLabelAndModel(deliveryOf(stops)).map(({ code }) => code);

describe('the label and the model', () => {
  test('never disagree silently: a breach that the model thinks little of, a loss that no limit tells of', () => {
    const stop = fc.record({
      hoursAboveStorage: fc.option(fc.double({ min: 0, max: 12, noNaN: true }), { nil: Number.NaN }),
      log10Loss: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: Number.NaN }),
    });
    fc.assert(
      fc.property(fc.array(stop, { maxLength: 6 }), (stops) => {
        const found = codes(stops);
        const served = stops.filter(({ log10Loss }) => !Number.isNaN(log10Loss));
        const breach = served.some((s) => s.hoursAboveStorage > 0 && s.log10Loss < 0.05);
        const silent = served.some((s) => !(s.hoursAboveStorage > 0) && s.log10Loss > 0.3);
        return found.includes('E6010') === breach && found.includes('E6011') === silent;
      }),
    );
  });

  test('tells how many hand-overs, and the most', () => {
    const [told] = noteLabelAndModel(
      deliveryOf([
        { hoursAboveStorage: 2.25, log10Loss: 0.004 },
        { hoursAboveStorage: 1, log10Loss: 0.012 },
      ]),
    );
    expect(told).toMatchObject({ code: 'E6010', weight: 'noted', facts: { stops: 2, hours: 2.3, log10: 0.012 } });
  });

  test('the rule changes ranking alone: by the label the dearer box with ice, by the model the cheaper one without', () => {
    // Two hours in air of 32 °C bring packs from 8 °C above a label of 10 °C for most of the way; few cells are lost. Two hours
    // and a half at half a percent of 500 each are more than the three that the vehicle with ice costs on top.
    const spec = (heatRule: 'label' | 'model'): NetworkSpec => ({
      days: 1,
      places: [{ x: 60, y: 0 }],
      vehicles: [
        { iceKg: 0, costPerDay: 20 },
        { iceKg: 9, costPerDay: 23 },
      ],
      consignments: [{ place: 0, group: 'inoculant', sachets: 40, maxStorageC: 10 }],
      airC: () => 32,
      policy: { heatRule },
    });
    const dayOf = (heatRule: 'label' | 'model') => deliver(spec(heatRule), 50).vehicleDays[0];
    expect(dayOf('label')?.vehicle).toBe(1);
    expect(dayOf('label')?.trips[0]?.stops[0]?.hoursAboveStorage).toBe(0);
    expect(dayOf('model')?.vehicle).toBe(0);
    expect(dayOf('model')?.trips[0]?.stops[0]?.hoursAboveStorage).toBeGreaterThan(1);
  });
});
