import type { Plan } from '../../engine/index.ts';
import { idAt } from './id-at.ts';

/** Name of a consignment for people and files: community, kind of goods and depot, of which there is one consignment. */
export function consignmentName(
  ids: Plan['ids'],
  consignments: Plan['allocation']['consignments'],
  consignment: number,
): string {
  const community = idAt(ids.communities, consignments.community[consignment]) ?? '';
  const depot = idAt(ids.depots, consignments.depot[consignment]) ?? '';
  return `${community}/${consignments.group[consignment] ?? ''}/${depot}`;
}
