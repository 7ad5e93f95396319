import type { FigureInput, FigureProvenance, Sourced, Status } from '../../vocabulary/index.ts';

/** One figure with its inputs; as sure as the least sure of them. */
export function figure(name: string, unit: string, formula: string, inputs: readonly FigureInput[]): FigureProvenance {
  const statuses = inputs.map(({ status }) => status);
  const status = statuses.includes('assumed') ? 'assumed' : statuses.includes('memory') ? 'memory' : 'derived';
  return { figure: name, unit, formula, inputs, status, source: 'arithmetic on the inputs named' };
}

/** An input from a file or another figure; `from` names it. */
export function given(name: string, from: string, unit: string, status: Status): FigureInput {
  return { name, from, unit, status, source: from.replace(/^[a-z]+:/, '') };
}

/** An input from the reference data. */
export function reference(name: string, unit: string, { value, status, source }: Sourced<number>): FigureInput {
  return { name, from: `reference:${name}`, unit, value, status, source };
}
