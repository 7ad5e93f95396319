import type { LotReason, ShortfallReason, UnreachableReason, UnservedReason } from '../../../engine/index.ts';

/** Why a lot is not given. */
export const LOT_REASON_WORDING: Readonly<Record<LotReason, string>> = {
  expired: 'past its expiry date',
  'expires-before-sowing': 'likely to expire before sowing: less than 9 chances in 10 to be sown in time',
  'on-hold': 'on hold until a named person clears it on stated evidence',
  awaiting: 'awaiting its test result',
  'count-below-minimum': 'fewer living rhizobia per gram than the minimum',
  'germination-below-minimum': 'germination below the minimum',
  'treated-seed-not-for-inoculant': 'treated seed whose label does not allow inoculant',
  'available-too-late': 'arrives after the last planning day',
  'no-crop-planned': 'no community plans a crop that it serves',
  'unknown-depot': 'stands at a depot that is not in the depots file',
};

/** Why a community gets less than its planned need. */
export const SHORTFALL_WORDING: Readonly<Record<ShortfallReason, string>> = {
  'stock-short': 'not enough stock for all; shared out by the chosen rule',
  'no-compatible-stock': 'no stock that fits this crop',
  'stock-elsewhere': 'the stock that fits lies at depots from which no vehicle reaches it',
  'no-seed-to-inoculate': 'no seed to inoculate',
  'handed-over-before': 'handed over before; counted as signed for, not again here',
  'not-reachable': 'no vehicle reaches the hand-over place',
  'not-delivered': 'could not be delivered',
  'window-missed': 'would come after the last useful day',
  decision: 'held back by a decision of the programme',
  'pack-rounding': 'less than one whole pack is missing',
};

/** Why a load is not served. */
export const UNSERVED_WORDING: Readonly<Record<UnservedReason, string>> = {
  'not-reachable': 'no vehicle reaches the hand-over place',
  'heavier-than-any-vehicle': 'one pack is heavier than any vehicle that reaches the place may carry',
  'no-cold-box': 'no vehicle that reaches the place carries a box large enough',
  'no-time-in-shift': 'there and back takes longer than a shift allows',
  'no-vehicle-day-left': 'every vehicle that could go is taken on every useful day',
  'too-hot': 'the pack could reach 40 °C on the way',
  'hours-above-storage': 'more hours above the storage limit on the label than the programme allows',
  'window-missed': 'cannot come while it is still of use',
  'seed-not-delivered': 'the seed it is meant for is not delivered',
  'market-day-only': 'only market days are allowed, and none is left that a vehicle can serve',
  'point-closed': 'the hand-over place is closed when a vehicle could come',
  'overnight-trip-needed': 'there and back cannot be driven in one day',
  decision: 'held back by a decision of the programme',
  'costs-more-than-it-gives': 'the trip would cost more than it gives',
};

/** Why no vehicle of a kind reaches a place. */
export const UNREACHABLE_WORDING: Readonly<Record<UnreachableReason, string>> = {
  'no-road-within-reach': 'no road open to the vehicle within 2 km',
  'road-piece-without-depot': 'the roads nearby do not join the roads of any depot',
  'no-way-there-and-back': 'one-way or closed roads leave no way there and back',
  'no-vehicle': 'there is no vehicle of this kind',
};
