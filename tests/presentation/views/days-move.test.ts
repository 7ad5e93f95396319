import { describe, expect, it } from 'vitest';
import type { Decision, MovePriced } from '../../../src/engine/index.ts';
import { planningDays } from '../../../src/presentation/views/days-axis.ts';
import { vehiclesOfDay } from '../../../src/presentation/views/days-fleet.ts';
import { decidedTarget, moveBoard, movePrice, moveQuestion } from '../../../src/presentation/views/days-move.ts';
import { consignmentsOfStop, stopGoods } from '../../../src/presentation/views/days-stops.ts';
import { movePriceText, signedCost } from '../../../src/presentation/views/move-price-text.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario } = stockCase('demo-district');
const days = planningDays(plan);
const stops = [...new Set(plan.delivery.trips.date)].flatMap((date) =>
  vehiclesOfDay(plan, scenario, date).flatMap(({ id, trips }) =>
    trips.flatMap((trip) => trip.stops.map((stop) => ({ stop, from: { vehicleId: id, date } }))),
  ),
);
const several = stops.find(({ stop }) => consignmentsOfStop(plan, stop).length > 1);
if (!several) throw new Error('no stop hands over several consignments');
const { stop, from } = several;

describe('the question about a moved stop', () => {
  it('names all that is handed over there at once, with the vehicle and the day as the plan counts them', () => {
    const asked = moveQuestion(plan, stop, from);
    expect([asked?.consignment, ...(asked?.along ?? [])]).toEqual(consignmentsOfStop(plan, stop));
    expect(plan.ids.vehicles[asked?.vehicle ?? -1]).toBe(from.vehicleId);
    expect(days[asked?.day ?? -1]?.iso).toBe(from.date);
  });

  it('asks for no day that nobody drives on', () => {
    const sunday = days.find(({ works }) => !works);
    expect(sunday).toBeDefined();
    expect(moveQuestion(plan, stop, { ...from, date: sunday?.iso ?? '' })?.day).toBe(-1);
  });
});

describe('what may be taken to', () => {
  const board = moveBoard(plan, scenario, from);

  it('are the vehicles of the same depot, its own among them', () => {
    const depotOf = (id: string) => scenario.vehicles.find((vehicle) => vehicle.id === id)?.depotId;
    const ids = board.vehicles.map(({ id }) => id);
    expect(ids).toContain(from.vehicleId);
    expect(ids).toEqual(plan.ids.vehicles.filter((id) => depotOf(id) === depotOf(from.vehicleId)));
    expect(ids.length).toBeLessThan(plan.ids.vehicles.length);
  });

  it('are all working days, in order, each under its weekday', () => {
    expect(board.weeks.flat().filter((day) => day !== null)).toEqual(days.filter(({ works }) => works));
    for (const week of board.weeks) {
      expect(week).toHaveLength(board.weekdays.length);
      week.forEach((day, place) => {
        if (day) expect(day.weekday).toBe(board.weekdays[place]);
      });
    }
  });
});

describe('the price of a moved stop', () => {
  const priced: MovePriced = {
    reason: null,
    cost: 100.6,
    money: 39.5,
    promisePrice: 20,
    otherDay: true,
    leftBehind: [],
  };
  const asked = { consignment: 1, along: [2], vehicle: 0, day: 0 };
  const text = (answer: Partial<MovePriced>) =>
    movePriceText(movePrice(asked, { ...priced, ...answer }), 'USD', english).replaceAll('\u00a0', ' ');

  it('adds up from money, a promise for each thing that comes on another day, and the rest', () => {
    expect(text({})).toBe(
      '101 USD dearer in all: money +40 USD, another day than told +40 USD, worth and goods that wait for these +21 USD.',
    );
  });

  it('has no promise where the day stays, and no money where nothing has a price', () => {
    expect(text({ otherDay: false, money: null, cost: -7 })).toBe(
      '7 USD cheaper in all: worth and goods that wait for these −7 USD.',
    );
    expect(text({ otherDay: false, money: 0, cost: 0.2 })).toContain('Neither dearer nor cheaper in all');
  });

  it('says who would find no place', () => {
    expect(text({ leftBehind: [4] })).toContain('One other hand-over would find no place.');
    expect(text({ leftBehind: [4, 5] })).toContain('2 other hand-overs would find no place.');
  });

  it('is the reason where the move cannot be, and nothing else', () => {
    expect(text({ reason: 'too-hot', cost: null, money: null })).toBe(
      'Not possible as all else stands: packs could reach 40 °C on the way.',
    );
  });

  it('is short with a sign, and without one where it rounds to nothing', () => {
    expect([1200, -8.4, 0.4, -0.4].map((cost) => signedCost(cost, english))).toEqual(['+1\u00a0200', '−8', '0', '0']);
  });
});

describe('a move that was decided', () => {
  const { locks } = stopGoods(plan, scenario, stop, from.vehicleId, from.date);
  const moved = (date: string) =>
    locks.map((lock): Decision => (lock.kind === 'lock' ? { ...lock, vehicleId: 'V', date } : lock));

  it('is told until the plan has followed it, and the last one counts', () => {
    expect(locks.length).toBeGreaterThan(0);
    expect(decidedTarget([], locks)).toBeNull();
    expect(decidedTarget(locks, locks)).toBeNull();
    expect(decidedTarget([...moved('2026-11-20'), ...moved('2026-11-21')], locks)).toEqual({
      vehicleId: 'V',
      date: '2026-11-21',
    });
    expect(decidedTarget([...moved('2026-11-20'), ...locks], locks)).toBeNull();
  });
});
