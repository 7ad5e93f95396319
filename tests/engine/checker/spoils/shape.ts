import { change, onFirst, type Spoil, set } from './spoil.ts';

export const SHAPE_SPOILS: readonly Spoil[] = [
  { name: 'another format name', code: 'E8001', spoil: (p) => change(p, { format: 'another/1' as never }) },
  { name: 'nothing at all', code: 'E8001', spoil: () => ({ plan: null }) },
  { name: 'text instead of a plan', code: 'E8001', spoil: () => ({ plan: 'a plan' }) },
  { name: 'a list instead of a plan', code: 'E8001', spoil: () => ({ plan: [] }) },
  { name: 'a part missing', code: 'E8002', spoil: (p) => Reflect.deleteProperty(p, 'delivery') },
  { name: 'a column missing', code: 'E8002', spoil: (p) => Reflect.deleteProperty(p.allocation.grants, 'packs') },
  { name: 'columns of unequal length', code: 'E8003', spoil: (p) => p.needs.seedKg.pop() !== undefined },
  {
    name: 'NaN for a number',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.needs.seedKg,
        () => true,
        (i) => set(p.needs.seedKg, i, Number.NaN),
      ),
  },
  {
    name: 'text for a number',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.needs.seedKg,
        () => true,
        (i) => set(p.needs.seedKg, i, '600' as never),
      ),
  },
  {
    name: 'negative packs',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.packs,
        () => true,
        (i) => set(p.allocation.grants.packs, i, -1),
      ),
  },
  {
    name: 'half a pack',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.packs,
        () => true,
        (i) => set(p.allocation.grants.packs, i, 0.5),
      ),
  },
  {
    name: 'a date that does not exist',
    code: 'E8004',
    spoil: (p) =>
      onFirst(
        p.delivery.trips.date,
        () => true,
        (i) => set(p.delivery.trips.date, i, '2026-02-30'),
      ),
  },
  {
    name: 'an index outside its list',
    code: 'E8005',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.lot,
        () => true,
        (i) => set(p.allocation.grants.lot, i, 9999),
      ),
  },
  {
    name: 'a negative index',
    code: 'E8005',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.trip,
        () => true,
        (i) => set(p.delivery.stops.trip, i, -1),
      ),
  },
  { name: 'hash of another scenario', code: 'E8011', spoil: (p) => change(p, { scenarioSha256: 'f'.repeat(64) }) },
  {
    name: 'decisions changed since',
    code: 'E8012',
    spoil: (_, __, d) => ({ decisions: { ...d, sha256: 'e'.repeat(64) } }),
  },
  {
    name: 'ids swapped',
    code: 'E8013',
    spoil: (p) => p.ids.communities.length > 1 && p.ids.communities.reverse().length > 0,
  },
  {
    name: 'another season year',
    code: 'E8014',
    spoil: (p) => change(p.scenario, { seasonYear: p.scenario.seasonYear + 1 }),
  },
];
