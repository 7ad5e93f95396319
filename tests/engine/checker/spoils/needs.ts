import { onFirst, type Spoil, scale, set } from './spoil.ts';

export const NEEDS_SPOILS: readonly Spoil[] = [
  {
    name: 'planned hectares changed',
    code: 'E8301',
    spoil: (p) =>
      onFirst(
        p.needs.plannedHa,
        (ha) => ha > 0,
        (i) => scale(p.needs.plannedHa, i, 0.99),
      ),
  },
  {
    name: 'a need left out',
    code: 'E8302',
    spoil: (p) =>
      p.needs.crop.length > 0 && (Object.values(p.needs) as unknown[][]).every((column) => column.pop() !== undefined),
  },
  {
    name: 'a need counted twice',
    code: 'E8302',
    spoil: (p) =>
      p.needs.crop.length > 0 && (Object.values(p.needs) as unknown[][]).every((column) => column.push(column[0]) > 0),
  },
  {
    name: 'seed need 1 % lower',
    code: 'E8303',
    spoil: (p) =>
      onFirst(
        p.needs.seedKg,
        (kg) => kg > 1,
        (i) => scale(p.needs.seedKg, i, 0.99),
      ),
  },
  {
    name: 'own seed ignored',
    code: 'E8304',
    spoil: (p) =>
      onFirst(
        p.needs.ownSeedKg,
        (kg) => kg > 0,
        (i) => set(p.needs.ownSeedKg, i, 0),
      ),
  },
  {
    name: 'inoculant need 1 % lower',
    code: 'E8305',
    spoil: (p) =>
      onFirst(
        p.needs.inoculantG,
        (g) => g > 10,
        (i) => scale(p.needs.inoculantG, i, 0.99),
      ),
  },
  {
    name: 'packs needed halved',
    code: 'E8306',
    spoil: (p) =>
      onFirst(
        p.needs.packsNeeded,
        (packs) => packs > 0,
        (i) => scale(p.needs.packsNeeded, i, 0.5),
      ),
  },
  {
    name: 'water nought',
    code: 'E8307',
    spoil: (p) =>
      onFirst(
        p.needs.waterL,
        (litres) => litres > 0,
        (i) => set(p.needs.waterL, i, 0),
      ),
  },
];
