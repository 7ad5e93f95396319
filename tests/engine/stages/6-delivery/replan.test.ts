import { describe, expect, test } from 'vitest';
import { type Decision, type Delivery, dayNumber, isoDate } from '../../../../src/engine/index.ts';
import { DeliveryDesk } from '../../../../src/engine/stages/6-delivery/delivery-desk.ts';
import { beginDispatch, planDelivery } from '../../../../src/engine/stages/6-delivery/plan-delivery.ts';
import { assertSound } from './assert-sound.ts';
import { buildNetwork, FIRST_DAY, type Network, type NetworkSpec, planNetwork } from './small-network.ts';

const SPEC: NetworkSpec = {
  days: 3,
  places: [
    { x: 20, y: 0 },
    { x: 25, y: 5 },
    { x: -20, y: 10 },
    { x: -25, y: 0 },
  ],
  vehicles: [{}, { costPerKm: 1.5 }],
  policy: { promisePrice: 15 },
  consignments: [0, 1, 2, 3].map((place) => ({ place, group: 'dry' as const, seedPacks: 10 })),
};
const date = (day: number) => isoDate(dayNumber(FIRST_DAY + day));

function replan(network: Network, present: Delivery, decisions: readonly Decision[], iterations = 400): Delivery {
  const { scenario, places, season, allocation } = network;
  const settings = { seed: 1, iterations, stop: null, progress: null };
  const earlier = { allocation, delivery: present, as: 'told' } as const;
  const decided = { ...network.decisions, decisions };
  return planDelivery(scenario, decided, places, season, allocation, settings, earlier).result;
}

/** Day and vehicle of each consignment. */
const placesOf = (delivery: Delivery) =>
  new Map(
    delivery.vehicleDays.flatMap(({ vehicle, day, trips }) =>
      trips.flatMap(({ stops }) =>
        stops.flatMap(({ loads }) =>
          loads.map((load) => [delivery.loads[load]?.consignment ?? -1, { vehicle, day }] as const),
        ),
      ),
    ),
  );

describe('planning again from the plan that people know', () => {
  const network = buildNetwork(SPEC);
  const present = planNetwork(network).result;

  test('changes nothing where nothing has changed', () => {
    expect(placesOf(replan(network, present, []))).toEqual(placesOf(present));
  });

  test('a vehicle away: its goods come otherwise, nobody is left behind, days are kept where that costs less than a promise', () => {
    const used = present.vehicleDays[0];
    const away: Decision = {
      kind: 'vehicle-away',
      vehicleId: `V${used?.vehicle}`,
      from: date(used?.day ?? 0),
      to: date(used?.day ?? 0),
    };
    const again = replan(network, present, [away]);
    expect(again.unserved).toEqual([]);
    assertSound({ ...network, decisions: { ...network.decisions, decisions: [away] } }, again);
    expect(again.vehicleDays.some(({ vehicle, day }) => vehicle === used?.vehicle && day === used?.day)).toBe(false);
    // The other vehicle costs half as much more over some 105 km: 52, less than four promises at 15.
    expect(placesOf(again)).toEqual(new Map([...placesOf(present)].map(([c, { day }]) => [c, { vehicle: 1, day }])));
  });

  test('a higher promise price never breaks more promises', () => {
    const away = (vehicle: number): Decision => ({
      kind: 'vehicle-away',
      vehicleId: `V${vehicle}`,
      from: date(0),
      to: date(1),
    });
    const broken = [0, 5, 50, 500].map((promisePrice) => {
      const priced = buildNetwork({ ...SPEC, policy: { promisePrice } });
      const again = replan(priced, present, [away(present.vehicleDays[0]?.vehicle ?? 0)]);
      return [...placesOf(again)].filter(([c, { day }]) => placesOf(present).get(c)?.day !== day).length;
    });
    for (let i = 1; i < broken.length; i++) expect(broken[i]).toBeLessThanOrEqual(broken[i - 1] as number);
  });

  test('a lock is kept, and two that contradict each other leave the load behind with the reason', () => {
    const lock = (day: number): Decision => ({
      kind: 'lock',
      communityId: 'C0',
      commodity: 'seed',
      vehicleId: 'V1',
      date: date(day),
    });
    expect(placesOf(replan(network, present, [lock(2)])).get(0)).toEqual({ vehicle: 1, day: 2 });
    const away: Decision = { kind: 'vehicle-away', vehicleId: 'V1', from: date(2), to: date(2) };
    const again = replan(network, present, [lock(2), away]);
    expect(again.unserved.map(({ load, reason }) => [again.loads[load]?.consignment, reason])).toEqual([
      [0, 'decision'],
    ]);
  });
});

describe('the desk', () => {
  const network = buildNetwork(SPEC);
  const present = planNetwork(network).result;
  const { scenario, decisions, places, season, allocation } = network;
  const begin = () =>
    beginDispatch(scenario, decisions, places, season, allocation, { allocation, delivery: present, as: 'told' });

  test('a move costs what the same plan with the load there costs more, promise included; the plan stays as it was', () => {
    const { state, cut } = begin();
    const desk = new DeliveryDesk(scenario, state, cut);
    const before = state.rows.cost;
    const from = placesOf(present).get(0);
    const to = { vehicle: 1, day: from?.day === 2 ? 1 : 2 };
    const priced = desk.priceMove({ consignment: 0, ...to });
    expect(priced.reason).toBeNull();
    expect(priced.otherDay).toBe(true);
    expect(state.rows.cost).toBe(before);
    // Alone with the second vehicle: 20 a day and 1.5 a kilometre over 40 km, less what the first trip saves, and a promise.
    const stays = present.vehicleDays
      .flatMap(({ trips }) => trips)
      .find(({ stops }) => stops.some(({ loads }) => loads.some((l) => present.loads[l]?.consignment === 0)));
    expect(stays?.stops.length).toBeGreaterThan(1);
    expect((priced.cost as number) - (priced.money as number)).toBeCloseTo(15, 6);
    expect(desk.priceMove({ consignment: 0, ...to })).toEqual(priced);
  });

  test('prices what is handed over together as one: inoculant does not wait for seed that comes along', () => {
    const spec: NetworkSpec = {
      ...SPEC,
      vehicles: [{}],
      consignments: [
        { place: 0, group: 'dry', seedPacks: 10 },
        { place: 0, group: 'inoculant', sachets: 5 },
      ],
    };
    const onTuesday = (['seed', 'inoculant'] as const).map(
      (commodity): Decision => ({ kind: 'lock', communityId: 'C0', commodity, vehicleId: 'V0', date: date(1) }),
    );
    const told = planNetwork(buildNetwork({ ...spec, decisions: onTuesday })).result;
    expect(placesOf(told)).toEqual(new Map([0, 1].map((consignment) => [consignment, { vehicle: 0, day: 1 }])));
    const { scenario, decisions, places, season, allocation } = buildNetwork(spec);
    const { state, cut } = beginDispatch(scenario, decisions, places, season, allocation, {
      allocation,
      delivery: told,
      as: 'told',
    });
    const desk = new DeliveryDesk(scenario, state, cut);
    const monday = { vehicle: 0, day: 0 };
    expect(desk.priceMove({ consignment: 1, ...monday }).reason).toBe('seed-not-delivered');
    const together = desk.priceMove({ consignment: 0, along: [1], ...monday });
    expect(together).toMatchObject({ reason: null, otherDay: true, leftBehind: [] });
    // The same way on another day: no money, and the two promises.
    expect(together.money).toBeCloseTo(0, 6);
    expect(together.cost).toBeCloseTo(2 * 15, 6);
  });

  test('says why a move cannot be', () => {
    const { state, cut } = begin();
    const desk = new DeliveryDesk(scenario, state, cut);
    expect(desk.priceMove({ consignment: 0, vehicle: 0, day: 9 }).reason).toBe('no-vehicle-day-left');
    const small = buildNetwork({ ...SPEC, vehicles: [{}, { payloadKg: 100 }] });
    const full = beginDispatch(small.scenario, decisions, places, season, allocation, {
      allocation,
      delivery: present,
      as: 'told',
    });
    const reason = new DeliveryDesk(small.scenario, full.state, full.cut).priceMove({
      consignment: 0,
      vehicle: 1,
      day: 0,
    }).reason;
    expect(reason).toBe('heavier-than-any-vehicle');
  });
});
