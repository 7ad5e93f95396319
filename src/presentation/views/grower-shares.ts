import type { Commodity, Plan, Scenario } from '../../engine/index.ts';
import { localNumber, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';

/** Share of need met as growers meet it: the mean over growers, not over hectares; 0 to 1. Null where nobody is counted. */
export interface GrowerShares {
  readonly all: number | null;
  readonly women: number | null;
  /** Growers of communities whose land per grower is below the district's middle. */
  readonly smallPlots: number | null;
  /** The middle: half the growers have less planned land, ha. */
  readonly middleHa: number | null;
}

interface Group {
  readonly share: number;
  readonly growers: number;
  readonly women: number | null;
  readonly haEach: number;
}

/** Every community's growers of each crop have the share that their community gets; women by their part of its farmers. */
export function growerShares(plan: Plan, scenario: Scenario, commodity: Commodity): GrowerShares {
  const groups = groupsOf(plan, scenario, commodity);
  const middleHa = middleOf(groups);
  const small = groups.filter(({ haEach }) => middleHa !== null && haEach < middleHa);
  return {
    all: meanShare(groups, ({ growers }) => growers),
    women: meanShare(groups, ({ women }) => women ?? 0),
    smallPlots: meanShare(small, ({ growers }) => growers),
    middleHa,
  };
}

/** `Growers 81 %, women 80 %, plots below 0.6 ha 79 %`; what nobody counted is left out. Null where no growers are counted. */
export function growerSharesText(plan: Plan, scenario: Scenario, commodity: Commodity, words: Words): string | null {
  const said = words.stock.growers;
  const { all, women, smallPlots, middleHa } = growerShares(plan, scenario, commodity);
  const percent = (share: number) => withUnit(localNumber(wholePercent(share), words), '%');
  if (all === null) return null;
  const parts = [
    said.all(percent(all)),
    ...(women === null ? [] : [said.women(percent(women))]),
    ...(smallPlots === null || middleHa === null
      ? []
      : [said.smallPlots(withUnit(localNumber(middleHa, words, 1), 'ha'), percent(smallPlots))]),
  ];
  return parts.join(', ');
}

function groupsOf({ ids, allocation: { shares } }: Plan, scenario: Scenario, commodity: Commodity): Group[] {
  return shares.community.flatMap((community, row) => {
    const place = scenario.communities[community];
    const crop = ids.crops[shares.crop[row] ?? -1];
    const growers = place?.crops.find((plan) => plan.crop === crop)?.growers ?? place?.farmers ?? null;
    const ha = shares.plannedHa[row] ?? 0;
    if (!place || growers === null || growers <= 0) return [];
    const { farmers, farmersWomen } = place;
    return [
      {
        share: (commodity === 'seed' ? shares.seedShare : shares.inoculantShare)[row] ?? 0,
        growers,
        women: farmers && farmersWomen !== null ? (growers * farmersWomen) / farmers : null,
        haEach: ha / growers,
      },
    ];
  });
}

function meanShare(groups: readonly Group[], weigh: (group: Group) => number): number | null {
  const weight = groups.reduce((sum, group) => sum + weigh(group), 0);
  return weight > 0 ? groups.reduce((sum, group) => sum + weigh(group) * group.share, 0) / weight : null;
}

function middleOf(groups: readonly Group[]): number | null {
  const half = groups.reduce((sum, { growers }) => sum + growers, 0) / 2;
  let counted = 0;
  for (const { haEach, growers } of [...groups].sort((a, b) => a.haEach - b.haEach)) {
    counted += growers;
    if (counted >= half && half > 0) return haEach;
  }
  return null;
}
