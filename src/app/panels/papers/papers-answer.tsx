import { useState } from 'react';
import { saveFile } from '../../../adapters/browser/save-file.ts';
import { zipFiles } from '../../../adapters/browser/zip-files.ts';
import { PAPER_SIZES } from '../../../presentation/papers/page-style.ts';
import { dayText } from '../../../presentation/papers/paper-case.ts';
import { paperFiles } from '../../../presentation/papers/paper-files.ts';
import { isOfDay, PAPERS } from '../../../presentation/papers/paper-sets.ts';
import { renderDocument } from '../../../presentation/papers/render-page.ts';
import { useSeason, useView } from '../../state/use-stores.ts';
import { setPaperSize, usePaperSize } from './paper-size.ts';
import { type ShownPapers, usePapers } from './use-papers.ts';

/** Which papers are shown, and what can be done with them. */
export default function PapersAnswer() {
  const shown = usePapers();
  if (shown === null) return null;
  const { store } = shown.c.said;
  const title = store.setTitle[shown.paper];
  return (
    <div className="papers-answer">
      <h1>{isOfDay(shown.paper) && !shown.community ? store.setOf(title, dayText(shown.c, shown.day)) : title}</h1>
      <p>{store.indexAbout}</p>
      <Choices shown={shown} />
      <Doings shown={shown} />
    </div>
  );
}

function Choices({ shown }: { readonly shown: ShownPapers }) {
  const { store } = shown.c.said;
  const go = useView((view) => view.go);
  const size = usePaperSize();
  return (
    <div className="papers-choices">
      <Choice
        label={store.choosePaper}
        value={shown.paper}
        options={PAPERS.map((name) => [name, store.setTitle[name]])}
        choose={(paper) => go({ paper })}
      />
      {isOfDay(shown.paper) && (
        <Choice
          label={store.chooseDay}
          value={shown.community ? '' : shown.day}
          options={[
            ...(shown.community ? [['', nameOf(shown)] as const] : []),
            ...shown.days.map((date) => [date, dayText(shown.c, date)] as const),
          ]}
          choose={(day) => go({ day, community: null })}
        />
      )}
      <Choice
        label={store.chooseSize}
        value={size}
        options={PAPER_SIZES.map((name) => [name, name])}
        choose={(name) => setPaperSize(name === 'Letter' ? 'Letter' : 'A4')}
      />
    </div>
  );
}

const nameOf = ({ c, community }: ShownPapers): string =>
  c.scenario.communities.find(({ id }) => id === community)?.name ?? '';

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, text: string])[];
  readonly choose: (value: string) => void;
}

function Choice({ label, value, options, choose }: ChoiceProps) {
  return (
    <label>
      <span className="note">{label}</span>
      <select value={value} onChange={({ target }) => choose(target.value)}>
        {options.map(([name, text]) => (
          <option key={name} value={name}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}

function Doings({ shown }: { readonly shown: ShownPapers }) {
  const { store } = shown.c.said;
  const size = usePaperSize();
  const settled = useSeason((season) => (season.findings ?? []).length === 0);
  const [zipping, setZipping] = useState(false);
  const title = store.setTitle[shown.paper];
  const language = shown.c.words.language.code;
  return (
    <div className="actions">
      <button type="button" className="strong" disabled={!settled} onClick={() => window.print()}>
        {store.print}
      </button>
      <button
        type="button"
        className="edged"
        disabled={!settled}
        onClick={() => saveFile(`${shown.paper}.html`, renderDocument(shown.pages, { title, language, size }))}
      >
        {store.save}
      </button>
      <button
        type="button"
        className="edged"
        disabled={!settled || zipping}
        onClick={() => {
          setZipping(true);
          void zipFiles(paperFiles(shown.c, size)).then((bytes) => {
            saveFile('papers.zip', bytes);
            setZipping(false);
          });
        }}
      >
        {store.saveAll}
      </button>
    </div>
  );
}
