import type { ReactNode } from 'react';
import { useStale, useView } from '../state/use-stores.ts';
import type { CellProps } from './grid-keys.ts';

interface FigureProps {
  /** Path of the figure in the plan, such as `needs.seedKg`. */
  readonly path: string;
  /** What the figure is, for the head of the panel that opens. */
  readonly title: string;
  /** The figure as text, with its unit. */
  readonly children: string;
  /** Within a grid: what `useGridKeys().cellProps` gives, so that the grid's keys reach the figure. */
  readonly cell?: CellProps;
  readonly className?: string;
}

/** A figure of the plan: a dotted rule says that it opens to its inputs, a wavy one that an input has changed since. */
export function Figure({ path, title, children, cell, className = '' }: FigureProps): ReactNode {
  const openFigure = useView((view) => view.openFigure);
  const stale = useStale(path);
  return (
    <button
      type="button"
      className={`figure ${stale ? 'is-stale' : ''} ${className}`}
      title={title}
      {...cell}
      onClick={(event) => {
        event.stopPropagation();
        openFigure({ path, title, shown: children });
      }}
    >
      {children}
    </button>
  );
}
