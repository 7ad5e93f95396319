import { useState } from 'react';
import { saveFile } from '../../../adapters/browser/save-file.ts';
import { localNumber } from '../../../presentation/local-number.ts';
import { type DayVisit, visitsOfDay } from '../../../presentation/records/day-visits.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { HANDOVERS } from '../../state/days-closed.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { dayTitle } from '../days/day-title.ts';
import { ReplanDays } from '../days/replan-days.tsx';
import { DayDraft } from './day-draft.tsx';
import { OtherEvent } from './other-event.tsx';
import './records.css';
import { ToldProblems } from './told-problems.tsx';
import { type OpenDay, useOpenDay } from './use-day.ts';
import { useEnter } from './use-enter.ts';
import { asPlanned, VisitForm } from './visit-form.tsx';

/** The evening: the day's visits, what else happened, and closing the day. */
export default function RecordsPanel() {
  const words = useWords();
  const day = useOpenDay();
  const difference = useSeason((season) => season.difference);
  if (day === null) return null;
  return (
    <div className="records">
      <p className="note">{paperWords(words).records.intro}</p>
      {difference && <ReplanDays />}
      <Visits key={`visits ${day.today}`} day={day} />
      <OtherEvent key={`event ${day.today}`} day={day} />
      <DayDraft />
      <CloseDay day={day} />
    </div>
  );
}

/** Visits of the day that stand in no entry yet. */
function useOpenVisits({
  plan,
  scenario,
  today,
}: OpenDay): readonly [all: readonly DayVisit[], open: readonly DayVisit[]] {
  const entries = useSeason((season) => season.entries);
  const all = visitsOfDay(plan, scenario, today);
  const isRecorded = ({ vehicleId, communityId }: DayVisit) =>
    entries.some((one) => one.date === today && one.vehicleId === vehicleId && one.communityId === communityId);
  return [all, all.filter((visit) => !isRecorded(visit))];
}

function Visits({ day }: { readonly day: OpenDay }) {
  const words = useWords();
  const { records } = paperWords(words);
  const [all, open] = useOpenVisits(day);
  const [shown, setShown] = useState<string | null>(null);
  const { problems, record } = useEnter(day);
  const vehicles = [...new Set(all.map(({ vehicleId }) => vehicleId))];
  return (
    <section>
      <h2>{records.dayTitle(dayTitle(day.today, words))}</h2>
      {all.length === 0 && <p>{records.noVisits}</p>}
      {open.length > 0 && (
        <p>
          <button
            type="button"
            className="edged"
            onClick={() => record(open.flatMap((visit) => asPlanned(visit, day.today)))}
          >
            {records.allAsPlanned(localNumber(open.length, words), open.length === 1)}
          </button>
        </p>
      )}
      <ToldProblems problems={problems} />
      {vehicles.map((vehicleId) => (
        <div key={vehicleId} className="vehicle-visits">
          <h3>{vehicleId}</h3>
          <ul>
            {all
              .filter((visit) => visit.vehicleId === vehicleId)
              .map((visit) => (
                <VisitLine
                  key={visit.communityId}
                  day={day}
                  visit={visit}
                  isOpen={open.includes(visit)}
                  isShown={shown === `${vehicleId} ${visit.communityId}`}
                  onShow={(show) => setShown(show ? `${vehicleId} ${visit.communityId}` : null)}
                />
              ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

interface VisitLineProps {
  readonly day: OpenDay;
  readonly visit: DayVisit;
  readonly isOpen: boolean;
  readonly isShown: boolean;
  readonly onShow: (show: boolean) => void;
}

function VisitLine({ day, visit, isOpen, isShown, onShow }: VisitLineProps) {
  const words = useWords();
  const { records } = paperWords(words);
  const goods = (['seed', 'inoculant', 'sticker', 'fertiliser'] as const)
    .map((kind) => [kind, visit.goods.reduce((sum, one) => (one.kind === kind ? sum + one.packs : sum), 0)] as const)
    .filter(([, packs]) => packs > 0)
    .map(([kind, packs]) => records.counted[kind](localNumber(packs, words), packs === 1))
    .join(', ');
  const name = records.visit(hourText(visit.arrives), visit.community);
  return (
    <li>
      <span className="visit-name">
        {name} <span className="soft">{goods}</span>
      </span>
      {isOpen ? (
        <button
          type="button"
          className="link"
          aria-expanded={isShown}
          aria-label={`${records.enter}, ${name}`}
          onClick={() => onShow(!isShown)}
        >
          {records.enter}
        </button>
      ) : (
        <span className="soft">{records.recorded}</span>
      )}
      {isOpen && isShown && <VisitForm day={day} visit={visit} onDone={() => onShow(false)} />}
    </li>
  );
}

function CloseDay({ day }: { readonly day: OpenDay }) {
  const words = useWords();
  const { records } = paperWords(words);
  const { planning, opening, closeDay, files } = useSeason();
  const [, open] = useOpenVisits(day);
  const bytes = files.get(HANDOVERS);
  return (
    <footer className="close-day">
      {open.length > 0 && <p>{records.openVisits(localNumber(open.length, words), open.length === 1)}</p>}
      <button
        type="button"
        className="strong"
        disabled={planning !== null || opening}
        onClick={() => void closeDay(day.today)}
      >
        {records.close(dayTitle(day.today, words))}
      </button>{' '}
      {bytes && (
        <>
          <button type="button" className="link" onClick={() => saveFile(HANDOVERS, new TextDecoder().decode(bytes))}>
            {records.saveHandovers}
          </button>{' '}
          <span className="note">{records.saveNote}</span>
        </>
      )}
    </footer>
  );
}
