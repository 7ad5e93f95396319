import type { RankedRow } from '../../presentation/views/coverage-replay.ts';
import { paperWords } from '../../presentation/wording/paper-words.ts';
import { useAmounts } from '../panels/coverage/use-amounts.ts';
import { useWords } from '../state/use-stores.ts';

/** Shares of a spread, a bar each: filled alone, framed with all it does together with others. The numbers stand beside them. */
export function UnknownsChart({ rows }: { readonly rows: readonly RankedRow[] }) {
  const words = paperWords(useWords()).replay;
  const { amount } = useAmounts();
  return (
    <table className="ruled unknowns">
      <thead>
        <tr>
          <th scope="col">{words.page.unknown}</th>
          <th scope="col" className="number">
            {words.page.alone}
          </th>
          <th scope="col" className="number">
            {words.page.inAll}
          </th>
          <td />
        </tr>
      </thead>
      <tbody>
        {rows.map(({ unknown, alone, inAll }) => (
          <tr key={unknown}>
            <th scope="row">{words.unknowns[unknown]}</th>
            <td className="number">{amount(alone)}</td>
            <td className="number">{amount(inAll)}</td>
            <td className="unknowns-bar">
              <svg width="100%" height="12" aria-hidden="true">
                <rect className="unknown-alone" y="2" width={`${Math.min(100, alone)}%`} height="8" />
                <rect className="unknown-all" x="0.5" y="2" width={`${Math.min(99.5, inAll)}%`} height="8" />
              </svg>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
