import { type Crop, isoDate, type Plan, type Product, type Scenario } from '../../engine/index.ts';
import { placeName } from '../place-name.ts';
import { type CoatingRates, coatingRates } from './coating-amounts.ts';

/** Packs of one lot that a community is given. */
export interface HandedPacks {
  readonly product: Product;
  readonly lotId: string;
  readonly packs: number;
  readonly kg: number;
  /** ISO date. */
  readonly expires: string;
}

/** Growers who share the packs of one lot of inoculant. */
export interface PackSharing {
  readonly lotId: string;
  readonly packs: number;
  /** Null where nobody counted them. */
  readonly growers: number | null;
  readonly openedPackDays: number;
}

/** One crop of one community: what comes, what is coated, and by whom. */
export interface CropHandover {
  readonly crop: Crop;
  readonly growers: number | null;
  readonly seed: readonly HandedPacks[];
  readonly inoculant: readonly HandedPacks[];
  readonly ownSeedKg: number;
  readonly seedNeedKg: number;
  /** Packs of inoculant that all its seed would take, rounded up. */
  readonly packsAskedFor: number;
  /** Seed that the packs coat, kg, and seed that is sown uncoated. */
  readonly coatedKg: number;
  readonly uncoatedKg: number;
  readonly sharing: readonly PackSharing[];
  /** Null without packs, or where the label states no dose. */
  readonly rates: CoatingRates | null;
}

export interface HandoverGoods {
  readonly community: Scenario['communities'][number];
  readonly zone: string | null;
  readonly place: string;
  readonly crops: readonly CropHandover[];
}

/** What a community is handed and what it does with it, as planned. Null where the scenario does not know the community. */
export function handoverGoods(plan: Plan, scenario: Scenario, communityId: string | null): HandoverGoods | null {
  const index = plan.ids.communities.indexOf(communityId ?? '');
  const community = scenario.communities.find(({ id }) => id === communityId);
  if (index < 0 || community === undefined) return null;
  const goods = grantReader(plan, scenario);
  const { shares } = plan.allocation;
  const crops = rowsWhere(shares.community, index).map((row) => cropHandover(plan, scenario, goods, index, row));
  return {
    community,
    zone: scenario.zones.find(({ id }) => id === community.zoneId)?.name ?? null,
    place: placeName(plan, scenario, plan.places.communityPlace[index] ?? -1),
    crops,
  };
}

/** Reads the packs of one grant. */
type GrantReader = (grant: number) => HandedPacks[];

function grantReader({ ids, allocation }: Plan, scenario: Scenario): GrantReader {
  const lots = new Map(scenario.lots.map((lot) => [lot.id, lot]));
  const products = new Map(scenario.products.map((product) => [product.id, product]));
  return (grant) => {
    const packs = allocation.grants.packs[grant] ?? 0;
    const lot = lots.get(ids.lots[allocation.grants.lot[grant] ?? -1] ?? '');
    const product = lot && products.get(lot.productId);
    if (lot === undefined || product === undefined || packs === 0) return [];
    return [{ product, lotId: lot.id, packs, kg: (packs * product.packG) / 1000, expires: isoDate(lot.expires) }];
  };
}

function cropHandover(
  plan: Plan,
  scenario: Scenario,
  goods: GrantReader,
  community: number,
  row: number,
): CropHandover {
  const { shares, grants } = plan.allocation;
  const crop = shares.crop[row] ?? -1;
  const own = rowsWhere(grants.community, community).filter((grant) => grants.crop[grant] === crop);
  const handed = own.flatMap((grant) => goods(grant));
  const inoculant = handed.filter(({ product }) => product.kind === 'inoculant');
  const coatedKg = shares.inoculantGivenSeedKg[row] ?? 0;
  const needs = needsOf(plan, community, crop);
  const name = plan.ids.crops[crop] as Crop;
  const [first] = inoculant;
  return {
    crop: name,
    growers: communityOf(plan, scenario, community)?.crops.find((one) => one.crop === name)?.growers ?? null,
    seed: handed.filter(({ product }) => product.kind === 'seed'),
    inoculant,
    ownSeedKg: shares.ownSeedKg[row] ?? 0,
    seedNeedKg: shares.seedNeedKg[row] ?? 0,
    packsAskedFor: Math.ceil(needs.packs - 1e-6),
    coatedKg,
    uncoatedKg: Math.max(0, (shares.inoculantNeedSeedKg[row] ?? 0) - coatedKg),
    sharing: sharingOf(plan, goods, own),
    rates: first ? coatingRates(first.product, needs) : null,
  };
}

const communityOf = (plan: Plan, scenario: Scenario, community: number) =>
  scenario.communities.find(({ id }) => id === plan.ids.communities[community]);

/** What the plan reckons for the whole crop of a community, over all zones it lies in. */
function needsOf({ needs }: Plan, community: number, crop: number) {
  const rows = rowsWhere(needs.community, community).filter((row) => needs.crop[row] === crop);
  const sum = (column: readonly number[]) => rows.reduce((total, row) => total + (column[row] ?? 0), 0);
  return {
    seedKg: sum(needs.seedKg),
    waterL: sum(needs.waterL),
    stickerPacks: sum(needs.stickerPacks),
    packs: sum(needs.packsNeeded),
  };
}

function sharingOf({ allocation }: Plan, goods: GrantReader, own: readonly number[]): PackSharing[] {
  const { packShares } = allocation;
  return own.flatMap((grant) => {
    const row = packShares.grant.indexOf(grant);
    const [handed] = goods(grant);
    if (row < 0 || handed === undefined) return [];
    const growers = packShares.growers[row] ?? null;
    return [
      {
        lotId: handed.lotId,
        packs: handed.packs,
        growers,
        openedPackDays: packShares.openedPackDays[row] ?? Number.NaN,
      },
    ];
  });
}

const rowsWhere = (column: readonly number[], value: number): number[] =>
  column.flatMap((one, row) => (one === value ? [row] : []));
