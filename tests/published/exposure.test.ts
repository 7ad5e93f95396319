import { describe, expect, test } from 'vitest';
import {
  activationEnergyKJ,
  degreeHours,
  hoursAbove,
  meanKineticCelsius,
  PHARMACOPOEIA_KELVIN,
  rateRatio,
  timePerLog10,
  zFromActivationEnergy,
} from '../../src/engine/science/exposure.ts';

/** Rows of the thermal evidence sheet, section 11; their sources stand in its section 4. */

describe('mean kinetic temperature (USP <1160>, read; values derived with 10 000 K and 273.15)', () => {
  test('rows 56 to 58', () => {
    expect(meanKineticCelsius([20, 30])).toBeCloseTo(26.2599, 4);
    expect(meanKineticCelsius([15, 20, 25, 30])).toBeCloseTo(24.1041, 4);
    expect(meanKineticCelsius([40, 8], [4, 20])).toBeCloseTo(24.4568, 4);
    expect(meanKineticCelsius([5, 25])).toBeCloseTo(19.6977, 4);
    expect(meanKineticCelsius([2, 8, 25])).toBeCloseTo(17.0163, 4);
  });

  test('row 59, property: a constant stays itself', () => {
    expect(meanKineticCelsius([31.5, 31.5, 31.5])).toBeCloseTo(31.5, 9);
  });

  test('row 60: ratio 37 over 25 °C 3.6609, Q10 from 20 to 30 °C 3.0810', () => {
    expect(rateRatio(PHARMACOPOEIA_KELVIN, 37, 25)).toBeCloseTo(3.6609, 4);
    expect(rateRatio(PHARMACOPOEIA_KELVIN, 30, 20)).toBeCloseTo(3.081, 4);
  });
});

describe('thermal death time', () => {
  test('row 61, read: D150 4.5 min, z 10 gives D160 0.45 and D140 45 min', () => {
    expect(timePerLog10(4.5, 150, 10, 160)).toBeCloseTo(0.45, 12);
    expect(timePerLog10(4.5, 150, 10, 140)).toBeCloseTo(45, 10);
  });

  test('row 62, derived: a minute at 111.1 °C is 0.1 min at 121.1 °C, z 10', () => {
    expect(1 / timePerLog10(1, 121.1, 10, 111.1)).toBeCloseTo(0.1, 12);
  });

  test('row 68, derived: D40 14 d, z 15, 6 h at 45 °C and 60 °C', () => {
    expect(0.25 / timePerLog10(14, 40, 15, 45)).toBeCloseTo(0.03847, 5);
    expect(0.25 / timePerLog10(14, 40, 15, 60)).toBeCloseTo(0.38472, 5);
  });

  test('row 69, derived: 83.144 kJ/mol at 40 °C is z 22.58 K', () => {
    expect(zFromActivationEnergy(83.144, 40)).toBeCloseTo(22.58, 2);
  });
});

describe('vaccine vial monitor categories (WHO E6/IN5, 25 March 2002, read)', () => {
  const days = (energyKJ: number, daysAt37: number, celsius: number) =>
    daysAt37 * rateRatio((energyKJ * 1000) / 8.3144, 37, celsius);

  test('row 63: 45 d at 25 °C and 7 d at 37 °C use up VVM14', () => {
    expect(45 / 90 + 7 / 14).toBeCloseTo(1, 9);
    const energy = activationEnergyKJ(90 / 14, 37, 25);
    expect(45 / days(energy, 14, 25) + 7 / days(energy, 14, 37)).toBeCloseTo(1, 9);
  });

  test('row 64: 25 over 37 °C gives 119.3, 119.2, 119.2 kJ/mol', () => {
    expect(Math.abs(activationEnergyKJ(193 / 30, 37, 25) - 119.3)).toBeLessThan(0.1);
    expect(Math.abs(activationEnergyKJ(90 / 14, 37, 25) - 119.2)).toBeLessThan(0.1);
    expect(Math.abs(activationEnergyKJ(45 / 7, 37, 25) - 119.2)).toBeLessThan(0.1);
  });

  test('row 65: VVM14 with 119.22 kJ/mol lasts 8.99 d at 40 °C, 4.378 d at 45 °C, over 3 years at 5 °C', () => {
    expect(Math.abs(days(119.22, 14, 40) - 8.99)).toBeLessThan(0.002);
    expect(Math.abs(days(119.22, 14, 45) - 4.378)).toBeLessThan(0.002);
    expect(Math.abs(days(119.22, 14, 5) / 365.25 - 7.82)).toBeLessThan(0.01);
  });

  test('row 66: VVM2, 2 d at 37 and 225 d at 5 °C, is 105.86 kJ/mol', () => {
    expect(activationEnergyKJ(225 / 2, 37, 5)).toBeCloseTo(105.86, 2);
  });
});

describe('degree hours, hours above', () => {
  test('row 67, derived by straight lines between hourly samples', () => {
    const samples = [28, 31, 35, 41, 39, 33];
    expect(degreeHours(samples, 1, 30)).toBeCloseTo(27.1667, 4);
    expect(hoursAbove(samples, 1, 30)).toBeCloseTo(4.3333, 4);
    expect(degreeHours(samples, 1, 40)).toBeCloseTo(0.3333, 4);
    expect(hoursAbove(samples, 1, 40)).toBeCloseTo(0.6667, 4);
  });
});
