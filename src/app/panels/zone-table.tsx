import type { Plan } from '../../engine/index.ts';
import { grouped } from '../../presentation/grouped-figure.ts';
import { useSeason, useView, useWords } from '../state/use-stores.ts';
import { Figure } from './figure.tsx';
import { useGridKeys } from './grid-keys.ts';

type Zones = Plan['outcomes']['zones'];

/** One column of figures by zone. */
export interface ZoneColumn {
  readonly head: string;
  /** Path of the figure, for the panel that opens. */
  readonly path: string;
  readonly text: (zones: Zones, row: number) => string;
}

/** Zones by figures: choosing a row chooses the zone everywhere; each figure opens. One tab stop, arrows within. */
export function ZoneTable({ columns }: { readonly columns: readonly ZoneColumn[] }) {
  const words = useWords();
  const plan = useSeason((season) => season.plan);
  const scenario = useSeason((season) => season.scenario);
  const chosen = useView((view) => view.zone);
  const chooseZone = useView((view) => view.chooseZone);
  const zones = plan?.outcomes.zones;
  const { gridProps, cellProps } = useGridKeys(zones?.zone.length ?? 0, columns.length + 1);
  if (!plan || !scenario || !zones) return null;
  return (
    <table className="ruled zones" aria-label={words.zones.zone} {...gridProps}>
      <thead>
        <tr>
          <th scope="col">{words.zones.zone}</th>
          {columns.map(({ head, path }) => (
            <th key={path} scope="col" className="number">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {zones.zone.map((zone, row) => {
          const id = plan.ids.zones[zone] ?? null;
          const name = scenario.zones[zone]?.name ?? id ?? words.zones.all;
          const isChosen = id !== null && id === chosen;
          const { tabIndex, ...cell } = cellProps(row, 0);
          return (
            <tr key={id ?? row} aria-selected={isChosen} data-zone={id}>
              <th scope="row">
                <button
                  type="button"
                  className="row-name"
                  tabIndex={tabIndex}
                  {...cell}
                  onClick={() => chooseZone(isChosen ? null : id)}
                >
                  {name}
                </button>
              </th>
              {columns.map(({ head, path, text }, column) => (
                <td key={path} className="number">
                  <Figure path={path} title={`${head}, ${name}`} cell={cellProps(row, column + 1)}>
                    {text(zones, row)}
                  </Figure>
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

export const figureColumn = (head: string, path: string, of: (zones: Zones) => readonly number[], decimals = 0) => ({
  head,
  path,
  text: (zones: Zones, row: number) => grouped(of(zones)[row] ?? 0, decimals),
});
