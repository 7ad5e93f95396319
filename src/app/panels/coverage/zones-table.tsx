import { coverageZones, type ZoneCoverage } from '../../../presentation/views/coverage-zones.ts';
import { ZoneBar } from '../../charts/zone-bar.tsx';
import { saveTable } from '../../state/save-tables.ts';
import { useSeason, useView, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { type CellProps, useGridKeys } from '../grid-keys.ts';
import { useAmounts } from './use-amounts.ts';

/** Cells of a row that can be reached: the zone's name, and its figures; signed for and sown once there are any. */
const cellsPerRow = (isSigned: boolean) => (isSigned ? 9 : 7);

type Cells = (row: number, column: number) => CellProps;

/** Zones from plan to field: choosing a row chooses the zone on the map; each figure opens. One tab stop, arrows within. */
export function CoverageZonesTable() {
  const words = useWords();
  const { plan, scenario } = useSeason();
  const isSigned = (scenario?.handovers.length ?? 0) > 0;
  // Zones, and the district below them.
  const rows = (plan?.outcomes.zones.zone.length ?? 0) + 1;
  const { gridProps, cellProps } = useGridKeys(rows, cellsPerRow(isSigned));
  if (!plan || !scenario) return null;
  const view = coverageZones(plan, scenario);
  const text = words.coverage.zones;
  return (
    <>
      <table className="ruled zones coverage-zones" aria-label={text.title} {...gridProps}>
        <thead>
          <tr>
            <th scope="col">{text.zone}</th>
            {[text.growers, text.planned, text.expected, text.range, text.chance].map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
            <th scope="col" className="bar-column">
              {text.bar}
            </th>
            {[text.nitrogen, text.signedFor, text.sown].map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.rows.map((zone, row) => (
            <ZoneRow key={zone.id ?? 'outside'} zone={zone} row={row} scaleHa={view.scaleHa} cells={cellProps} />
          ))}
        </tbody>
        <tfoot>
          <DistrictRow row={view.rows.length} isSigned={isSigned} cells={cellProps} />
        </tfoot>
      </table>
      <p className="note table-foot">
        <span>
          {view.cutOff > 0 && `${text.cutOff(view.cutOff)} `}
          {text.chanceNote} {text.middles} {words.coverage.stages.explain}
        </span>
        <button type="button" className="link" onClick={() => void saveTable('zones.csv', plan, scenario)}>
          {text.save}
        </button>
      </p>
    </>
  );
}

interface ZoneRowProps {
  readonly zone: ZoneCoverage;
  readonly row: number;
  readonly scaleHa: number;
  readonly cells: Cells;
}

function ZoneRow({ zone, row, scaleHa, cells }: ZoneRowProps) {
  const { amount, hectares, tonnes } = useAmounts();
  const words = useWords();
  const text = words.coverage.zones;
  const isChosen = useView((view) => zone.id !== null && view.zone === zone.id);
  const chooseZone = useView((view) => view.chooseZone);
  const name = zone.name ?? text.outside;
  const figure = (column: number, path: string, head: string, shown: string) => (
    <td className="number">
      <Figure path={`outcomes.zones.${path}`} title={`${head}, ${name}`} cell={cells(row, column)}>
        {shown}
      </Figure>
    </td>
  );
  const nothing = <td className="number soft">{text.none}</td>;
  return (
    <tr aria-selected={isChosen} data-zone={zone.id}>
      <th scope="row">
        <button
          type="button"
          className="row-name"
          {...cells(row, 0)}
          disabled={zone.id === null}
          onClick={() => chooseZone(isChosen ? null : zone.id)}
        >
          {name}
          {zone.cutOff > 0 && <span className="dagger"> {text.dagger}</span>}
        </button>
      </th>
      {figure(1, 'farmers', text.growers, amount(zone.farmers))}
      {figure(2, 'plannedHa', text.planned, hectares(zone.plannedHa))}
      {figure(3, 'reachedRange', text.expected, hectares(zone.expected.p50))}
      {figure(4, 'reachedRange', text.range, rangeText(zone.expected, hectares, words.zones.to))}
      {zone.chancePercent === null ? (
        <NoChance cell={cells(row, 5)} />
      ) : (
        figure(5, 'inTimeChance', text.chanceTitle, amount(zone.chancePercent))
      )}
      <td className="bar-column">
        <ZoneBar zone={zone} scaleHa={scaleHa} />
      </td>
      {figure(6, 'nitrogenKg', text.nitrogenTitle, tonnes(zone.nitrogenKg))}
      {zone.signedForHa === null ? nothing : figure(7, 'signedForHa', text.signedFor, hectares(zone.signedForHa))}
      {zone.sownHa === null ? nothing : figure(8, 'sownHa', text.sown, hectares(zone.sownHa))}
    </tr>
  );
}

interface DistrictRowProps {
  readonly row: number;
  readonly isSigned: boolean;
  readonly cells: Cells;
}

/** The headline, below the zones. Its name can be reached as the zones' are, and lets a chosen zone go. */
function DistrictRow({ row, isSigned, cells }: DistrictRowProps) {
  const words = useWords();
  const { amount, hectares, tonnes } = useAmounts();
  const plan = useSeason((season) => season.plan);
  const chooseZone = useView((view) => view.chooseZone);
  const text = words.coverage.zones;
  if (!plan) return null;
  const { headline } = plan.outcomes;
  const figure = (column: number, path: string, head: string, shown: string) => (
    <td className="number">
      <Figure path={path} title={`${head}, ${text.all}`} cell={cells(row, column)}>
        {shown}
      </Figure>
    </td>
  );
  const nothing = <td className="number soft">{text.none}</td>;
  const of = (name: string) => `outcomes.headline.${name}`;
  return (
    <tr>
      <th scope="row">
        <button type="button" className="row-name" {...cells(row, 0)} onClick={() => chooseZone(null)}>
          {text.all}
        </button>
      </th>
      {figure(1, of('farmers'), text.growers, amount(headline.farmers))}
      {figure(2, of('plannedHa'), text.planned, hectares(headline.plannedHa))}
      {figure(3, of('reachedHa'), text.expected, hectares(headline.reachedHa.p50))}
      {figure(4, of('reachedHa'), text.range, rangeText(headline.reachedHa, hectares, words.zones.to))}
      <NoChance cell={cells(row, 5)} />
      <td />
      {figure(6, of('nitrogenKg'), text.nitrogenTitle, tonnes(headline.nitrogenKg.p50))}
      {isSigned ? figure(7, of('signedForHa'), text.signedFor, hectares(headline.signedForHa)) : nothing}
      {isSigned ? figure(8, of('sownHa'), text.sown, hectares(headline.sownHa)) : nothing}
    </tr>
  );
}

/** A chance is told of zones that packs are sent to; the cell can still be reached, so that arrows do not end at it. */
function NoChance({ cell }: { readonly cell: CellProps }) {
  const { none } = useWords().coverage.zones;
  return (
    <td className="number soft" {...cell}>
      {none}
    </td>
  );
}

/** `66 to 88`; one figure where both ends read the same. */
function rangeText(
  { p10, p90 }: ZoneCoverage['expected'],
  hectares: (ha: number) => string,
  to: (low: string, high: string) => string,
): string {
  const [low, high] = [hectares(p10), hectares(p90)];
  return low === high ? low : to(low, high);
}
