import { LABEL_HOUR_SHARE } from '../../reference/boxes.ts';
import { UNLOADING_MINUTES_PER_T } from '../../reference/service-times.ts';
import { packLog10PerDay } from '../../science/survival.ts';
import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation, Consignment, ReachCurve } from '../../vocabulary/stage-results/allocation.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import type { ToldDay } from '../../vocabulary/told-plan.ts';
import type { CutLoads } from './cut-loads.ts';
import { costOfDays, judgeDays, priceOfPromise, pricesOfBrokenPromise } from './day-costs.ts';
import { groupRows } from './group-rows.ts';
import { weighLoads } from './load-worth.ts';
import { daysBeforeSowing } from './rules/before-sowing.ts';
import { decisionsOnConsignments, type LoadDecisions } from './rules/decisions-on-loads.ts';
import type { DayVerdict } from './rules/hand-over-days.ts';
import { linkSeed, type SeedLinks } from './rules/seed-first.ts';
import { carriesTraining } from './rules/training-once.ts';
import { consignmentKey, type HeldAt } from './served-earlier.ts';
import { survivalOfLoads } from './survival-of-loads.ts';
import type { DepotRound, Slot } from './vehicle-day-slots.ts';

/** A load as the search reads it. */
export interface TaskLoad {
  readonly consignment: number;
  readonly community: number;
  readonly depot: number;
  /** Local number of the place in its depot's round. */
  readonly place: number;
  readonly kg: number;
  readonly coolLitres: number;
  readonly inoculantKg: number;
  readonly unloadingMinutes: number;
  readonly mayTrain: boolean;
  readonly earliest: number;
  readonly latest: number;
  /** Per planning day: whether a hand-over is allowed, and if not, by what. */
  readonly dayVerdict: readonly DayVerdict[];
  /** Per planning day: value lost with no loss on the road, off-market and broken-promise costs in. Infinity: not allowed. */
  readonly dayCost: Float64Array;
  /** Planning day that the community was told; null where none. */
  readonly promisedDay: number | null;
  readonly worth: number;
  readonly unservedCost: number;
  readonly reach: ReachCurve;
  /** Index into `survivalRates`; -1 for dry goods. */
  readonly survival: number;
  /** Index into `storageLimits`; -1 where no label states one or the goods are dry. */
  readonly storageLimit: number;
  readonly lock: LoadDecisions['lock'];
  readonly held: HeldAt | null;
  /** Fertiliser: put on vehicles after all else, where there is room. */
  readonly ridesLast: boolean;
}

/** All that the search reads: loads, vehicle-days, and the rules that tie loads to each other. */
export interface DispatchTask {
  readonly loads: readonly TaskLoad[];
  readonly slots: readonly Slot[];
  readonly rounds: readonly DepotRound[];
  readonly planningDays: number;
  /** First slot of each depot and day: [depot * (planningDays + 1) + day]; the next entry ends it. */
  readonly slotOffsets: Int32Array;
  readonly seedLinks: SeedLinks;
  /** Loads of each community that may carry its training. */
  readonly trainees: readonly (readonly number[])[];
  readonly trainingMinutes: number;
  readonly mostStorageHours: number | null;
  /** Share of a load's value that an hour above its label's limit ranks as; 0 under the model rule. */
  readonly labelHourShare: number;
  /** log10 lost per day at a temperature, per distinct survival set. */
  readonly survivalRates: readonly ((celsius: number) => number)[];
  /** Distinct storage limits, °C, ascending. */
  readonly storageLimits: readonly number[];
  readonly dearestJourney: number;
  /** What each consignment costs that comes on another day than it was told, in the scenario's currency. */
  readonly promisePrice: number;
}

/**
 * @param told whether the days of an earlier plan count as promised where no decision promises another
 * @param days days that people were told, for goods that stand in no earlier load
 */
export function compileTask(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  allocation: Allocation,
  { slots, rounds }: { readonly slots: readonly Slot[]; readonly rounds: readonly DepotRound[] },
  cut: CutLoads,
  told: boolean,
  days: readonly ToldDay[],
): DispatchTask {
  const { consignments } = allocation;
  const worth = weighLoads(cut.loads, consignments, slots);
  const training = carriesTraining(consignments);
  const decided = decisionsOnConsignments(scenario, decisions, consignments);
  const verdicts = consignments.map((c) => judgeDays(scenario, places, season, c));
  const survival = survivalOfLoads(scenario, allocation, cut.loads);
  const promisePrice = priceOfPromise(scenario, worth.dearestJourney);
  const toldDay = new Map<string, number>();
  for (const { day, ...one } of days) {
    const key = consignmentKey(one);
    toldDay.set(key, Math.min(day, toldDay.get(key) ?? day));
  }
  const promisedDays = cut.loads.map(({ consignment }, i) => {
    const promised = decided[consignment]?.promisedDay ?? (told ? cut.held[i]?.day : null);
    return promised ?? toldDay.get(consignmentKey(consignments[consignment] as Consignment)) ?? null;
  });
  const brokenPromise = pricesOfBrokenPromise(cut.loads, promisedDays, promisePrice);
  const storageLimits = [...new Set(consignments.flatMap((c) => c.maxStorageC ?? []))].sort((a, b) => a - b);
  const loads = cut.loads.map((load, index): TaskLoad => {
    const consignment = consignments[load.consignment] as Consignment;
    const { lock } = decided[load.consignment] as LoadDecisions;
    const promisedDay = promisedDays[index] as number | null;
    const dayVerdict = verdicts[load.consignment] as readonly DayVerdict[];
    return {
      consignment: load.consignment,
      community: consignment.community,
      depot: consignment.depot,
      place: rounds[consignment.depot]?.localOfPlace.get(consignment.place) as number,
      kg: load.kg,
      coolLitres: load.coolLitres,
      inoculantKg: load.inoculantKg,
      unloadingMinutes: ((load.kg - load.inoculantKg) * UNLOADING_MINUTES_PER_T.value) / 1000,
      mayTrain: training[load.consignment] as boolean,
      earliest: consignment.earliest,
      latest: consignment.latest,
      dayVerdict,
      dayCost: costOfDays(scenario, season, consignment, { lock, promisedDay }, dayVerdict, {
        worth: worth.worth[index] as number,
        brokenPromise: brokenPromise[index] as number,
      }),
      promisedDay,
      worth: worth.worth[index] as number,
      unservedCost: (worth.unserved[index] as number) + (brokenPromise[index] as number),
      reach: consignment.reach,
      survival: survival.ofLoad[index] as number,
      storageLimit: load.inoculantKg > 0 ? storageLimits.indexOf(consignment.maxStorageC ?? Number.NaN) : -1,
      lock,
      held: cut.held[index] ?? null,
      ridesLast: consignment.group === 'fertiliser',
    };
  });
  const trainees = groupRows(loads, (load) => (load.mayTrain ? load.community : -1));
  return {
    loads,
    slots,
    rounds,
    planningDays: season.planningDays,
    slotOffsets: offsetsOf(slots, rounds.length, season.planningDays),
    seedLinks: linkSeed(scenario, allocation, cut.loads, daysBeforeSowing(season, places, allocation, cut.loads)),
    trainees: scenario.communities.map((_, community) => trainees.get(community) ?? []),
    trainingMinutes: scenario.policy.trainingMinutes,
    mostStorageHours: scenario.policy.hoursAboveStorage,
    labelHourShare: scenario.policy.heatRule === 'label' ? LABEL_HOUR_SHARE.value : 0,
    survivalRates: survival.sets.map((set) => (celsius: number) => packLog10PerDay(celsius, set)),
    storageLimits,
    dearestJourney: worth.dearestJourney,
    promisePrice,
  };
}

function offsetsOf(slots: readonly Slot[], depots: number, planningDays: number): Int32Array {
  const offsets = new Int32Array(depots * (planningDays + 1) + 1);
  for (const slot of slots) {
    const key = slot.depot * (planningDays + 1) + slot.day + 1;
    offsets[key] = (offsets[key] as number) + 1;
  }
  for (let i = 1; i < offsets.length; i++) offsets[i] = (offsets[i] as number) + (offsets[i - 1] as number);
  return offsets;
}
