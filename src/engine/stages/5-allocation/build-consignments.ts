import { exactSum } from '../../numerics/exact-sum.ts';
import { BOX_LITRES_PER_KG } from '../../reference/boxes.ts';
import { blendReachCurves } from '../../science/reach.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Consignment, ReachCurve } from '../../vocabulary/stage-results/allocation.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { Pick } from './allocate-commodity.ts';
import type { DemandRows } from './demand-rows.ts';
import type { GrantLine } from './list-grants.ts';
import type { ReachCurves } from './reach-curves.ts';

const LEAST_WEIGHT_HA = 1e-9;
const GROUPS = ['dry', 'inoculant', 'both', 'fertiliser'] as const;

/**
 * Puts together what moves: all goods of one group from one depot to one community. Sorted by community, depot, group. Fertiliser
 * stands by itself, however the rest is carried: it takes the room that is left and must hold nothing else up.
 * Packs that arrive after goods of the same group were promised stand apart, so that the promise does not wait for them.
 *
 * @param kept packs that the first round served
 */
export function buildConsignments(
  scenario: Scenario,
  places: Places,
  demand: DemandRows,
  lines: readonly GrantLine[],
  curves: ReachCurves,
  kept: readonly Pick[],
): Consignment[] {
  const depotIndex = new Map(scenario.depots.map(({ id }, d) => [id, d]));
  const arrival = (lot: number) => Math.max(0, (scenario.lots[lot]?.availableFrom ?? 0) - scenario.planning.from);
  const keyOf = (row: number, lot: number, group: Consignment['group']) =>
    `${demand.community[row]} ${scenario.lots[lot]?.depotId} ${scenario.policy.carry === 'apart' || group === 'fertiliser' ? group : 'both'}`;
  const groupOf = new Map<number, Consignment['group']>(
    lines.map(({ lot, product: { kind } }) => [lot, kind === 'inoculant' || kind === 'fertiliser' ? kind : 'dry']),
  );
  const promised = new Map<string, number>();
  for (const { row, lot } of kept) {
    const key = keyOf(row, lot, groupOf.get(lot) ?? 'dry');
    promised.set(key, Math.max(promised.get(key) ?? 0, arrival(lot)));
  }
  const parts = new Map<string, { community: number; depot: number; group: Consignment['group']; grants: number[] }>();
  lines.forEach(({ row, lot }, grant) => {
    const group = groupOf.get(lot) ?? 'dry';
    const key = keyOf(row, lot, group);
    const isLate = arrival(lot) > (promised.get(key) ?? Number.POSITIVE_INFINITY);
    const community = demand.community[row] as number;
    const depot = depotIndex.get(scenario.lots[lot]?.depotId ?? '') as number;
    const part = parts.get(`${key} ${isLate}`) ?? { community, depot, group, grants: [] };
    if (part.group !== group) part.group = 'both';
    part.grants.push(grant);
    parts.set(`${key} ${isLate}`, part);
  });
  return [...parts.values()]
    .map((part) => {
      const goods = part.grants.map((grant) => lines[grant] as GrantLine);
      const reach = reachOfGoods(demand, goods, curves);
      return {
        ...part,
        place: places.communityPlace[part.community] as number,
        ...weighGoods(goods),
        hectares: hectaresOfGoods(demand, goods),
        earliest: goods.reduce((day, { lot }) => Math.max(day, arrival(lot)), 0),
        latest: lastDayOfUse(reach),
        reach,
      };
    })
    .sort(
      (a, b) =>
        a.community - b.community ||
        a.depot - b.depot ||
        GROUPS.indexOf(a.group) - GROUPS.indexOf(b.group) ||
        a.earliest - b.earliest,
    );
}

function weighGoods(goods: readonly GrantLine[]) {
  const kgOf = ({ packs, product }: GrantLine) => (packs * product.packG) / 1000;
  const inoculant = goods.filter(({ product }) => product.kind === 'inoculant');
  const limits = goods.flatMap(({ product }) => (product.maxStorageC === null ? [] : [product.maxStorageC]));
  const prices = goods.map(({ packs, product }) =>
    product.pricePerPack === null ? null : packs * product.pricePerPack,
  );
  return {
    kg: exactSum(goods.map(kgOf)),
    coolLitres: exactSum(
      inoculant.map(
        ({ packs, product }) => packs * (product.litresPerPack ?? (product.packG / 1000) * BOX_LITRES_PER_KG.value),
      ),
    ),
    inoculantKg: exactSum(inoculant.map(kgOf)),
    maxStorageC: limits.length > 0 ? Math.min(...limits) : null,
    worth: prices.includes(null) ? null : exactSum(prices.map((price) => price ?? 0)),
  };
}

/** Hectares sown, inoculated or fertilised with the goods; where seed and inoculant ride together, of each crop the larger. */
function hectaresOfGoods(demand: DemandRows, goods: readonly GrantLine[]): number {
  const byRow = new Map<number, { seed: number; inoculant: number; fertiliser: number }>();
  for (const { row, product, servesSeedKg } of goods) {
    if (product.kind === 'sticker') continue;
    const sums = byRow.get(row) ?? { seed: 0, inoculant: 0, fertiliser: 0 };
    sums[product.kind] += servesSeedKg / (demand.kgPerHa[row] as number);
    byRow.set(row, sums);
  }
  return exactSum([...byRow.values()].map(({ seed, inoculant, fertiliser }) => Math.max(seed, inoculant, fertiliser)));
}

/** Reach of goods of several crops and zones: the mean of each one's, by the hectares it serves there. */
function reachOfGoods(demand: DemandRows, goods: readonly GrantLine[], curves: ReachCurves): ReachCurve {
  const weights = new Map<ReachCurve, number>();
  const serving = goods.filter(({ product }) => product.kind !== 'sticker');
  for (const { row, lot, product, servesSeedKg } of serving.length > 0 ? serving : goods) {
    const [community, crop] = [demand.community[row] as number, demand.crop[row] as number];
    // Packs beyond the need serve no hectares, but have to come in time too.
    const hectares = Math.max(servesSeedKg / (demand.kgPerHa[row] as number), LEAST_WEIGHT_HA);
    for (let k = demand.partOffsets[row] as number; k < (demand.partOffsets[row + 1] as number); k++) {
      const zone = demand.partZone[k] as number;
      const isInoculant = product.kind === 'inoculant';
      const curve = isInoculant ? curves.inoculant(zone, crop, lot, community) : curves.dry(zone, crop);
      weights.set(curve, (weights.get(curve) ?? 0) + hectares * (demand.partFraction[k] as number));
    }
  }
  const [[only] = []] = weights;
  return weights.size === 1 && only ? only : blendReachCurves([...weights.keys()], [...weights.values()]);
}

/** Last planning day on which handing over is still of use; the day before the first where none is. */
export function lastDayOfUse({ value, inTime, lossBreaks }: ReachCurve): number {
  let day = inTime.length - 1;
  while (day >= 0 && !((value[day * lossBreaks.length] as number) > 0)) day--;
  return day;
}
