import type { Problem } from '../vocabulary/problems.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { finding } from './finding.ts';
import { bagsGivenHa, bagsHandedHa, haOfBag, haOfLot, sownHa } from './own-bags.ts';
import { TOLERANCE } from './tolerances.ts';

/**
 * Fertiliser, in land: no more than land with seed, only along with seed or inoculant from the same depot, none left lying while such
 * land lacks it, and shared alike. It has no prices to prove it by: communities that could draw on one lot are compared.
 */
export function checkFertiliser(c: CheckedCase): readonly Problem[] {
  if (!c.scenario.products.some(({ kind }) => kind === 'fertiliser')) return [];
  const along = waysOfGoods(c);
  return [
    ...c.plan.allocation.shares.community.flatMap((_, row) => checkRow(c, row)),
    ...checkRides(c, along),
    ...checkSpare(c, along),
    ...checkAlike(c, along),
    ...checkHasSeed(c),
  ];
}

/** `community depot` of every grant of seed or inoculant. */
function waysOfGoods(c: CheckedCase): ReadonlySet<string> {
  const { grants } = c.plan.allocation;
  return new Set(
    grants.lot.flatMap((lot, grant) => {
      const kind = lotAndProduct(c, lot)?.product.kind;
      return kind === 'seed' || kind === 'inoculant' ? [`${at(grants.community, grant)} ${at(c.depotOfLot, lot)}`] : [];
    }),
  );
}

function checkRow(c: CheckedCase, row: number): readonly Problem[] {
  const given = bagsGivenHa(c, row);
  if (given === 0) return [];
  const most = Math.max(0, sownHa(c, row) - bagsHandedHa(c, row).least) + largestBag(c, row);
  return given > most + TOLERANCE.hectares * 3
    ? [finding('E8409', 'allocation.grants', row, `fertiliser for ${given} ha`, `at most ${most} ha`)]
    : [];
}

function largestBag(c: CheckedCase, row: number): number {
  const crop = at(c.scenario.crops, at(c.plan.allocation.shares.crop, row));
  return Math.max(0, ...c.scenario.products.filter(({ crops }) => crops.includes(crop)).map(haOfBag));
}

/** By itself fertiliser is not worth a journey; nor may a lot go where a decision forbids it. */
function checkRides(c: CheckedCase, along: ReadonlySet<string>): readonly Problem[] {
  const { grants } = c.plan.allocation;
  return grants.lot.flatMap((lot, grant) => {
    if (haOfLot(c, lot) === 0) return [];
    const { id } = at(c.scenario.lots, lot);
    const found: Problem[] = [];
    if (!along.has(`${at(grants.community, grant)} ${at(c.depotOfLot, lot)}`))
      found.push(finding('E8418', 'allocation.grants.lot', grant, id, 'seed or inoculant from the same depot'));
    if (isForbiddenLot(c, at(grants.community, grant), at(grants.crop, grant), lot))
      found.push(finding('E8410', 'allocation.grants', grant, id, 'none of it'));
    return found;
  });
}

function isForbiddenLot(c: CheckedCase, community: number, crop: number, lot: number): boolean {
  return c.decisions.decisions.some(
    (d) =>
      d.kind === 'forbid' &&
      d.lotId === at(c.scenario.lots, lot).id &&
      d.communityId === at(c.scenario.communities, community).id &&
      d.crop === c.scenario.crops[crop],
  );
}

/** May bags of a lot go to a row: label, decisions, and other goods that take the way? */
function mayRide(c: CheckedCase, along: ReadonlySet<string>, lot: number, row: number): boolean {
  const { shares } = c.plan.allocation;
  const [community, crop] = [at(shares.community, row), at(shares.crop, row)];
  const crops = lotAndProduct(c, lot)?.product.crops ?? [];
  return (
    haOfLot(c, lot) > 0 &&
    crops.includes(at(c.scenario.crops, crop)) &&
    along.has(`${community} ${at(c.depotOfLot, lot)}`) &&
    !isForbiddenLot(c, community, crop, lot)
  );
}

/** Rows that ask for fertiliser: with seed, and with a window still to come. */
function askingRows(c: CheckedCase): readonly number[] {
  const { shares, shortfalls } = c.plan.allocation;
  const late = new Set(shortfalls.shareRow.filter((_, i) => at(shortfalls.reason, i) === 'window-missed'));
  return shares.community.flatMap((_, row) => (sownHa(c, row) > TOLERANCE.hectares && !late.has(row) ? [row] : []));
}

function checkSpare(c: CheckedCase, along: ReadonlySet<string>): readonly Problem[] {
  const { lots, grants } = c.plan.allocation;
  const rows = askingRows(c);
  return c.scenario.lots.flatMap(({ id }, lot) => {
    const given = grants.lot.reduce((sum, of, grant) => (of === lot ? sum + at(grants.packs, grant) : sum), 0);
    if (haOfLot(c, lot) === 0 || at(lots.packsOffered, lot) <= given) return [];
    const bag = haOfLot(c, lot);
    return rows
      .filter((row) => mayRide(c, along, lot, row))
      .flatMap((row) => {
        const lacks = sownHa(c, row) - bagsGivenHa(c, row) - bagsHandedHa(c, row).most;
        return lacks > bag + TOLERANCE.hectares * 3
          ? [finding('E8411', 'allocation.grants', row, `${lacks} ha`, id)]
          : [];
      });
  });
}

/**
 * Of communities that could draw on one lot nobody has less of its land served than another that did draw on it, a bag from each depot
 * less or more, unless it has all it asks. Only where the policy makes communities alike.
 */
function checkAlike(c: CheckedCase, along: ReadonlySet<string>): readonly Problem[] {
  const { fairness, equalOver, priorityWeights } = c.scenario.policy;
  if (fairness !== 'equal-share' || equalOver !== 'community' || priorityWeights.length > 0) return [];
  const { grants } = c.plan.allocation;
  const depots = new Set(c.scenario.lots.flatMap((_, lot) => (haOfLot(c, lot) > 0 ? [at(c.depotOfLot, lot)] : [])))
    .size;
  const shares = askingRows(c).map((row) => {
    const [asked, slack] = [sownHa(c, row), depots * largestBag(c, row) + TOLERANCE.hectares * 3];
    const { least, most } = bagsHandedHa(c, row);
    const given = bagsGivenHa(c, row);
    return {
      row,
      low: (given + least - slack) / asked,
      high: (given + most + slack) / asked,
      isFull: given + most >= asked - slack,
    };
  });
  return c.scenario.lots.flatMap((_, lot) => {
    const drew = new Set(
      grants.lot.flatMap((of, grant) =>
        of === lot && haOfLot(c, lot) > 0
          ? [c.shareRowOf.get(at(grants.community, grant) * c.scenario.crops.length + at(grants.crop, grant))]
          : [],
      ),
    );
    const most = Math.max(0, ...shares.filter(({ row }) => drew.has(row)).map(({ low }) => low));
    return shares.flatMap(({ row, high, isFull }) =>
      !isFull && high < most && mayRide(c, along, lot, row)
        ? [finding('E8504', 'allocation.shares', row, high, `fertiliser for ${most} of the land, less a bag`)]
        : [],
    );
  });
}

/** Fertiliser is not handed over where seed of its crops is sent, none of it comes and growers hold none. */
function checkHasSeed(c: CheckedCase): readonly Problem[] {
  const { loads, stops } = c.plan.delivery;
  const { consignments, grants } = c.plan.allocation;
  const served = new Set(stops.loads.flat());
  const cropsOf = (load: number) => at(loads.grants, load).map((grant) => at(grants.crop, grant));
  const communityOf = (load: number) => at(consignments.community, at(loads.consignment, load));
  const groupOf = (load: number) => at(consignments.group, at(loads.consignment, load));
  return [...served].flatMap((load) => {
    if (groupOf(load) !== 'fertiliser') return [];
    const crops = cropsOf(load);
    const seed = loads.consignment.flatMap((_, other) =>
      communityOf(other) === communityOf(load) &&
      ['dry', 'both'].includes(groupOf(other)) &&
      cropsOf(other).some((crop) => crops.includes(crop))
        ? [other]
        : [],
    );
    const own = at(c.scenario.communities, communityOf(load)).crops.some(
      (plan) => plan.ownSeedKg > 0 && crops.includes(c.scenario.crops.indexOf(plan.crop)),
    );
    return own || seed.length === 0 || seed.some((other) => served.has(other))
      ? []
      : [finding('E8710', 'delivery.loads', load, 'fertiliser', 'seed that is not delivered')];
  });
}
