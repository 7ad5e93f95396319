import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/** Go or wait: a zone's inoculant is held until so much rain has fallen in three days, then goes out so many days later. */
export const RELEASE_RULE: { readonly mm: Sourced<number>; readonly leadDays: Sourced<number> } = {
  mm: sourced(20, 'read', 'the amount of the onset rule of the climate-service map rooms, 20 mm in three days'),
  leadDays: sourced(2, 'assumed', 'a day to tell the community and load, a day for roads to drain'),
};
