import { at, onFirst, type Spoil, scale, set } from './spoil.ts';

export const BALANCE_SPOILS: readonly Spoil[] = [
  {
    name: 'a grant not sent',
    code: 'E8421',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.grants,
        (rows) => rows.length > 0,
        (i) => at(p.allocation.consignments.grants, i).pop(),
      ),
  },
  {
    name: 'a grant sent twice',
    code: 'E8421',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.grants,
        (rows) => rows.length > 0,
        (i) => at(p.allocation.consignments.grants, i).push(at(at(p.allocation.consignments.grants, i), 0)),
      ),
  },
  {
    name: 'a consignment from a depot without the lot',
    code: 'E8422',
    spoil: (p, s) =>
      s.depots.length > 1 &&
      onFirst(
        p.allocation.consignments.depot,
        () => true,
        (i) => set(p.allocation.consignments.depot, i, (at(p.allocation.consignments.depot, i) + 1) % s.depots.length),
      ),
  },
  {
    name: 'seed among the inoculant',
    code: 'E8422',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.group,
        (group) => group === 'dry',
        (i) => set(p.allocation.consignments.group, i, 'inoculant'),
      ),
  },
  {
    name: 'litres of a consignment halved',
    code: 'E8422',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.coolLitres,
        (litres) => litres > 0,
        (i) => scale(p.allocation.consignments.coolLitres, i, 0.5),
      ),
  },
  {
    name: 'days of use cut short',
    code: 'E8422',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.group,
        (group) => group === 'dry',
        (i) => set(p.allocation.consignments.latest, i, p.scenario.planningFrom),
      ),
  },
  {
    name: 'packs left off the loads',
    code: 'E8423',
    spoil: (p) =>
      onFirst(
        p.delivery.loads.packs,
        (packs) => at(packs, 0) > 1,
        (i) => set(at(p.delivery.loads.packs, i), 0, at(at(p.delivery.loads.packs, i), 0) - 1),
      ),
  },
  {
    name: 'a load delivered twice',
    code: 'E8424',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.loads,
        (loads) => loads.length > 0,
        (i) => at(p.delivery.stops.loads, i).push(at(at(p.delivery.stops.loads, i), 0)),
      ),
  },
  {
    name: 'a load forgotten',
    code: 'E8424',
    spoil: (p) =>
      onFirst(
        p.delivery.stops.loads,
        (loads) => loads.length > 0,
        (i) => at(p.delivery.stops.loads, i).pop(),
      ),
  },
  {
    name: 'a load delivered to another community',
    code: 'E8425',
    spoil: (p) =>
      p.ids.places.length > 1 &&
      onFirst(
        p.delivery.stops.place,
        () => true,
        (i) => set(p.delivery.stops.place, i, (at(p.delivery.stops.place, i) + 1) % p.ids.places.length),
      ),
  },
  {
    name: 'kilograms of a load halved',
    code: 'E8426',
    spoil: (p) =>
      onFirst(
        p.delivery.loads.kg,
        (kg) => kg > 1,
        (i) => scale(p.delivery.loads.kg, i, 0.5),
      ),
  },
];
