import type { ToldPlan } from '../../vocabulary/told-plan.ts';
import type { Pick } from './allocate-commodity.ts';
import { NOISE_KG } from './ask.ts';
import type { Desk } from './give-out.ts';
import type { Settled } from './keep-served.ts';

/** What the packs people were told of are held against. */
type Today = Omit<Desk, 'places' | 'reach' | 'solver'>;

/**
 * Packs that people were told of stay theirs, as far as the lot still has them to give, the need is still there and no decision
 * speaks against it; where a lot no longer reaches for all, those of the earliest days keep them. Stickers are given anew: they
 * ride with seed.
 *
 * @param needKg need of each row, kg of seed, what was handed over before included
 */
export function keepTold(today: Today, told: ToldPlan, kind: 'seed' | 'inoculant', needKg: Float64Array): Settled {
  const { scenario, demand, products, packKg, verdicts, holds } = today;
  const rowOf = new Map(Array.from(demand.community, (community, r) => [`${community} ${demand.crop[r]}`, r]));
  const left = Int32Array.from(verdicts, ({ packsOffered }) => packsOffered);
  const roomKg = roomOf(today, kind, needKg);
  const packsOfLot = new Int32Array(scenario.lots.length);
  const kept = told.packs.flatMap(({ community, crop, lot, packs }): Pick[] => {
    const row = rowOf.get(`${community} ${crop}`);
    const kg = packKg[lot] as number;
    if (row === undefined || products[lot]?.kind !== kind || !(kg > 0)) return [];
    if (holds.forbiddenLots.has(`${row} ${lot}`) || !products[lot].crops.some((one) => one === scenario.crops[crop])) {
      return [];
    }
    const room = roomKg[row] as number;
    const mayStay = Math.min(packs, left[lot] as number, room > NOISE_KG ? Math.ceil(room / kg - NOISE_KG) : 0);
    if (mayStay <= 0) return [];
    left[lot] = (left[lot] as number) - mayStay;
    packsOfLot[lot] = (packsOfLot[lot] as number) + mayStay;
    roomKg[row] = room - mayStay * kg;
    return [{ row, lot, packs: mayStay }];
  });
  return { kept, closedWays: new Map(), packsOfLot };
}

/** What a row may still be given: its need with the contingency, less what is there, within what a decision allows. */
function roomOf(
  { scenario, demand, holds, handed }: Today,
  kind: 'seed' | 'inoculant',
  needKg: Float64Array,
): Float64Array {
  const contingency = 1 + scenario.policy.contingencyPercent / 100;
  return needKg.map((need, row) => {
    const hold = holds.byRow[kind].get(row);
    const own = kind === 'seed' ? (demand.ownSeedKg[row] as number) : 0;
    const most = hold ? Math.max(0, hold.high * (demand.seedNeedKg[row] as number) - own) : Number.POSITIVE_INFINITY;
    return Math.min(need * contingency, most) - (handed[`${kind}Kg`][row] as number);
  });
}
