import { isoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import { dayNumber } from '../../../../src/engine/vocabulary/units.ts';
import {
  at,
  decide,
  emptyTable,
  giveNothing,
  grantOf,
  heldBack,
  kindOf,
  later,
  onFirst,
  productOf,
  type Spoil,
  scale,
  set,
} from './spoil.ts';

export const STOCK_SPOILS: readonly Spoil[] = [
  {
    name: 'more packs than the lot holds',
    code: 'E8401',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.packs,
        () => true,
        (i) => set(p.allocation.grants.packs, i, at(s.lots, at(p.allocation.grants.lot, i)).packs + 1),
      ),
  },
  heldBack('packs of an expired lot', 'expired'),
  heldBack('packs of a lot that expires before sowing', 'expires-before-sowing'),
  heldBack('packs of a lot on hold', 'on-hold'),
  heldBack('packs of an awaited lot', 'awaiting'),
  heldBack('packs of a lot below the minimum count', 'count-below-minimum'),
  heldBack('packs of a lot below the minimum germination', 'germination-below-minimum'),
  heldBack('packs of treated seed', 'treated-seed-not-for-inoculant'),
  {
    name: 'packs of a product for another crop',
    code: 'E8403',
    spoil: (p, s) => {
      const { grants } = p.allocation;
      for (let lot = 0; lot < s.lots.length; lot++) {
        const product = productOf(s, lot);
        const isOther = (own: number, i: number) =>
          kindOf(s, own) === product?.kind && !product?.crops.includes(at(s.crops, at(grants.crop, i)));
        if (onFirst(grants.lot, isOther, (i) => set(grants.lot, i, lot))) return true;
      }
      return false;
    },
  },
  {
    name: 'reserve eaten',
    code: 'E8404',
    spoil: (p) => {
      const { packsReserved, packsOffered } = p.allocation.lots;
      return onFirst(
        packsReserved,
        (packs) => packs > 0,
        (i) => {
          set(packsOffered, i, at(packsOffered, i) + at(packsReserved, i));
          set(packsReserved, i, 0);
        },
      );
    },
  },
  {
    name: 'a sound lot said to be held back',
    code: 'E8405',
    spoil: (p) =>
      onFirst(
        p.allocation.lots.reasons,
        (reasons) => reasons.length === 0,
        (i) => set(p.allocation.lots.reasons, i, ['on-hold']),
      ),
  },
  {
    name: 'a lot on hold said to be sound',
    code: 'E8405',
    spoil: (p) =>
      onFirst(
        p.allocation.lots.reasons,
        (reasons) => reasons.length > 0,
        (i) => set(p.allocation.lots.reasons, i, []),
      ),
  },
  {
    name: 'a stored lot said to be as alive as when it was tested, and a tenth more',
    code: 'E8405',
    spoil: (p) =>
      onFirst(
        p.allocation.lots.countPerG,
        (count) => count !== null,
        (i) => set(p.allocation.lots.countPerG, i, 1.1 * (at(p.allocation.lots.countPerG, i) ?? 0)),
      ),
  },
  {
    name: 'kilograms of a grant doubled',
    code: 'E8406',
    spoil: (p) =>
      onFirst(
        p.allocation.grants.kg,
        (kg) => kg > 0,
        (i) => scale(p.allocation.grants.kg, i, 2),
      ),
  },
  {
    name: 'packs said to coat twice the seed',
    code: 'E8407',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.lot,
        (lot) => kindOf(s, lot) === 'inoculant',
        (i) => scale(p.allocation.grants.servesSeedKg, i, 2),
      ),
  },
  {
    name: 'share met inflated',
    code: 'E8408',
    spoil: (p) =>
      onFirst(
        p.allocation.shares.seedShare,
        (share) => share < 0.99,
        (i) => set(p.allocation.shares.seedShare, i, 1),
      ),
  },
  {
    name: 'inoculated share inflated',
    code: 'E8408',
    spoil: (p) =>
      onFirst(
        p.allocation.shares.inoculantShare,
        (share) => share < 0.99,
        (i) => set(p.allocation.shares.inoculantShare, i, 1),
      ),
  },
  {
    name: 'one community given twice its need',
    code: 'E8409',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.lot,
        (lot, i) => kindOf(s, lot) === 'inoculant' && at(p.allocation.grants.packs, i) > 2,
        (i) => set(p.allocation.grants.packs, i, at(p.allocation.grants.packs, i) * 3),
      ),
  },
  {
    name: 'a forbidden commodity given',
    code: 'E8410',
    spoil: (p, s, d) => {
      const cell = grantOf(p, s, 'seed');
      return cell
        ? {
            decisions: decide(d, { kind: 'forbid', communityId: cell.communityId, crop: cell.crop, commodity: 'seed' }),
          }
        : false;
    },
  },
  {
    name: 'a forbidden lot given',
    code: 'E8410',
    spoil: (p, s, d) => {
      const cell = grantOf(p, s, 'inoculant');
      if (!cell) return false;
      const lotId = at(s.lots, at(p.allocation.grants.lot, cell.grant)).id;
      return {
        decisions: decide(d, {
          kind: 'forbid',
          communityId: cell.communityId,
          crop: cell.crop,
          commodity: 'inoculant',
          lotId,
        }),
      };
    },
  },
  {
    name: 'a cap passed over',
    code: 'E8410',
    spoil: (p, s, d) => {
      const cell = grantOf(p, s, 'inoculant');
      return cell
        ? {
            decisions: decide(d, {
              kind: 'cap',
              communityId: cell.communityId,
              crop: cell.crop,
              commodity: 'inoculant',
              share: 0.01,
            }),
          }
        : false;
    },
  },
  {
    name: 'a lazy plan that gives nothing',
    code: 'E8411',
    spoil: (p) => {
      giveNothing(p, 'stock-short');
      return true;
    },
  },
  {
    name: 'shortfalls hidden',
    code: 'E8412',
    spoil: (p) => p.allocation.shortfalls.shareRow.length > 0 && emptyTable(p.allocation.shortfalls),
  },
  {
    name: 'a shortfall understated',
    code: 'E8412',
    spoil: (p) =>
      onFirst(
        p.allocation.shortfalls.shortKg,
        (kg) => kg > 1,
        (i) => scale(p.allocation.shortfalls.shortKg, i, 0.5),
      ),
  },
  {
    name: 'a lazy plan that blames the road',
    code: 'E8413',
    spoil: (p) => {
      giveNothing(p, 'not-delivered');
      return true;
    },
  },
  {
    name: 'an order said to come earlier than the supplier can send it',
    code: 'E8414',
    spoil: (p) =>
      onFirst(
        p.allocation.orders.arrives,
        () => true,
        (i) => set(p.allocation.orders.arrives, i, later(at(p.allocation.orders.arrives, i), -3)),
      ),
  },
  {
    name: 'a purchase that misses the season',
    code: 'E8414',
    spoil: (p, s) =>
      onFirst(
        p.allocation.orders.packs,
        (packs) => packs > 0,
        (i) => set(p.allocation.orders.arrives, i, isoDate(dayNumber(s.planning.to + 300))),
      ),
  },
  {
    name: 'an order at half its price',
    code: 'E8415',
    spoil: (p) =>
      onFirst(
        p.allocation.orders.cost,
        (cost) => cost !== null && cost > 1,
        (i) => set(p.allocation.orders.cost, i, (at(p.allocation.orders.cost, i) ?? 0) / 2),
      ),
  },
  {
    name: 'more inoculant ordered at once than the cool store has room for',
    code: 'E8416',
    spoil: (p) =>
      onFirst(
        p.allocation.orders.packsAtOnce,
        (packs) => packs !== null,
        (i) => set(p.allocation.orders.packsAtOnce, i, 1e6),
      ),
  },
  {
    name: 'ten times the seed ordered that is short',
    code: 'E8417',
    spoil: (p, s) => {
      const { packsWanted, product } = p.allocation.orders;
      return onFirst(
        product,
        (of, i) => s.products[of]?.kind === 'seed' && at(packsWanted, i) > 0,
        (i) => set(packsWanted, i, at(packsWanted, i) * 10 + 1000),
      );
    },
  },
  {
    name: 'nothing ordered though seed is short and could come',
    code: 'E8417',
    spoil: (p) =>
      p.allocation.shortfalls.reason.includes('stock-short') &&
      p.allocation.orders.product.length > 0 &&
      emptyTable(p.allocation.orders),
  },
  {
    name: 'goods said to have been handed over before that never were',
    code: 'E8413',
    spoil: (p) =>
      onFirst(
        p.allocation.shortfalls.reason,
        (reason, i) => reason === 'stock-short' && at(p.allocation.shortfalls.shortKg, i) > 10,
        (i) => set(p.allocation.shortfalls.reason, i, 'handed-over-before'),
      ),
  },
  {
    name: 'packs on hold said not to be',
    code: 'E8405',
    spoil: (p) =>
      onFirst(
        p.allocation.lots.packsHeld,
        (packs) => packs > 0,
        (i) => set(p.allocation.lots.packsHeld, i, 0),
      ),
  },
  {
    name: 'hand-overs recorded that never were',
    code: 'E8014',
    spoil: (p) => {
      const { date, community, lot, packs, returnedPacks, sownOn } = p.handovers as {
        -readonly [Column in keyof typeof p.handovers]: unknown[];
      };
      [date, community, lot, packs, returnedPacks, sownOn].forEach((column, i) => {
        column.push(['2026-11-01', 0, 0, 1, 0, null][i]);
      });
      return true;
    },
  },
];
