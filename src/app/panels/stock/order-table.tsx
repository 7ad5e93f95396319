import type { Plan, Scenario } from '../../../engine/index.ts';
import { type OrderLine, orderList } from '../../../presentation/views/order-list.ts';
import { saveTable } from '../../state/save-tables.ts';
import { useWords } from '../../state/use-stores.ts';

/** What to order, by when, for what money and land: folded, as the headline of it says enough in the meeting. */
export function OrderTable({ plan, scenario }: { readonly plan: Plan; readonly scenario: Scenario }) {
  const words = useWords();
  const { stock } = words;
  const { lines, total } = orderList(plan, scenario, words);
  if (lines.length === 0) return <p className="note">{total}</p>;
  return (
    <details className="orders">
      <summary>
        <h2>{stock.ordersTitle}</h2> {total}
      </summary>
      <table className="ruled">
        <thead>
          <tr>
            <th scope="col">{stock.ordersHeads.when}</th>
            <th scope="col">{stock.ordersHeads.goods}</th>
            <th scope="col">{stock.ordersHeads.amount}</th>
            <th scope="col" className="number">
              {stock.ordersHeads.cost}
            </th>
            <th scope="col" className="number">
              {stock.ordersHeads.land}
            </th>
            <th scope="col">{stock.ordersHeads.arrives}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, i) => (
            <OrderRow key={line.row} line={line} isSameDay={lines[i - 1]?.when === line.when} />
          ))}
        </tbody>
      </table>
      <button type="button" className="link" onClick={() => void saveTable('orders.csv', plan, scenario)}>
        {stock.saveOrders}
      </button>
    </details>
  );
}

interface OrderRowProps {
  readonly line: OrderLine;
  /** As the line above: said once to the eye. */
  readonly isSameDay: boolean;
}

function OrderRow({ line, isSameDay }: OrderRowProps) {
  return (
    <tr className={line.verdict === 'too-late' ? 'soft' : ''}>
      <td>
        <span className={isSameDay ? 'unseen' : ''}>{line.when}</span>
      </td>
      <th scope="row">
        {line.goods} <span className="note">{line.depot}</span>
      </th>
      <td>{line.amount}</td>
      <td className="number">{line.cost ?? '–'}</td>
      <td className="number">{line.hectares}</td>
      <td>
        {line.arrives} {line.notes.length > 0 && <span className="note">{line.notes.join('; ')}</span>}
      </td>
    </tr>
  );
}
