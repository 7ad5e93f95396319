import type { Consignment } from '../../../vocabulary/stage-results/allocation.ts';

/**
 * Each community is trained once: with its inoculant, or with its dry goods where no inoculant is sent. The first of these
 * loads that finds a place on a vehicle carries the training. Fertiliser, which may come on any day, carries none.
 *
 * @returns per consignment, whether its loads may carry it
 */
export function carriesTraining(consignments: readonly Pick<Consignment, 'community' | 'group'>[]): boolean[] {
  const withInoculant = new Set(consignments.filter((c) => holdsInoculant(c)).map((c) => c.community));
  return consignments.map((c) => holdsInoculant(c) || (c.group === 'dry' && !withInoculant.has(c.community)));
}

const holdsInoculant = ({ group }: Pick<Consignment, 'group'>) => group === 'inoculant' || group === 'both';
