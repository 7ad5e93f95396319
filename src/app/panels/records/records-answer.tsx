import { localNumber } from '../../../presentation/local-number.ts';
import { recordedSoFar } from '../../../presentation/records/day-visits.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useWords } from '../../state/use-stores.ts';
import { dayTitle } from '../days/day-title.ts';
import { NotPlanned } from '../empty-states.tsx';
import { useOpenDay } from './use-day.ts';

export default function RecordsAnswer() {
  const words = useWords();
  const day = useOpenDay();
  if (day === null) return <NotPlanned />;
  const { records } = paperWords(words);
  const { packs, returned, communities, days } = recordedSoFar(day.scenario);
  const count = (value: number) => localNumber(value, words);
  if (days === 0) return <h1>{records.nothingYet(dayTitle(day.today, words))}</h1>;
  return (
    <h1>
      {records.soFar(count(packs), count(communities), count(days), days === 1)}{' '}
      {returned > 0 && records.returned(count(returned))}
    </h1>
  );
}
