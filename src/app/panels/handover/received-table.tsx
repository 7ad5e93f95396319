import { localNumber } from '../../../presentation/local-number.ts';
import type { HandedPacks } from '../../../presentation/papers/handover-goods.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import { dateText } from '../../../presentation/views/frame-view.ts';
import type { HandoverWords } from '../../../presentation/wording/handover-words.ts';
import { dayTitle } from '../days/day-title.ts';
import { useHandover, useHandoverWords } from './use-handover.ts';

/** What each vehicle brings, lot by lot: to be counted together. */
export default function ReceivedTable() {
  const words = useHandoverWords();
  const { handover } = words;
  const shown = useHandover();
  if (shown === null || shown.visits.length === 0) return null;
  return (
    <section>
      <h2>{handover.received}</h2>
      <table className="ruled received">
        <thead>
          <tr>
            <th scope="col">{handover.goods}</th>
            <th scope="col">{handover.lot}</th>
          </tr>
        </thead>
        {shown.visits.map(({ date, minute, vehicleId, goods }) => (
          <tbody key={`${date} ${minute} ${vehicleId}`}>
            <tr>
              <th scope="rowgroup" colSpan={2}>
                <b>{handover.visit(dayTitle(date, words), hourText(minute), vehicleId)}</b>
              </th>
            </tr>
            {goods.map((packs, i) => (
              // One lot may come twice, for two crops.
              // biome-ignore lint/suspicious/noArrayIndexKey: the list of a plan never changes its order
              <tr key={i}>
                <td>{goodsText(packs, words)}</td>
                <td>{handover.of(packs.lotId, dateText(packs.expires, words))}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </section>
  );
}

function goodsText({ product, packs }: HandedPacks, words: HandoverWords): string {
  const { handover } = words;
  const crop = product.crops.map((name) => words.crops[name]).join(', ');
  if (product.kind === 'inoculant') return handover.packLot(localNumber(packs, words), packs === 1, crop);
  const bagKg = product.packG / 1000;
  return handover.seedLot(localNumber(packs, words), localNumber(bagKg, words, Number.isInteger(bagKg) ? 0 : 1), crop);
}
