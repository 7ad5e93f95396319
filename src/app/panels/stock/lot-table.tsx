import type { LotRow, LotsView } from '../../../presentation/views/stock-lots.ts';
import { useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';

/** All lots with what the chart has no room for: depot, test, what may be given. */
export function LotTable({ lots }: { readonly lots: LotsView }) {
  const { stock } = useWords();
  return (
    // Long, so it scrolls within the page's left part. Its figures are reached by keyboard.
    <section className="lot-scroll" aria-label={stock.allLots}>
      <table className="ruled lot-table">
        <thead>
          <tr>
            <th scope="col">{stock.lot}</th>
            <th scope="col">{stock.lotGoods}</th>
            <th scope="col" className="number">
              {stock.lotStock}
            </th>
            <th scope="col" className="number">
              {stock.lotOffered}
            </th>
            <th scope="col">{stock.lotTest}</th>
            <th scope="col">{stock.lotExpires}</th>
          </tr>
        </thead>
        <tbody>
          {lots.rows.map((row) => (
            <Lot key={row.id} row={row} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Lot({ row }: { readonly row: LotRow }) {
  const { stock } = useWords();
  return (
    <>
      <tr className={row.kept === null ? '' : 'is-kept'}>
        <th scope="row">
          <b>{row.id}</b>
        </th>
        <td>
          {row.goods}
          <span className="note">{row.depot}</span>
        </td>
        <td className="number">{row.packs}</td>
        <td className="number">
          <Figure path="allocation.lots.packsOffered" title={stock.packsTitle(row.id)}>
            {row.offered}
          </Figure>
        </td>
        <td className="tabular">
          {row.counted === null ? (
            row.test
          ) : (
            <Figure path="allocation.lots.countPerG" title={stock.countTitle(row.id)}>
              {row.test}
            </Figure>
          )}
          {row.counted !== null && <span className="note">{row.counted}</span>}
        </td>
        <td className="tabular">
          {row.expires}
          {row.chance !== null && (
            <Figure path="allocation.lots.chanceSownBeforeExpiry" title={stock.chanceTitle(row.id)} className="note">
              {row.chance}
            </Figure>
          )}
        </td>
      </tr>
      {row.kept !== null && (
        <tr className="lot-kept">
          <td />
          <td colSpan={5} className="note alarm">
            {stock.keptBack} {row.kept}
          </td>
        </tr>
      )}
    </>
  );
}
