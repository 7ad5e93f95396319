import type { Commodity, Crop, Plan, Scenario, ShortfallReason } from '../../engine/index.ts';
import { localNumber, noBreaks, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import {
  amountOf,
  countOf,
  goodsName,
  keptReason,
  lotsFor,
  packSize,
  productOfLot,
  seedKgPerPack,
} from './stock-goods.ts';
import { groupParts, type Land, type LandPart, landShare, sumLand } from './stock-land.ts';
import { bestRemedies, type RemedyView } from './stock-remedies.ts';
import type { Told } from './stock-told.ts';

/** What the land lacks: seed, the inoculant for seed that is there, or any way to it. */
export type Lack = 'without-seed' | 'not-inoculated' | 'cut-off';

/** One thing that runs out, or one other way in which land gets less than planned. */
export interface Shortage {
  readonly key: string;
  readonly name: string;
  readonly lack: Lack;
  readonly commodity: Commodity;
  /** Null where it is not the stock that is short. */
  readonly crop: Crop | null;
  readonly hectares: number;
  /** Packs of inoculant or bags of seed; null where it is not stock that is short, or no product fits the crop. */
  readonly shortBy: string | null;
  /** Seed in kg; of an inoculant where no product fits the crop, the seed that stays uncoated. */
  readonly shortKg: string | null;
  /** `5 kg`: what one of the bags holds; null for packs. */
  readonly bagSize: string | null;
  /** Where, and to what share of planned land. */
  readonly where: Told;
  readonly why: string;
  readonly remedies: readonly RemedyView[];
}

const OF_STOCK: readonly ShortfallReason[] = ['stock-short', 'no-compatible-stock', 'stock-elsewhere', 'pack-rounding'];
/** Land that lacks seed also lacks what would coat it: it counts once, without seed. Goods left at depots have rows of their own. */
const TOLD_ELSEWHERE: readonly ShortfallReason[] = ['no-seed-to-inoculate', 'not-delivered'];
/** Hectares that are rounding of the plan document and no loss. */
const NOISE_HA = 0.05;

interface Row {
  readonly shareRow: number;
  readonly commodity: Commodity;
  readonly hectares: number;
  readonly shortKg: number;
  readonly reason: ShortfallReason;
  readonly product: number;
}

/**
 * What runs out and what else holds land back, by what it costs in hectares, most first. Hectares without seed and
 * hectares with seed that are not inoculated are never one row; together all rows are the planned land less what gets both.
 */
export function shortages(plan: Plan, scenario: Scenario, parts: readonly LandPart[], words: Words): Shortage[] {
  const rows = shortfallRows(plan).filter(({ reason }) => !TOLD_ELSEWHERE.includes(reason));
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = OF_STOCK.includes(row.reason)
      ? `${row.commodity} ${plan.allocation.shares.crop[row.shareRow]}`
      : `${row.commodity} ${row.reason}`;
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  const told = [...groups].map(([key, group]) => describe(plan, scenario, parts, key, group, words));
  return [...told, ...leftAtDepots(plan, parts, rows, words)]
    .filter(({ hectares }) => hectares >= NOISE_HA)
    .sort((a, b) => b.hectares - a.hectares);
}

function shortfallRows({ allocation: { shortfalls } }: Plan): Row[] {
  return shortfalls.shareRow.map((shareRow, i) => ({
    shareRow,
    commodity: shortfalls.commodity[i] ?? 'seed',
    hectares: shortfalls.hectares[i] ?? 0,
    shortKg: shortfalls.shortKg[i] ?? 0,
    reason: shortfalls.reason[i] ?? 'stock-short',
    product: shortfalls.product[i] ?? -1,
  }));
}

const total = (rows: readonly Row[], of: (row: Row) => number) => rows.reduce((sum, row) => sum + of(row), 0);

function describe(
  plan: Plan,
  scenario: Scenario,
  parts: readonly LandPart[],
  key: string,
  rows: readonly Row[],
  words: Words,
): Shortage {
  const { reason, commodity, shareRow } = rows[0] as Row;
  const hectares = total(rows, (row) => row.hectares);
  if (!OF_STOCK.includes(reason)) {
    return {
      key,
      name: words.stock.otherWays[reason as keyof Words['stock']['otherWays']],
      lack: reason === 'not-reachable' ? 'cut-off' : lackOf(commodity),
      commodity,
      crop: null,
      hectares,
      shortBy: null,
      shortKg: null,
      bagSize: null,
      where: communitiesOf(plan, rows, words),
      why: sentence(words.reasons.SHORTFALL_WORDING[reason]),
      remedies: [],
    };
  }
  const crop = plan.ids.crops[plan.allocation.shares.crop[shareRow] ?? -1] as Crop;
  return {
    key,
    name: goodsName(crop, commodity, words),
    lack: lackOf(commodity),
    commodity,
    crop,
    hectares,
    ...shortAmount(scenario, rows, words),
    where: zoneShares(plan, parts, crop, commodity, words),
    why: whyShort(plan, scenario, rows, crop, commodity, words),
    remedies: bestRemedies(plan, scenario, crop, commodity, words),
  };
}

const lackOf = (commodity: Commodity): Lack => (commodity === 'seed' ? 'without-seed' : 'not-inoculated');

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** What is missing in whole packs of the product that binds; in kg of seed where no product fits the crop. */
function shortAmount(
  scenario: Scenario,
  rows: readonly Row[],
  words: Words,
): Pick<Shortage, 'shortBy' | 'shortKg' | 'bagSize'> {
  const kilograms = total(rows, (row) => row.shortKg);
  const kg = withUnit(localNumber(Math.ceil(kilograms - 1e-6), words), 'kg');
  const most = [...rows].sort((a, b) => b.shortKg - a.shortKg)[0];
  const product = scenario.products[most?.product ?? -1];
  const packs = product ? Math.ceil(kilograms / seedKgPerPack(product) - 1e-9) : Number.NaN;
  if (!product || !Number.isFinite(packs)) {
    return { shortBy: null, shortKg: words.stock.uncoated(kg), bagSize: null };
  }
  const isSeed = product.kind === 'seed';
  return {
    shortBy: countOf(product, packs, words),
    shortKg: isSeed ? kg : null,
    bagSize: isSeed ? packSize(product, words) : null,
  };
}

/** Lots that would serve and are kept back, by reason; where there is none, that there is not enough. */
function whyShort(
  plan: Plan,
  scenario: Scenario,
  rows: readonly Row[],
  crop: Crop,
  commodity: Commodity,
  words: Words,
): string {
  const byReason = new Map<string, number[]>();
  for (const lot of lotsFor(scenario, crop, commodity)) {
    const key = plan.allocation.lots.reasons[lot]?.join() ?? '';
    if (key !== '') byReason.set(key, [...(byReason.get(key) ?? []), lot]);
  }
  const packs = (lots: readonly number[]) => lots.reduce((sum, lot) => sum + (scenario.lots[lot]?.packs ?? 0), 0);
  const most = [...byReason.values()].sort((a, b) => packs(b) - packs(a)).slice(0, REASONS_SHOWN);
  if (most.length > 0) return most.map((lots) => keptText(plan, scenario, lots, packs(lots), words)).join(' ');
  const heaviest = [...rows].sort((a, b) => b.hectares - a.hectares)[0] as Row;
  return sentence(words.reasons.SHORTFALL_WORDING[heaviest.reason]);
}

/** Reasons told of one kind of goods, and of goods left at depots. The rest stands in the lists. */
const REASONS_SHOWN = 2;

/** One lot by its name, with the figure that decides; several by their number. */
function keptText(plan: Plan, scenario: Scenario, lots: readonly number[], packs: number, words: Words): string {
  const [first = -1] = lots;
  const product = productOfLot(scenario, first);
  const isOne = lots.length === 1;
  const number = localNumber(packs, words);
  // Bags of several lots may differ in size.
  const amount = product ? (isOne ? amountOf(product, packs, words) : countOf(product, packs, words)) : number;
  if (isOne) {
    return words.stock.lotKept(scenario.lots[first]?.id ?? '', amount, keptReason(plan, scenario, first, words) ?? '');
  }
  const reasons = plan.allocation.lots.reasons[first] ?? [];
  const said = reasons.map((reason) => words.reasons.LOT_REASON_WORDING[reason]).join('; ');
  return words.stock.lotsKept(localNumber(lots.length, words), amount, said);
}

/** `all zones get 74 to 78 %`, or how many get less than the district does, and what. */
function zoneShares({ ids }: Plan, parts: readonly LandPart[], crop: Crop, commodity: Commodity, words: Words): Told {
  const { stock } = words;
  const ofCrop = parts.filter((part) => ids.crops[part.crop] === crop);
  const percent = (land: Land) => wholePercent(landShare(land, commodity));
  const zones = [...groupParts(ofCrop, ({ zone }) => zone).values()].map((zone) => percent(sumLand(zone)));
  const district = percent(sumLand(ofCrop));
  const isEven = Math.max(...zones) - Math.min(...zones) <= EVEN_POINTS;
  const few = isEven ? zones : zones.filter((share) => share < district);
  const number = (value: number) => localNumber(value, words);
  const [low, high] = [number(Math.min(...few)), number(Math.max(...few))];
  const shown = noBreaks(low === high ? stock.percent(low) : stock.between(low, high));
  const count = stock.counts[few.length] ?? number(few.length);
  return {
    text: isEven && zones.length > 1 ? stock.allZones('{0}') : stock.someZones(count, few.length === 1, '{0}'),
    figures: [
      {
        path: commodity === 'seed' ? 'outcomes.crops.seedHa' : 'outcomes.crops.inoculatedHa',
        title: stock.zoneShareTitle(goodsName(crop, commodity, words)),
        shown,
        isAlarm: false,
      },
    ],
  };
}

/** Shares that lie no further apart, in points of percent, are told as one range: whole packs part them by as much. */
const EVEN_POINTS = 8;

function communitiesOf({ allocation: { shares } }: Plan, rows: readonly Row[], words: Words): Told {
  return countCommunities(new Set(rows.map(({ shareRow }) => shares.community[shareRow])).size, words);
}

const countCommunities = (count: number, words: Words): Told => ({
  text: words.stock.inCommunities(localNumber(count, words), count === 1),
  figures: [],
});

/** Land whose goods are not brought: what the outcome has less than the other shortfalls explain. */
function leftAtDepots(plan: Plan, parts: readonly LandPart[], rows: readonly Row[], words: Words): Shortage[] {
  const { plannedHa, seedHa, inoculatedHa } = sumLand(parts);
  const short = (commodity: Commodity) =>
    total(
      rows.filter((row) => row.commodity === commodity),
      (row) => row.hectares,
    );
  const left = (commodity: Commodity, hectares: number): Shortage => ({
    key: `${commodity} unserved`,
    name: words.stock.otherWays.unserved,
    lack: lackOf(commodity),
    commodity,
    crop: null,
    hectares,
    shortBy: null,
    shortKg: null,
    bagSize: null,
    ...unservedWords(plan, commodity, words),
    remedies: [],
  });
  return [
    left('seed', plannedHa - seedHa - short('seed')),
    left('inoculant', seedHa - inoculatedHa - short('inoculant')),
  ];
}

/** Communities whose loads stay, and the two reasons that hold back most hectares. */
function unservedWords(plan: Plan, commodity: Commodity, words: Words): Pick<Shortage, 'where' | 'why'> {
  const { unserved, loads } = plan.delivery;
  const { consignments } = plan.allocation;
  const { shares, shortfalls } = plan.allocation;
  const isLeft = (i: number) => shortfalls.reason[i] === 'not-delivered' && shortfalls.commodity[i] === commodity;
  const left = shortfalls.shareRow.filter((_, i) => isLeft(i));
  const communities = new Set(left.map((row) => shares.community[row] ?? -1));
  const byReason = new Map<string, number>();
  unserved.load.forEach((load, i) => {
    const consignment = loads.consignment[load] ?? -1;
    const group = consignments.group[consignment];
    const isOther = group !== 'both' && group !== (commodity === 'seed' ? 'dry' : 'inoculant');
    const reason = unserved.reason[i];
    if (isOther || reason === undefined || reason === 'seed-not-delivered') return;
    communities.add(consignments.community[consignment] ?? -1);
    const said = words.reasons.UNSERVED_WORDING[reason];
    byReason.set(said, (byReason.get(said) ?? 0) + (unserved.hectares[i] ?? 0));
  });
  const most = [...byReason].sort(([, a], [, b]) => b - a).slice(0, REASONS_SHOWN);
  return {
    where: countCommunities(communities.size, words),
    why: most.map(([said]) => sentence(said)).join(' ') || sentence(words.reasons.SHORTFALL_WORDING['not-delivered']),
  };
}
