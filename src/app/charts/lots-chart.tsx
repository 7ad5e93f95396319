import type { LotRow, LotsView } from '../../presentation/views/stock-lots.ts';
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

/** Months above, the sowing window and today below them. */
function Axis({ lots: { months, today, sowing } }: { readonly lots: LotsView }) {
  const { stock } = useWords();
  return (
    <span className="lots-ticks" aria-hidden="true">
      {months.map(({ at: place, label }) => (
        <span key={label} className="lots-month" style={{ insetInlineStart: at(place) }}>
          {label}
        </span>
      ))}
      <b className={today > 0.12 ? 'lots-today before' : 'lots-today'} style={{ insetInlineStart: at(today) }}>
        {stock.today}
      </b>
      {sowing && (
        <span
          className="lots-sowing"
          title={stock.sowingWindowTitle}
          style={{ insetInlineStart: at(Math.max(sowing.from, today)) }}
        >
          {stock.sowingWindow}
        </span>
      )}
    </span>
  );
}

function Lot({ row, lots }: { readonly row: LotRow; readonly lots: LotsView }) {
  const { stock } = useWords();
  const said = row.kept ?? row.soon;
  const height = THIN + (THICK - THIN) * row.weight;
  // Words stand beside the bar where they fit, else below it, so that they cover neither the bar nor its end.
  const isBeside = said !== null && row.kept === null && row.to < 0.45;
  return (
    <tr className={row.kept === null ? '' : 'is-kept'}>
      <th scope="row" title={`${row.goods}, ${row.depot}`}>
        {row.id}
      </th>
      <td className="number">{row.packs.split(' ')[0]}</td>
      <td className="lots-track">
        <Backdrop lots={lots} />
        <span className="lots-line">
          <span
            className={row.kept === null ? 'lots-bar' : 'lots-bar hatch-some'}
            style={{ insetInlineStart: at(row.from), width: at(Math.max(0, row.to - row.from)), height: `${height}px` }}
          />
          {!row.goesOn && <span className="lots-end" style={{ insetInlineStart: at(row.to) }} />}
          {isBeside && (
            <span className="lots-beside" style={{ insetInlineStart: at(row.to) }}>
              {said}
            </span>
          )}
        </span>
        {(said === null || row.kept !== null) && <span className="unseen">{stock.expires(row.expires)}</span>}
        {said !== null && !isBeside && (
          <span className="lots-said" style={{ paddingInlineStart: at(row.from) }}>
            {row.kept !== null && <b>{stock.keptBack}</b>} {said}
          </span>
        )}
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
