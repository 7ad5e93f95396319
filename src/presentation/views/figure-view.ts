import type { FigureProvenance, Plan, Status } from '../../engine/index.ts';
import { grouped } from '../grouped-figure.ts';
import type { Words } from '../wording/words.ts';

/** How sure an input is, as a mark that reads without colour. */
export type StatusMark = 'full' | 'inner' | 'half' | 'open' | 'dashed' | 'ring';

export interface FigureInputRow {
  readonly name: string;
  /** Value with its unit, or the words that it differs by row. */
  readonly value: string;
  readonly source: string;
  readonly status: Status;
  readonly mark: StatusMark;
  /** Path of the figure that this input is, where the plan says how that was made. */
  readonly opens: string | null;
}

export interface FigureView {
  readonly path: string;
  readonly unit: string;
  readonly formula: string;
  readonly source: string;
  readonly status: Status;
  readonly mark: StatusMark;
  readonly inputs: readonly FigureInputRow[];
}

const MARKS: Readonly<Record<Status, StatusMark>> = {
  read: 'full',
  'read*': 'inner',
  'read-2': 'inner',
  derived: 'half',
  memory: 'open',
  assumed: 'dashed',
  given: 'ring',
};

/** How a figure of the plan was made; null where the plan does not say. */
export function figureView(plan: Plan, path: string, words: Words): FigureView | null {
  const made = findProvenance(plan, path);
  if (made === null) return null;
  const { figure, unit, formula, source, status } = made;
  return {
    path: figure,
    unit,
    formula,
    source,
    status,
    mark: MARKS[status],
    inputs: made.inputs.map((input) => ({
      name: input.name,
      value: inputValue(input.value, input.unit, words),
      source: input.source,
      status: input.status,
      mark: MARKS[input.status],
      opens: input.from.startsWith('figure:') ? pathIfMade(plan, input.from.slice('figure:'.length)) : null,
    })),
  };
}

/** The figure as plain text, for a report or a letter. */
export function figureText(view: FigureView, title: string, shown: string, words: Words): string {
  const lines = view.inputs.map(
    (input) => `- ${input.name}: ${input.value} (${words.figure.statuses[input.status]}; ${input.source})`,
  );
  return [
    `${title}: ${shown}`,
    `${words.figure.formula}: ${view.formula}`,
    `${words.figure.sourceOfFigure}: ${view.source} (${words.figure.statuses[view.status]})`,
    `${words.figure.inputs}:`,
    ...lines,
  ].join('\n');
}

/** A figure's own entry, else that of the table it stands in: `needs.zone.seedKg` is made like `needs.zone`. */
function findProvenance({ provenance }: Plan, path: string): FigureProvenance | null {
  const steps = path.split('.');
  for (let length = steps.length; length > 0; length--) {
    const name = steps.slice(0, length).join('.');
    const found = provenance.find(({ figure }) => figure === name);
    if (found) return found;
  }
  return null;
}

const pathIfMade = (plan: Plan, path: string): string | null => (findProvenance(plan, path) === null ? null : path);

function inputValue(value: number | string | undefined, unit: string, words: Words): string {
  // A plain number has the unit 1 (ISO 80000-1), which is not written.
  const written = unit === '1' ? '' : unit;
  if (value === undefined) return written === '' ? words.figure.differs : `${words.figure.differs}, ${written}`;
  const text = typeof value === 'number' ? numberText(value) : value;
  return written === '' ? text : `${text} ${written}`;
}

/** As many decimals as the number has; large ones grouped. */
function numberText(value: number): string {
  const decimals = /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
  return Math.abs(value) >= 1e9 || (value !== 0 && Math.abs(value) < 1e-4) ? String(value) : grouped(value, decimals);
}
