import { lazy, type ReactNode, Suspense, useState } from 'react';
import type { Plan, Scenario } from '../../../engine/index.ts';
import { communityRow, type GridRow } from '../../../presentation/views/stock-grid.ts';
import type { StockView } from '../../../presentation/views/stock-view.ts';
import { useView, useWords } from '../../state/use-stores.ts';
import { useGridKeys } from '../grid-keys.ts';
import { GridHead } from './grid-head.tsx';
import { GridLine } from './grid-line.tsx';

const ShareEditor = lazy(async () => ({ default: (await import('./share-editor.tsx')).ShareEditor }));

/** The cell whose share is being fixed: row by key, crop by index. */
interface Edited {
  readonly row: string;
  readonly crop: number;
}

interface ZoneGridProps {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly stock: StockView;
}

/** Zones by crops. A grid with one tab stop; a bar is fixed by hand, a figure opens, a name chooses its zone on the map. */
export function ZoneGrid({ plan, scenario, stock }: ZoneGridProps) {
  const words = useWords();
  const chosen = useView((view) => view.zone);
  const community = useView((view) => view.community);
  const [edited, setEdited] = useState<Edited | null>(null);
  const { grid } = stock;
  const rows = withCommunity(plan, scenario, stock, community);
  // Name, communities, planned; bar and figure of each crop; packs needed and given where told; all crops.
  const columns = 3 + 2 * grid.crops.length + (grid.scarce === null ? 0 : 2) + 1;
  const { gridProps, cellProps } = useGridKeys(rows.length, columns);
  const leave = () => {
    const row = rows.findIndex(({ key }) => key === edited?.row);
    const column = 3 + 2 * (edited?.crop ?? 0);
    setEdited(null);
    const table = gridProps.ref.current;
    queueMicrotask(() => table?.querySelector<HTMLElement>(`[data-cell="${row},${column}"]`)?.focus());
  };
  return (
    <table className="ruled stock-grid" aria-label={words.stock.gridLabel} {...gridProps}>
      <GridHead grid={grid} />
      <tbody>
        {rows.map((row, index): ReactNode => {
          const cell = row.key === edited?.row ? row.cells[edited.crop] : undefined;
          return [
            <GridLine
              key={row.key}
              row={row}
              scarce={grid.scarce}
              isChosen={isChosen(row, chosen, community)}
              edited={cell ? (edited?.crop ?? null) : null}
              cellAt={(column) => cellProps(index, column)}
              onEdit={(crop) => setEdited({ row: row.key, crop })}
            />,
            cell && edited && (
              <tr key={`${row.key} editor`} className="share-editor-row">
                <td colSpan={columns}>
                  <Suspense>
                    <ShareEditor
                      key={`${row.key} ${cell.crop}`}
                      plan={plan}
                      scenario={scenario}
                      cell={cell}
                      place={row.name}
                      onLeave={leave}
                    />
                  </Suspense>
                </td>
              </tr>
            ),
          ];
        })}
      </tbody>
    </table>
  );
}

const isChosen = (row: GridRow, zone: string | null, community: string | null) =>
  row.communityId === null ? row.zoneId !== null && row.zoneId === zone : row.communityId === community;

/** Zones, below its zone the community that is chosen, and the sum. */
function withCommunity(plan: Plan, scenario: Scenario, stock: StockView, community: string | null): GridRow[] {
  const { grid, parts, holds } = stock;
  const own = communityRow(plan, scenario, parts, grid.scarce, holds, community);
  const zones = grid.zones.flatMap((zone) => (own && own.zoneId === zone.zoneId ? [zone, own] : [zone]));
  return [...zones, grid.all];
}
