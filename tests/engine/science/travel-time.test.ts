import { describe, expect, test } from 'vitest';
import { wetRoadRule } from '../../../src/engine/reference/speeds.ts';
import { speedKmPerHour } from '../../../src/engine/science/travel-time.ts';

describe('roads after rain', () => {
  test('by the reference rule earth roads and tracks are shut to all but motorcycles, the rest is slow', () => {
    // World default speeds (OpenStreetMapSpeeds, read): tertiary 33 km/h; wet factors assumed.
    expect(speedKmPerHour('tertiary', 'earth', 'closed', false)).toBe(0);
    expect(speedKmPerHour('tertiary', 'earth', 'closed', true)).toBeCloseTo(33 * 0.6, 9);
    expect(speedKmPerHour('tertiary', 'gravel', 'closed', false)).toBeCloseTo(33 * 0.75, 9);
    expect(speedKmPerHour('track', 'paved', 'closed', false)).toBe(0);
    expect(speedKmPerHour('primary', 'paved', 'difficult', false)).toBeCloseTo(51 * 0.9, 9);
  });

  test('a programme may shut gravel too, leave earth open, stop motorcycles, and state its own wet speeds', () => {
    const rule = wetRoadRule({
      'road.shut.gravel': 1,
      'road.shut.earth': 0,
      'road.shut.motorcycles': 1,
      'road.wetSpeed.earth': 0.4,
    });
    expect(speedKmPerHour('tertiary', 'gravel', 'closed', false, rule)).toBe(0);
    expect(speedKmPerHour('tertiary', 'earth', 'closed', false, rule)).toBeCloseTo(33 * 0.4, 9);
    expect(speedKmPerHour('track', 'earth', 'closed', true, rule)).toBe(0);
    expect(rule.shut.gravel).toMatchObject({ status: 'given' });
    expect(rule.shut.track).toMatchObject({ value: 1, status: 'assumed' });
  });

  test('wetter is never faster, whatever the rule, on any road', () => {
    for (const rule of [wetRoadRule({}), wetRoadRule({ 'road.shut.paved': 1 })])
      for (const surface of ['paved', 'gravel', 'earth'] as const)
        for (const roadClass of ['trunk', 'tertiary', 'track'] as const)
          for (const motorcycle of [true, false]) {
            const [dry, wet, closed] = (['passable', 'difficult', 'closed'] as const).map((state) =>
              speedKmPerHour(roadClass, surface, state, motorcycle, rule),
            ) as [number, number, number];
            expect(wet).toBeLessThanOrEqual(dry);
            expect(closed).toBeLessThanOrEqual(wet);
          }
  });
});
