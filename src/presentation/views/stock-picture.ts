import type { Plan, Scenario } from '../../engine/index.ts';
import { localNumber, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { clearOfDepots } from './clear-labels.ts';
import { depotSymbols, EMPTY_PICTURE, type MapPicture, type MapSymbol, shareTone, zoneLabels } from './map-view.ts';
import { groupParts, landParts, landShare, sumLand } from './stock-land.ts';

/** Share of planned land with seed and inoculant: by community as tones, by zone in print; depots by what they may give. */
export function stockPicture(plan: Plan, scenario: Scenario, words: Words): MapPicture {
  const parts = landParts(plan);
  const byCommunity = groupParts(parts, ({ community }) => community);
  const byZone = groupParts(parts, ({ zone }) => zone);
  const handed = communitiesHandedGoods(plan);
  const shares = scenario.communities.map((_, community) => {
    const own = byCommunity.get(community);
    return own === undefined ? null : landShare(sumLand(own), 'inoculant');
  });
  const isBare = shares.map((share, community) => share === 0 && !handed.has(community));
  const symbols = depotsByPacks(plan, scenario);
  const labels = zoneLabels(scenario, (zone) => {
    const own = byZone.get(zone);
    if (own === undefined) return null;
    return withUnit(localNumber(wholePercent(landShare(sumLand(own), 'inoculant')), words), '%');
  });
  return {
    ...EMPTY_PICTURE,
    fills: shares.map((share, community) => (isBare[community] ? null : shareTone(share))),
    hatches: isBare.map((bare) => (bare ? 'nothing' : null)),
    labels: clearOfDepots(labels, symbols, scenario),
    symbols,
  };
}

function communitiesHandedGoods({ allocation: { consignments }, delivery }: Plan): Set<number> {
  const loads = delivery.stops.loads.flat();
  return new Set(loads.map((load) => consignments.community[delivery.loads.consignment[load] ?? -1] ?? -1));
}

const [SMALLEST, LARGEST] = [13, 26];

/** Depots whose area grows with the packs and bags that they may give. */
function depotsByPacks({ allocation }: Plan, scenario: Scenario): MapSymbol[] {
  const packs = scenario.depots.map(({ id }) =>
    scenario.lots.reduce(
      (sum, { depotId }, lot) => sum + (depotId === id ? (allocation.lots.packsOffered[lot] ?? 0) : 0),
      0,
    ),
  );
  const most = Math.max(1, ...packs);
  return depotSymbols(scenario).map((symbol, depot) => ({
    ...symbol,
    size: Math.max(SMALLEST, LARGEST * Math.sqrt((packs[depot] ?? 0) / most)),
  }));
}
