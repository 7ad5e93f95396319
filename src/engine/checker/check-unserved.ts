import { BOX_LITRES_PER_KG } from '../reference/boxes.ts';
import { CROP_FACTS, cropFact } from '../reference/crops.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { mayGo } from './check-fairness.ts';
import { at, type CheckedCase, lotAndProduct, planningDayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { findIdleVehicle, type Parcel, type Yard } from './own-idle.ts';
import { sowingDays, unsownUntil } from './own-season.ts';
import { seedKgOfLot } from './own-stock.ts';

/**
 * Laziness. What is left behind must be out of reach of every idle vehicle-day, and what is not given although it lies
 * there must have a reason that holds; else even an empty plan would pass.
 */
export function checkUnserved(yard: Yard): readonly Problem[] {
  return [...checkDaysOfUse(yard.c), ...checkLeftBehind(yard), ...checkShortfallReasons(yard)];
}

/** Share of the yield that dry goods still bring when handed over on a planning day: nought in no season means never of use. */
export function isOfUse(c: CheckedCase, community: number, crop: number, day: number): boolean {
  const name = at(c.scenario.crops, crop);
  const lossPerDay = cropFact(name, 'delayLossPerDay', c.scenario.assumptions).value;
  const handedOver = c.scenario.planning.from + day;
  return at(c.zonesOf, community).some(({ zone }) => {
    const days = sowingDays(c, zone < 0 ? c.scenario.zones.length : zone, crop);
    if (!days) return false;
    return days.last.some((last, member) => {
      const late = Math.max(at(days.first, member), handedOver + 1) - last - CROP_FACTS[name].delayFreeDays;
      return 1 - lossPerDay * Math.max(0, late) > 0;
    });
  });
}

/** Dry goods may be handed over as long as some season would still give a yield, and from the day their lots are there. */
function checkDaysOfUse(c: CheckedCase): readonly Problem[] {
  const { consignments, grants } = c.plan.allocation;
  return consignments.grants.flatMap((rows, row) => {
    const found: Problem[] = [];
    const available = rows.reduce(
      (latest, grant) =>
        Math.max(latest, (c.scenario.lots[at(grants.lot, grant)]?.availableFrom ?? 0) - c.scenario.planning.from),
      0,
    );
    const earliest = planningDayOf(c, at(consignments.earliest, row));
    if (earliest !== available)
      found.push(finding('E8422', 'allocation.consignments.earliest', row, earliest, available));
    if (at(consignments.group, row) !== 'dry' && at(consignments.group, row) !== 'fertiliser') return found;
    const isSown = (grant: number) => lotAndProduct(c, at(grants.lot, grant))?.product.kind === 'seed';
    const seed = rows.some(isSown) ? rows.filter(isSown) : rows;
    let latest = c.planningDays - 1;
    const useful = (grant: number) => isOfUse(c, at(consignments.community, row), at(grants.crop, grant), latest);
    while (latest >= 0 && !seed.some(useful)) latest--;
    const told = planningDayOf(c, at(consignments.latest, row));
    if (told < latest && !hasCessation(c))
      found.push(finding('E8422', 'allocation.consignments.latest', row, told, latest));
    return found;
  });
}

/** Windows that count from the end of the rains are not recomputed. */
const hasCessation = (c: CheckedCase) => c.plan.season.windows.anchor.includes('cessation');

function checkLeftBehind(yard: Yard): readonly Problem[] {
  const { c } = yard;
  const { unserved, loads } = c.plan.delivery;
  const { consignments } = c.plan.allocation;
  const dayOfLoad = daysOfLoads(c);
  return unserved.load.flatMap((load, row) => {
    const reason = at(unserved.reason, row);
    const consignment = at(loads.consignment, load);
    const group = at(consignments.group, consignment);
    const lock = c.decisions.decisions.some(
      (d) =>
        d.kind === 'lock' &&
        group !== 'fertiliser' &&
        d.communityId === at(c.scenario.communities, at(consignments.community, consignment)).id &&
        (group === 'both' || (d.commodity === 'seed') === (group === 'dry')),
    );
    if (lock) return [];
    if (reason === 'decision')
      return [finding('E8912', 'delivery.unserved.reason', row, reason, 'no decision speaks of it')];
    const parcel = parcelOf(c, load);
    const payload = Math.max(
      0,
      ...c.scenario.vehicles.flatMap((v, i) => (at(c.depotOfVehicle, i) === parcel.depot ? [v.payloadKg] : [])),
    );
    if (reason === 'heavier-than-any-vehicle' && parcel.kg <= payload)
      return [finding('E8912', 'delivery.unserved.reason', row, reason, `a vehicle carries ${payload} kg`)];
    const place = at(c.plan.places.communityPlace, parcel.community);
    if (
      reason === 'not-reachable' &&
      yard.reach.depotReaches(parcel.depot, place) &&
      isReachedSomeDay(yard, parcel.depot, place)
    )
      return [finding('E8912', 'delivery.unserved.reason', row, reason, 'a vehicle of the depot gets there and back')];
    const bounds = boundsBySeed(c, load, dayOfLoad);
    if (bounds === null) return [];
    const idle = findIdleVehicle(yard, {
      ...parcel,
      earliest: Math.max(parcel.earliest, bounds.earliest),
      latest: Math.min(parcel.latest, bounds.latest),
    });
    return idle === null ? [] : [finding('E8911', 'delivery.unserved.load', row, reason, idle)];
  });
}

function isReachedSomeDay({ c, reach }: Yard, depot: number, place: number): boolean {
  const site = c.scenario.depots.length + place;
  for (let day = 0; day < c.planningDays; day++)
    for (let vehicle = 0; vehicle < c.scenario.vehicles.length; vehicle++) {
      if (at(c.depotOfVehicle, vehicle) !== depot || c.plan.season.workday[day] !== 1) continue;
      const ways = reach.waysOf(vehicle, day);
      if (at(ways.out, site) + at(ways.back, site) < Number.POSITIVE_INFINITY) return true;
    }
  return false;
}

function parcelOf(c: CheckedCase, load: number): Parcel {
  const { loads } = c.plan.delivery;
  const { consignments } = c.plan.allocation;
  const row = at(loads.consignment, load);
  return {
    depot: at(consignments.depot, row),
    community: at(consignments.community, row),
    kg: at(loads.kg, load),
    coolLitres: at(loads.coolLitres, load),
    inoculantKg: at(loads.inoculantKg, load),
    maxStorageC: consignments.maxStorageC[row] ?? null,
    earliest: planningDayOf(c, at(consignments.earliest, row)),
    latest: planningDayOf(c, at(consignments.latest, row)),
  };
}

/** Planning day of each load that is served. */
function daysOfLoads(c: CheckedCase): ReadonlyMap<number, number> {
  const { stops, trips } = c.plan.delivery;
  const days = new Map<number, number>();
  stops.loads.forEach((rows, stop) => {
    for (const load of rows) days.set(load, planningDayOf(c, at(trips.date, at(stops.trip, stop))));
  });
  return days;
}

interface Between {
  readonly earliest: number;
  readonly latest: number;
}

/** Days between which a load may come, seed first; null where inoculant must stay. */
function boundsBySeed(c: CheckedCase, load: number, dayOfLoad: ReadonlyMap<number, number>): Between | null {
  const { loads } = c.plan.delivery;
  const { consignments, grants } = c.plan.allocation;
  const row = at(loads.consignment, load);
  const crops = new Set(at(loads.grants, load).map((grant) => at(grants.crop, grant)));
  return boundsOfGoods(c, at(consignments.community, row), crops, at(consignments.group, row), dayOfLoad);
}

/**
 * Inoculant comes from the last served seed of its crops on, seed and fertiliser up to the first inoculant of its crops. Null where
 * seed of the crops is meant to come, none of it does, and growers hold none: then inoculant would have nothing to coat, nor
 * fertiliser anything to feed.
 */
function boundsOfGoods(
  c: CheckedCase,
  community: number,
  crops: ReadonlySet<number>,
  group: CheckedCase['plan']['allocation']['consignments']['group'][number],
  dayOfLoad: ReadonlyMap<number, number>,
): Between | null {
  const { loads } = c.plan.delivery;
  const { consignments, grants } = c.plan.allocation;
  if (group === 'both') return { earliest: 0, latest: Number.POSITIVE_INFINITY };
  const linkedTo = (kind: 'dry' | 'inoculant') =>
    loads.consignment.flatMap((other, i) => {
      const of = at(consignments.group, other);
      const isOther = at(consignments.community, other) === community && (of === kind || of === 'both');
      return isOther && at(loads.grants, i).some((grant) => crops.has(at(grants.crop, grant))) ? [i] : [];
    });
  const daysOf = (linked: readonly number[]) => linked.flatMap((other) => dayOfLoad.get(other) ?? []);
  const latest = Math.min(Number.POSITIVE_INFINITY, ...daysOf(linkedTo('inoculant')));
  if (group === 'dry') return { earliest: 0, latest };
  const hasOwnSeed = at(c.scenario.communities, community).crops.some(
    (plan) => plan.ownSeedKg > 0 && crops.has(c.scenario.crops.indexOf(plan.crop)),
  );
  const linked = linkedTo('dry');
  const days = daysOf(linked);
  if (group === 'fertiliser' && (linked.length === 0 || days.length > 0 || hasOwnSeed)) {
    const unsown = unsownUntil(c, community, crops);
    const waited = linkedTo('inoculant').length > 0 ? latest : Math.min(Number.POSITIVE_INFINITY, ...days);
    return Number.isNaN(unsown)
      ? null
      : { earliest: 0, latest: Number.isFinite(waited) ? Math.max(waited, unsown) : unsown };
  }
  if (linked.length > 0 && days.length === 0 && !hasOwnSeed) return null;
  return { earliest: Math.max(0, ...days), latest: Number.POSITIVE_INFINITY };
}

/** Reasons of shortfalls, each by its own test. */
function checkShortfallReasons(yard: Yard): readonly Problem[] {
  const { c, reach } = yard;
  const { shortfalls, shares, lots, grants } = c.plan.allocation;
  const dayOfLoad = daysOfLoads(c);
  const given = new Array<number>(c.scenario.lots.length).fill(0);
  grants.lot.forEach((lot, grant) => {
    given[lot] = at(given, lot) + at(grants.packs, grant);
  });
  return shortfalls.shareRow.flatMap((shareRow, row) => {
    const [community, crop] = [at(shares.community, shareRow), at(shares.crop, shareRow)];
    const commodity = at(shortfalls.commodity, row);
    const shortKg = at(shortfalls.shortKg, row);
    const reason = at(shortfalls.reason, row);
    if (reason === 'no-seed-to-inoculate' || reason === 'decision' || reason === 'handed-over-before') return [];
    const untrue = (due: string) => [finding('E8413', 'allocation.shortfalls.reason', row, reason, due)];
    if (reason === 'window-missed')
      return isOfUse(c, community, crop, 0) && !hasCessation(c) ? untrue('goods would still be of use') : [];
    const spare = c.scenario.lots.flatMap((_, lot) => {
      const packs = at(lots.packsOffered, lot) - at(given, lot);
      return packs > 0 && mayGo(c, reach, lot, community, crop, commodity) ? [{ lot, packs }] : [];
    });
    const fitting = spare.find(({ lot }) => seedKgOfLot(c, lot) <= shortKg + 1e-6);
    if (!fitting) return [];
    if (reason !== 'not-delivered')
      return [finding('E8411', 'allocation.shortfalls', row, shortKg, at(c.scenario.lots, fitting.lot).id)];
    const bounds = boundsOfGoods(c, community, new Set([crop]), commodity === 'seed' ? 'dry' : 'inoculant', dayOfLoad);
    if (bounds === null) return [];
    const parcel = parcelOfShortfall(c, fitting.lot, fitting.packs, community, shortKg);
    const idle = findIdleVehicle(yard, {
      ...parcel,
      earliest: Math.max(parcel.earliest, bounds.earliest),
      latest: Math.min(parcel.latest, bounds.latest),
    });
    return idle === null ? [] : untrue(`an idle vehicle could bring it: ${idle}`);
  });
}

/** What is short, in whole packs of one lot that lie spare. */
function parcelOfShortfall(c: CheckedCase, lot: number, spare: number, community: number, shortKg: number): Parcel {
  const product = lotAndProduct(c, lot)?.product;
  const packG = product?.packG ?? 0;
  const packs = Math.min(spare, Math.max(1, Math.floor(shortKg / (product ? seedKgOfLot(c, lot) : 1))));
  const kg = (packs * packG) / 1000;
  const isInoculant = product?.kind === 'inoculant';
  return {
    depot: at(c.depotOfLot, lot),
    community,
    kg,
    coolLitres: isInoculant ? packs * (product.litresPerPack ?? (packG / 1000) * BOX_LITRES_PER_KG.value) : 0,
    inoculantKg: isInoculant ? kg : 0,
    maxStorageC: product?.maxStorageC ?? null,
    earliest: Math.max(0, (at(c.scenario.lots, lot).availableFrom ?? 0) - c.scenario.planning.from),
    latest: c.planningDays - 1,
  };
}
