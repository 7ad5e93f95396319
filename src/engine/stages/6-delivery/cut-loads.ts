import { BOX_LITRES_PER_KG } from '../../reference/boxes.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation, Consignment } from '../../vocabulary/stage-results/allocation.ts';
import type { Load } from '../../vocabulary/stage-results/delivery.ts';
import { FERTILISER_LOAD_KG } from './assumptions.ts';
import { type LoadLimits, limitsOf } from './largest-load.ts';
import { fitsColdBox } from './rules/cold-box.ts';
import { fitsPayload } from './rules/payload.ts';
import { carriesTraining } from './rules/training-once.ts';
import {
  consignmentKey,
  type Earlier,
  grantKey,
  type HeldAt,
  type ServedLoad,
  servedEarlier,
} from './served-earlier.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Packs of one row of grants still to be put on loads. */
interface PackRow {
  readonly row: number;
  readonly kgPerPack: number;
  readonly litresPerPack: number;
  readonly inoculant: boolean;
  /** Weight of a pack in the consignment's hectares. */
  readonly hectaresPerPack: number;
  left: number;
}

export interface CutLoads {
  readonly loads: readonly Load[];
  /** Per load, where it is held from an earlier round; null where it is free. */
  readonly held: readonly (HeldAt | null)[];
  /** Loads of an earlier round that are not held: their packs are no longer given, or their community is now due for training. */
  readonly released: number;
}

/**
 * Cuts consignments into loads of whole packs, each small enough for the largest vehicle that reaches the place, by payload,
 * by box and by the time that loading and unloading leave in a shift: as many full loads as there are, then the rest. Every
 * load leaves time for the training, whichever brings it in the end. Goods carried together are cut in proportion, so that inoculant stays with its seed. Loads served in an earlier round are kept as
 * they were where their packs are still given.
 */
export function cutLoads(
  scenario: Scenario,
  allocation: Allocation,
  slots: readonly Slot[],
  earlier: (Earlier & { readonly as: 'held' | 'told' }) | null,
): CutLoads {
  const training = carriesTraining(allocation.consignments);
  const served = earlier ? servedEarlier(scenario, slots, earlier) : new Map<string, ServedLoad[]>();
  const kept = keptLoads(scenario, allocation, training, served);
  const grantRow = new Map<string, number>();
  for (let row = 0; row < allocation.grants.lot.length; row++) grantRow.set(grantKey(allocation, row), row);
  const loads: Load[] = [];
  const held: (HeldAt | null)[] = [];
  allocation.consignments.forEach((consignment, index) => {
    const rows = packRows(scenario, allocation, consignment);
    const known = kept.of(consignment);
    const told = earlier?.as === 'told' ? takeTold(rows, known, grantRow) : null;
    for (const [i, served] of known.entries()) {
      const taken = told ? told[i] : takeServed(rows, served, grantRow);
      if (!taken?.some((packs) => packs > 0)) continue;
      loads.push(makeLoad(index, rows, taken));
      held.push(served.at);
    }
    const limits = limitsOf(consignment, slots, scenario.policy.trainingMinutes);
    for (const packs of cutRest(rows, consignment, limitsOfGroup(consignment, rows, limits))) {
      loads.push(makeLoad(index, rows, packs));
      held.push(null);
    }
  });
  return { loads, held, released: kept.count - held.filter((at) => at !== null).length };
}

/**
 * Served loads of the earlier round that may be held. A community that was to be trained with inoculant which is no longer sent
 * is now trained with a held load whose vehicle has time to spare; where none has, the lightest is left out, to be cut and
 * planned anew with time for the training.
 */
function keptLoads(
  scenario: Scenario,
  { consignments }: Allocation,
  training: readonly boolean[],
  served: Map<string, ServedLoad[]>,
): { readonly of: (consignment: Consignment) => readonly ServedLoad[]; readonly count: number } {
  const all = [...served.values()].flat();
  const trained = new Set(all.filter(({ at }) => at.trains).map(({ community }) => community));
  consignments.forEach((consignment, index) => {
    const key = consignmentKey(consignment);
    const own = served.get(key) ?? [];
    if (own.length === 0 || !training[index] || trained.has(consignment.community)) return;
    trained.add(consignment.community);
    const roomiest = own.reduce((best, load) => (load.spareMinutes > best.spareMinutes ? load : best));
    const lightest = own.reduce((best, load) => (load.kg < best.kg ? load : best));
    const hasTime = roomiest.spareMinutes >= scenario.policy.trainingMinutes;
    const withTraining = { ...roomiest, at: { ...roomiest.at, trains: true } };
    served.set(
      key,
      hasTime ? own.map((load) => (load === roomiest ? withTraining : load)) : own.filter((load) => load !== lightest),
    );
  });
  return { of: (consignment) => served.get(consignmentKey(consignment)) ?? [], count: all.length };
}

/** Fertiliser fills the room that is left, so it is cut into small loads. */
function limitsOfGroup({ group }: Consignment, rows: readonly PackRow[], limits: LoadLimits): LoadLimits {
  if (group !== 'fertiliser') return limits;
  const heaviestBag = rows.reduce((most, { kgPerPack }) => Math.max(most, kgPerPack), 0);
  return { ...limits, kg: Math.min(limits.kg, Math.max(heaviestBag, FERTILISER_LOAD_KG.value)) };
}

function packRows(scenario: Scenario, allocation: Allocation, consignment: Consignment): PackRow[] {
  const { grants } = allocation;
  const productOf = new Map(scenario.products.map((product) => [product.id, product]));
  const raw = consignment.grants.map((row) => {
    const product = productOf.get(scenario.lots[grants.lot[row] as number]?.productId ?? '');
    const packs = grants.packs[row] as number;
    const kgPerPack = packs > 0 ? (grants.kg[row] as number) / packs : 0;
    const inoculant = product?.kind === 'inoculant';
    const litres = inoculant ? (product?.litresPerPack ?? kgPerPack * BOX_LITRES_PER_KG.value) : 0;
    return { row, packs, kgPerPack, inoculant, litres, serves: grants.servesSeedKg[row] as number };
  });
  const litres = raw.reduce((sum, r) => sum + r.packs * r.litres, 0);
  const serves = raw.reduce((sum, r) => sum + r.serves, 0);
  const kg = raw.reduce((sum, r) => sum + r.packs * r.kgPerPack, 0);
  return raw.map((r) => ({
    row: r.row,
    kgPerPack: r.kgPerPack,
    litresPerPack: litres > 0 ? (r.litres * consignment.coolLitres) / litres : 0,
    inoculant: r.inoculant,
    hectaresPerPack: consignment.hectares * (serves > 0 ? r.serves / r.packs / serves : r.kgPerPack / kg) || 0,
    left: r.packs,
  }));
}

/** Packs of each load, in the order of the rows. */
function cutRest(rows: PackRow[], consignment: Consignment, limits: LoadLimits): number[][] {
  if (rows.every((row) => row.left === 0)) return [];
  const onePackFits = rows.every(
    (row) => row.left === 0 || (row.kgPerPack <= limits.kg && row.litresPerPack <= limits.litres),
  );
  if (!onePackFits) return [takeAll(rows)];
  return consignment.group === 'both' ? cutInProportion(rows, limits) : cutInOrder(rows, limits);
}

function takeAll(rows: PackRow[]): number[] {
  return rows.map((row) => {
    const packs = row.left;
    row.left = 0;
    return packs;
  });
}

function cutInOrder(rows: PackRow[], limits: LoadLimits): number[][] {
  const out: number[][] = [];
  while (rows.some((row) => row.left > 0)) {
    let [kg, litres] = [limits.kg, limits.litres];
    out.push(
      rows.map((row) => {
        const byKg = row.kgPerPack > 0 ? Math.floor((kg + 1e-9) / row.kgPerPack) : row.left;
        const byLitres = row.litresPerPack > 0 ? Math.floor((litres + 1e-9) / row.litresPerPack) : row.left;
        const packs = Math.min(row.left, byKg, byLitres);
        row.left -= packs;
        kg -= packs * row.kgPerPack;
        litres -= packs * row.litresPerPack;
        return packs;
      }),
    );
  }
  return out;
}

/** Equal parts of every row, in the fewest loads that fit. */
function cutInProportion(rows: PackRow[], limits: LoadLimits): number[][] {
  const total = rows.map((row) => row.left);
  const most = total.reduce((sum, packs) => sum + packs, 0);
  const kg = rows.reduce((sum, row) => sum + row.left * row.kgPerPack, 0);
  const litres = rows.reduce((sum, row) => sum + row.left * row.litresPerPack, 0);
  const fewest = Math.max(1, Math.ceil(kg / limits.kg - 1e-9), Math.ceil(litres / limits.litres - 1e-9));
  for (let parts = fewest; parts <= most; parts++) {
    const cut = Array.from({ length: parts }, (_, part) =>
      total.map((packs) => Math.floor((packs * (part + 1)) / parts) - Math.floor((packs * part) / parts)),
    ).filter((packs) => packs.some((n) => n > 0));
    if (!cut.every((packs) => partFits(rows, packs, limits))) continue;
    takeAll(rows);
    return cut;
  }
  return [takeAll(rows)];
}

function partFits(rows: readonly PackRow[], packs: readonly number[], limits: LoadLimits): boolean {
  const kg = rows.reduce((sum, row, i) => sum + row.kgPerPack * (packs[i] as number), 0);
  const litres = rows.reduce((sum, row, i) => sum + row.litresPerPack * (packs[i] as number), 0);
  return fitsPayload(kg, limits.kg) && fitsColdBox(litres, limits.litres);
}

function makeLoad(consignment: number, rows: readonly PackRow[], packs: readonly number[]): Load {
  const kept = rows.map((row, i) => ({ row, packs: packs[i] as number })).filter((part) => part.packs > 0);
  const sum = (each: (row: PackRow) => number) => kept.reduce((total, part) => total + part.packs * each(part.row), 0);
  return {
    consignment,
    grants: kept.map((part) => part.row.row),
    packs: kept.map((part) => part.packs),
    kg: sum((row) => row.kgPerPack),
    coolLitres: sum((row) => row.litresPerPack),
    inoculantKg: sum((row) => (row.inoculant ? row.kgPerPack : 0)),
    hectares: sum((row) => row.hectaresPerPack),
  };
}

/** Packs of a served load in the order of the rows, taken off them; null where they are no longer all given. */
function takeServed(rows: PackRow[], served: ServedLoad, grantRow: ReadonlyMap<string, number>): number[] | null {
  const wanted = rows.map(() => 0);
  for (const { key, packs } of served.packs) {
    const at = rows.findIndex((row) => row.row === grantRow.get(key));
    const row = rows[at];
    if (!row || row.left < packs) return null;
    wanted[at] = packs;
  }
  rows.forEach((row, i) => {
    row.left -= wanted[i] as number;
  });
  return wanted;
}

/**
 * Packs of told loads, in the order of the rows, taken off them: as many of their own as are still given, then others of the
 * consignment up to the weight they had, so that who was told a day keeps it when a lot is changed for another.
 */
function takeTold(rows: PackRow[], known: readonly ServedLoad[], grantRow: ReadonlyMap<string, number>): number[][] {
  const take = (row: PackRow, packs: number): number => {
    row.left -= packs;
    return packs;
  };
  const taken = known.map(({ packs: own }) =>
    rows.map((row) => {
      const packs = own.reduce((sum, one) => (grantRow.get(one.key) === row.row ? sum + one.packs : sum), 0);
      return take(row, Math.min(row.left, packs));
    }),
  );
  known.forEach(({ kg }, load) => {
    const packs = taken[load] as number[];
    let room = kg - rows.reduce((sum, row, i) => sum + row.kgPerPack * (packs[i] as number), 0);
    rows.forEach((row, i) => {
      const more = row.kgPerPack > 0 ? Math.min(row.left, Math.floor(room / row.kgPerPack + WEIGHT_SLACK)) : 0;
      if (more <= 0) return;
      packs[i] = (packs[i] as number) + take(row, more);
      room -= more * row.kgPerPack;
    });
  });
  return taken;
}

/** Weights of a plan document are rounded. */
const WEIGHT_SLACK = 1e-3;
