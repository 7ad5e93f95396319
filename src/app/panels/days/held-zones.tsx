import type { SeasonCalendar } from '../../../engine/index.ts';
import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import { type HeldZone, releaseView } from '../../../presentation/views/days-release.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { useView, useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';
import { dayTitle } from './day-title.ts';

interface HeldZonesProps {
  readonly shown: DayShown;
  readonly worth: SeasonCalendar | null;
}

/** Zones whose packs may wait for rain: stock forward, the rule, its chance of being too late, and what goes when it lets go. */
export function HeldZones({ shown: { plan, scenario }, worth }: HeldZonesProps) {
  const words = useWords();
  const chooseZone = useView((view) => view.chooseZone);
  const { runs } = paperWords(words);
  if (worth === null) return null;
  const { mm, leadDays, waiting, released } = releaseView(plan, scenario, worth);
  if (waiting.length + released.length === 0) return null;
  if (waiting.length === 0) return <p className="note held-zones">{runs.holdNone(localNumber(mm, words))}</p>;
  return (
    <section className="held-zones">
      <h2>{runs.holdTitleMm(localNumber(mm, words))}</h2>
      <p className="note">{runs.holdIntro(localNumber(leadDays, words))}</p>
      <div className="scrolls">
        <table className="ruled">
          <thead>
            <tr>
              <th scope="col">{runs.holdZone}</th>
              <th scope="col" className="number">
                {runs.holdFallen}
              </th>
              <th scope="col">{runs.holdExpected}</th>
              <th scope="col" className="number">
                {runs.holdTooLate}
              </th>
              <th scope="col">{runs.holdGoes}</th>
              <th scope="col">{runs.holdPlanned}</th>
            </tr>
          </thead>
          <tbody>
            {waiting.map((zone) => (
              <HeldRow key={zone.zoneId} zone={zone} words={words} choose={() => chooseZone(zone.zoneId)} />
            ))}
          </tbody>
        </table>
      </div>
      {released.length > 0 && <p className="note">{runs.holdReleased(released.map(({ name }) => name).join(', '))}</p>}
    </section>
  );
}

function HeldRow({
  zone,
  words,
  choose,
}: {
  readonly zone: HeldZone;
  readonly words: Words;
  readonly choose: () => void;
}) {
  const { days } = words;
  const { runs } = paperWords(words);
  const percent = (share: number) => withUnit(localNumber(share * 100, words), '%');
  const date = (iso: string | null) => (iso === null ? days.none : dayTitle(iso, words));
  const goes = runs.holdPacks(
    localNumber(zone.packs, words),
    localNumber(zone.communities, words),
    localNumber(zone.litres, words),
    zone.depots.join(', '),
  );
  const [first, last] = zone.planned ?? [null, null];
  return (
    <tr>
      <th scope="row">
        <button type="button" className="link" onClick={choose}>
          {zone.name}
        </button>
      </th>
      <td className="number">{zone.fallenMm === null ? days.none : localNumber(zone.fallenMm, words, 1)}</td>
      <td>
        {zone.expected === null ? days.releaseNever : date(zone.expected)}{' '}
        {zone.expected !== null && <span className="soft">{runs.holdSpan(date(zone.early), date(zone.late))}</span>}
      </td>
      <td className="number">
        {percent(zone.tooLate)}{' '}
        {zone.never >= 0.005 && <span className="soft">{runs.holdNeverToo(percent(zone.never))}</span>}
      </td>
      <td>
        {goes} <span className="soft">{runs.holdVerdict(percent(zone.kept), percent(zone.bestKept))}</span>
      </td>
      <td>{first === last ? date(first) : runs.holdSpan(date(first), date(last))}</td>
    </tr>
  );
}
