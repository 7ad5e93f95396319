import { giveNothing, leaveAllBehind, type Spoil } from './spoil.ts';

export const LAZY_SPOILS: readonly Spoil[] = [
  {
    name: 'a lazy delivery that serves nothing',
    code: 'E8911',
    spoil: (p) => {
      leaveAllBehind(p);
      return true;
    },
  },
  {
    name: 'loads blamed on their weight',
    code: 'E8912',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('heavier-than-any-vehicle');
      return true;
    },
  },
  {
    name: 'loads blamed on the road',
    code: 'E8912',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('not-reachable');
      return true;
    },
  },
  {
    name: 'loads blamed on a decision that nobody took',
    code: 'E8912',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('decision');
      return true;
    },
  },
  {
    name: 'loads blamed on a window that is open',
    code: 'E8911',
    spoil: (p) => {
      leaveAllBehind(p);
      p.delivery.unserved.reason.fill('window-missed');
      return true;
    },
  },
  {
    name: 'an empty plan',
    code: 'E8302',
    spoil: (p) => {
      giveNothing(p, 'stock-short');
      for (const table of [p.needs, p.allocation.shares, p.allocation.shortfalls, p.outcomes.crops, p.outcomes.zones])
        for (const column of Object.values(table) as unknown[][]) column.length = 0;
      p.allocation.proofs = [];
      return true;
    },
  },
];
