import { localNumber } from '../../../presentation/local-number.ts';
import { soFarByCommunity } from '../../../presentation/views/coverage-so-far.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useSeason, useView, useWords } from '../../state/use-stores.ts';
import { dayTitle } from '../days/day-title.ts';

/** What communities have signed for, and what they have sown: those of the zone chosen, else all. Nothing before the first record. */
export function SoFar() {
  const words = useWords();
  const { soFar } = paperWords(words).runs;
  const zone = useView((view) => view.zone);
  const { plan, scenario } = useSeason();
  if (!plan || !scenario || scenario.handovers.length === 0) return null;
  const rows = soFarByCommunity(plan, scenario, zone);
  const zoneName = scenario.zones.find(({ id }) => id === zone)?.name ?? null;
  const count = (value: number) => localNumber(value, words);
  return (
    <details className="so-far" open={zone !== null}>
      <summary>
        <h2>{soFar.title(zoneName ?? words.coverage.zones.all, count(rows.length))}</h2>
      </summary>
      <div className="scrolls">
        <table className="ruled">
          <thead>
            <tr>
              <th scope="col">{soFar.community}</th>
              {[soFar.bags, soFar.packs, soFar.returned, soFar.toCome, soFar.growers].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">{soFar.handed}</th>
              <th scope="col">{soFar.sown}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((one) => (
              <tr key={one.communityId}>
                <th scope="row">{one.name}</th>
                <td className="number">{count(one.seedBags)}</td>
                <td className="number">{count(one.inoculantPacks)}</td>
                <td className="number">{count(one.returned)}</td>
                <td className="number">{count(one.packsToCome)}</td>
                <td className="number">
                  {one.growers === null ? words.coverage.zones.none : count(one.growers)}
                  {one.growersWomen !== null && ` ${soFar.women(count(one.growersWomen))}`}
                </td>
                <td>
                  {one.first === one.last
                    ? dayTitle(one.first, words)
                    : soFar.span(dayTitle(one.first, words), dayTitle(one.last, words))}
                </td>
                <td>{one.sownOn === null ? words.coverage.zones.none : dayTitle(one.sownOn, words)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
