import type { Decision } from '../../../engine/index.ts';
import { localNumber } from '../../../presentation/local-number.ts';
import type { HandoverEntry } from '../../../presentation/records/handover-entry.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';

/** What is entered of the day and can still be taken out. */
export function DayDraft() {
  const words = useWords();
  const { records } = paperWords(words);
  const { entries, events, scenario, takeOut } = useSeason();
  const nameOf = (id: string) => scenario?.communities.find((one) => one.id === id)?.name ?? id;
  const count = entries.length + events.length;
  if (count === 0) return null;
  const line = (text: string, what: 'entries' | 'events', index: number) => (
    <li key={`${what} ${index} ${text}`}>
      {text}{' '}
      <button
        type="button"
        className="link"
        aria-label={records.takeOutTitle(text)}
        onClick={() => takeOut(what, index)}
      >
        {records.takeOut}
      </button>
    </li>
  );
  return (
    <details className="day-draft">
      <summary>{records.draftTitle(localNumber(count, words))}</summary>
      <ul className="note">
        {events.map((event, index) => line(eventText(event, nameOf, words), 'events', index))}
        {entries.map((entry, index) => line(entryText(entry, nameOf, words), 'entries', index))}
      </ul>
    </details>
  );
}

const entryText = (
  { communityId, lotId, packs, returnedPacks }: HandoverEntry,
  nameOf: (id: string) => string,
  words: Words,
): string =>
  paperWords(words).records.entry(
    nameOf(communityId),
    lotId,
    localNumber(packs, words),
    localNumber(returnedPacks, words),
  );

function eventText(event: Decision, nameOf: (id: string) => string, words: Words): string {
  const { event: said } = paperWords(words).records;
  switch (event.kind) {
    case 'hold':
      return said.hold(event.lotId, event.packs === undefined ? '' : localNumber(event.packs, words));
    case 'flag-cleared':
      return said.cleared(event.lotId);
    case 'vehicle-away':
      return said.away(event.vehicleId, event.from, event.to);
    case 'road-closed':
      return said.closed(event.from, event.to);
    case 'rain':
      return said.rain(event.stationId, localNumber(event.mm, words, 1), event.date);
    case 'forbid':
      return said.forbid(nameOf(event.communityId));
    default:
      return event.kind;
  }
}
