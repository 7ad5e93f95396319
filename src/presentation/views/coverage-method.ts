import type { Crop, FigureInput, Plan, Problem, Status } from '../../engine/index.ts';

export interface AssumptionRow {
  readonly name: string;
  /** Null where it differs by row. */
  readonly value: string | null;
  readonly source: string;
  readonly status: Status;
}

export interface CoverageMethod {
  /** Inputs of the plan's figures, each once, by status, in the order of how well they are known. */
  readonly counts: readonly { readonly status: Status; readonly count: number }[];
  readonly inputs: number;
  /** Assumed or from memory. */
  readonly ours: readonly AssumptionRow[];
  /** Crops that are inoculated and for which no field response is published. */
  readonly cropsWithoutResponse: readonly Crop[];
  /** What else the files left open for these figures. */
  readonly leftOpen: readonly Problem[];
}

const ORDER: readonly Status[] = ['given', 'read', 'read*', 'derived', 'memory', 'assumed'];

/** Problems of stage 7 begin so. */
const OUTCOMES = 'E70';

/** Both kinds of second-hand reading count as one. */
const countedAs = (status: Status): Status => (status === 'read-2' ? 'read*' : status);

/** How well the inputs of the plan are known. Figures that are themselves worked out from inputs are not inputs. */
export function coverageMethod({ provenance, problems }: Plan): CoverageMethod {
  const inputs = new Map<string, FigureInput>();
  for (const input of provenance.flatMap((figure) => figure.inputs))
    if (!input.from.startsWith('figure:')) inputs.set(`${input.from}|${input.name}`, input);
  const all = [...inputs.values()];
  return {
    counts: ORDER.map((status) => ({
      status,
      count: all.filter((input) => countedAs(input.status) === status).length,
    })).filter(({ count }) => count > 0),
    inputs: all.length,
    ours: all
      .filter(({ status }) => status === 'assumed' || status === 'memory')
      .map(({ name, value, unit, source, status }) => ({
        name,
        value: value === undefined ? null : `${value}${unit === '1' ? '' : `\u00a0${unit}`}`,
        source,
        status,
      })),
    cropsWithoutResponse: problems.filter(({ code }) => code === 'E7002').map(({ facts }) => facts['crop'] as Crop),
    leftOpen: problems.filter(({ code }) => code.startsWith(OUTCOMES) && code !== 'E7002'),
  };
}
