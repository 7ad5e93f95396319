import { goodsText } from '../../../presentation/papers/goods-text.ts';
import { receivedNote } from '../../../presentation/papers/handover-sheet.ts';
import { dayText } from '../../../presentation/papers/paper-case.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import { dateText } from '../../../presentation/views/frame-view.ts';
import { PaperText } from '../paper-text.tsx';
import { useHandover } from './use-handover.ts';

/** What each vehicle brings, lot by lot: to be counted together. */
export default function ReceivedTable() {
  const shown = useHandover();
  if (shown === null || shown.task === null || shown.task.arrivals.length === 0) return null;
  const { c, task } = shown;
  const { handover, community } = c.said;
  return (
    <section>
      <h2>{community.receiveTitle}</h2>
      <table className="ruled received">
        <thead>
          <tr>
            <th scope="col">{handover.goods}</th>
            <th scope="col">{handover.lot}</th>
          </tr>
        </thead>
        {task.arrivals.map(({ date, minute, vehicleId, goods }) => (
          <tbody key={`${date} ${minute} ${vehicleId}`}>
            <tr>
              <th scope="rowgroup" colSpan={2}>
                <b>{community.visit(dayText(c, date), hourText(minute), vehicleId)}</b>
              </th>
            </tr>
            {goods.map((one) => (
              <tr key={`${one.lot.id} ${one.crop}`}>
                <td>
                  {goodsText(c, one)}
                  <div>
                    <PaperText text={receivedNote(c, task, one, date)} />
                  </div>
                </td>
                <td>{handover.ofLot(one.lot.id, dateText(one.expires, c.words))}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </section>
  );
}
