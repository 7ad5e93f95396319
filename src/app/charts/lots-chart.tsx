import type { LotRow, LotsView } from '../../presentation/views/stock-lots.ts';
import { ToldText } from '../panels/stock/told-text.tsx';
import { useWords } from '../state/use-stores.ts';
import './lots-chart.css';

/** Thickness of the thinnest and of the thickest bar, px. */
const [THIN, THICK] = [3, 13];

const at = (part: number) => `${(100 * part).toFixed(3)}%`;

/** Lots as bars from the day they are there to their expiry date. A table, so that it reads without the drawing too. */
export function LotsChart({ lots }: { readonly lots: LotsView }) {
  const { stock } = useWords();
  return (
    <table className="lots-chart">
      <thead>
        <tr>
          <th scope="col">{stock.lot}</th>
          <th scope="col" className="number">
            {stock.lotPacks}
          </th>
          <th scope="col" className="lots-axis">
            <span className="unseen">{stock.lotTime}</span>
            <Axis lots={lots} />
          </th>
        </tr>
      </thead>
      <tbody>
        {lots.rows.map((row) => (
          <Lot key={row.id} row={row} lots={lots} />
        ))}
      </tbody>
    </table>
  );
}

/** Months above; today and the year below them. */
function Axis({ lots: { months, today } }: { readonly lots: LotsView }) {
  const { stock } = useWords();
  return (
    <span className="lots-ticks" aria-hidden="true">
      {months.map(({ at: place, label, year }) => (
        <span key={label} className="lots-month" style={{ insetInlineStart: at(place) }}>
          {label}
          {year !== null && <span className="lots-year">{year}</span>}
        </span>
      ))}
      <b className={today > 0.15 ? 'lots-today before' : 'lots-today'} style={{ insetInlineStart: at(today) }}>
        {stock.today}
      </b>
    </span>
  );
}

function Lot({ row, lots }: { readonly row: LotRow; readonly lots: LotsView }) {
  const { stock } = useWords();
  const height = THIN + (THICK - THIN) * row.weight;
  const said = row.kept !== null ? { text: row.kept, figures: [] } : row.soon;
  // Words stand beside a short bar, else below it, so that they cover neither the bar nor its end.
  const isBeside = said !== null && row.kept === null && row.to < 0.4;
  const words = said && (
    <span
      className={isBeside ? 'lots-beside' : 'lots-said'}
      style={{ insetInlineStart: at(isBeside ? row.to : row.from) }}
    >
      {row.kept !== null && <b>{stock.keptBack}</b>} <ToldText told={said} />
    </span>
  );
  return (
    <tr className={row.kept === null ? '' : 'is-kept'}>
      <th scope="row" title={`${row.goods}, ${row.depot}`}>
        {row.id}
      </th>
      <td className="number">{row.packs}</td>
      <td className="lots-track">
        <Backdrop lots={lots} />
        <span className="lots-line">
          <span
            className={row.kept === null ? 'lots-bar' : 'lots-bar hatch-some'}
            style={{ insetInlineStart: at(row.from), width: at(Math.max(0, row.to - row.from)), height: `${height}px` }}
          />
          {!row.goesOn && <span className="lots-end" style={{ insetInlineStart: at(row.to) }} />}
          {isBeside && words}
        </span>
        {row.soon === null && <span className="unseen">{stock.expires(row.expires)}</span>}
        {!isBeside && words}
      </td>
    </tr>
  );
}

/** What is the same behind every lot: months, the sowing window, today. */
function Backdrop({ lots: { months, today, sowing } }: { readonly lots: LotsView }) {
  return (
    <span className="lots-backdrop" aria-hidden="true">
      {sowing && (
        <span
          className="lots-window"
          style={{ insetInlineStart: at(sowing.from), width: at(sowing.to - sowing.from) }}
        />
      )}
      {months.map(({ at: place, label }) => (
        <span key={label} className="lots-grid" style={{ insetInlineStart: at(place) }} />
      ))}
      <span className="lots-now" style={{ insetInlineStart: at(today) }} />
    </span>
  );
}
