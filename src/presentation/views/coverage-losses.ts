import type { Plan, Scenario } from '../../engine/index.ts';

export const LOSS_STEPS = ['store', 'road', 'community', 'seed'] as const;
export type LossStep = (typeof LOSS_STEPS)[number];

/** What living rhizobia lose on the way, means over the inoculated land. */
export interface LossBudget {
  readonly steps: readonly {
    readonly step: LossStep;
    readonly path: string;
    readonly log10: number;
    readonly percent: number;
  }[];
  readonly log10: number;
  readonly percent: number;
  readonly most: LossStep;
  /** Rhizobia on a seed at sowing, by the mean of log10, and the floor. */
  readonly perSeed: number;
  readonly floor: number;
}

/** Null where no inoculant is handed over, or its losses are not known. */
export function lossBudget({ outcomes }: Plan, { policy }: Scenario): LossBudget | null {
  const { crops } = outcomes;
  const columns = {
    store: crops.storeLog10,
    road: crops.roadLog10,
    community: crops.communityLog10,
    seed: crops.seedLog10,
  };
  const mean = (column: readonly (number | null)[]) => weightedMean(column, crops.inoculatedHa);
  const perSeed = mean(crops.log10PerSeed);
  const steps = LOSS_STEPS.map((step) => {
    const log10 = mean(columns[step]) ?? Number.NaN;
    return { step, path: `outcomes.crops.${step}Log10`, log10, percent: percentLost(log10) };
  });
  const log10 = steps.reduce((sum, step) => sum + step.log10, 0);
  if (perSeed === null || Number.isNaN(log10)) return null;
  return {
    steps,
    log10,
    percent: percentLost(log10),
    most: steps.reduce((a, b) => (b.log10 > a.log10 ? b : a)).step,
    perSeed: 10 ** perSeed,
    floor: policy.cellsPerSeedFloor,
  };
}

export const percentLost = (log10: number): number => 100 * (1 - 10 ** -log10);

/** Mean over rows where the value is known, by hectares; null where there is none. */
function weightedMean(column: readonly (number | null)[], hectares: readonly number[]): number | null {
  let [sum, weight] = [0, 0];
  column.forEach((value, row) => {
    const ha = hectares[row] ?? 0;
    if (value === null || ha <= 0) return;
    sum += ha * value;
    weight += ha;
  });
  return weight > 0 ? sum / weight : null;
}
