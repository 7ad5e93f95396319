import type { UnservedReason } from '../../../engine/index.ts';

/** Why one vehicle cannot bring the goods of a stop on one day. */
const BARRED: Readonly<Record<UnservedReason, string>> = {
  'not-reachable': 'it leaves from another depot, or no road takes it there',
  'heavier-than-any-vehicle': 'one pack is heavier than it may carry',
  'no-cold-box': 'it has no cold box large enough',
  'no-time-in-shift': 'its crew would not be back within the shift',
  'no-vehicle-day-left': 'it does not run on that day, or has no room left',
  'too-hot': 'packs could reach 40 °C on the way',
  'hours-above-storage': 'packs would be above the storage limit longer than is allowed',
  'window-missed': 'it would come too late to be of use',
  'seed-not-delivered': 'inoculant would come before its seed',
  'market-day-only': 'it is no market day',
  'point-closed': 'the hand-over place is closed when it could come',
  'overnight-trip-needed': 'there and back cannot be driven in one day',
  decision: 'a decision, or the dates of the goods, keep it off that day',
  'costs-more-than-it-gives': 'the trip would cost more than it gives',
};

/** Words of a stop that is taken to another vehicle or day. */
export const MOVE_WORDING = {
  // taken by hand
  grip: (place: string) => `Drag ${place} onto another vehicle or day`,
  hint: 'Drag a stop by its number onto another vehicle or day, or use Move: what it costs is told before anything is decided.',
  boardTitle: (place: string) => `${place} to another vehicle or day`,
  vehiclesOn: (date: string) => `Another vehicle on ${date}`,
  daysOf: (vehicle: string) => `Another day with ${vehicle}`,
  key: (currency: string) => `+ dearer, − cheaper, ${currency}, worth and promises counted; × cannot be`,
  isHere: 'now',
  isAsked: '…',
  isBarred: '×',
  to: (vehicle: string, date: string) => `${vehicle}, ${date}`,
  nowhere: 'Over a vehicle or a day, what the move costs is told here.',
  stays: 'It is here now.',
  escape: 'Escape leaves it where it is.',

  // what it costs
  asking: 'Being priced; the first time takes some seconds.',
  noAnswer: 'No price can be told while the plan is being made, or after its files changed.',
  not: (reason: string) => `Not possible as all else stands: ${reason}.`,
  barred: BARRED,
  dearer: (cost: string) => `${cost} dearer in all`,
  cheaper: (cost: string) => `${cost} cheaper in all`,
  same: 'Neither dearer nor cheaper in all',
  money: (cost: string) => `money ${cost}`,
  promises: (cost: string) => `another day than told ${cost}`,
  worth: (cost: string) => `worth and goods that wait for these ${cost}`,
  leavesOne: 'One other hand-over would find no place.',
  leaves: (count: string) => `${count} other hand-overs would find no place.`,

  // decided
  day: 'day',
  ask: 'Ask its price',
  moveIt: 'Move it',
  leaveIt: 'Leave it',
  movesTo: (vehicle: string, date: string) => `Moves to ${vehicle}, ${date}, when planned again`,
} as const;
