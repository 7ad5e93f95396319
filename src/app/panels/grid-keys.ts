import { type KeyboardEvent, useRef, useState } from 'react';

/** What a cell of a grid needs for being reached. */
export interface CellProps {
  readonly 'data-cell': string;
  readonly tabIndex: number;
  readonly onFocus: () => void;
}

/**
 * A grid with one tab stop: arrows, Home and End move among its cells; what a cell does is the cell's own. Give
 * `gridProps` to the table and `cellProps(row, column)` to each cell that can be reached.
 */
export function useGridKeys(rows: number, columns: number) {
  const grid = useRef<HTMLTableElement>(null);
  const [[row, column], setActive] = useState<readonly [number, number]>([0, 0]);
  const move = (toRow: number, toColumn: number) => {
    const to = [clamp(toRow, rows), clamp(toColumn, columns)] as const;
    setActive(to);
    grid.current?.querySelector<HTMLElement>(`[data-cell="${to.join()}"]`)?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    // An input within a cell keeps its own keys.
    const to = event.target instanceof HTMLInputElement ? null : stepFrom(row, column, event);
    if (to === null) return;
    event.preventDefault();
    move(...to);
  };
  const cellProps = (ofRow: number, ofColumn: number): CellProps => ({
    'data-cell': `${ofRow},${ofColumn}`,
    tabIndex: ofRow === clamp(row, rows) && ofColumn === clamp(column, columns) ? 0 : -1,
    onFocus: () => setActive([ofRow, ofColumn]),
  });
  return { gridProps: { ref: grid, role: 'grid', onKeyDown } as const, cellProps };
}

/** Cell that a key leads to; beyond the edge where the grid ends there. */
function stepFrom(row: number, column: number, { key, ctrlKey }: KeyboardEvent): readonly [number, number] | null {
  switch (key) {
    case 'ArrowDown':
      return [row + 1, column];
    case 'ArrowUp':
      return [row - 1, column];
    case 'ArrowRight':
      return [row, column + 1];
    case 'ArrowLeft':
      return [row, column - 1];
    case 'Home':
      return [ctrlKey ? 0 : row, 0];
    case 'End':
      return [ctrlKey ? Number.MAX_SAFE_INTEGER : row, Number.MAX_SAFE_INTEGER];
    default:
      return null;
  }
}

const clamp = (value: number, length: number): number => Math.max(0, Math.min(length - 1, value));
