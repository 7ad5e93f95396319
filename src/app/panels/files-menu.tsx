import { useEffect, useRef } from 'react';
import { fetchStart } from '../../adapters/browser/fetch-start.ts';
import type { Problem } from '../../engine/index.ts';
import { countProblems, problemEntries } from '../../presentation/views/problem-view.ts';
import type { Words } from '../../presentation/wording/words.ts';
import { rememberLast } from '../state/remember-last.ts';
import { saveDecisions, saveTable, TABLE_NAMES } from '../state/save-tables.ts';
import { useSeason, useView, useWords } from '../state/use-stores.ts';
import { openChosen } from './open-chosen.ts';

const MENU = 'files-menu';

/** Counted once a list: a large district has thousands of notes, and the header is drawn with every decision. */
const counted = rememberLast((problems: readonly Problem[], words: Words) =>
  countProblems(problemEntries(problems, words)),
);

/** The scenario's name; behind it what opens, what was met in its files, and what can be saved. */
export function FilesMenu() {
  const words = useWords();
  const season = useSeason();
  const go = useView((view) => view.go);
  const menu = useRef<HTMLDivElement>(null);
  const close = () => menu.current?.hidePopover();
  const problems = season.plan?.problems ?? season.read?.problems ?? [];
  const { blocks, setAside, noted } = counted(problems, words);
  return (
    <>
      <button type="button" className="quiet scenario-name" popoverTarget={MENU}>
        <span>{season.scenario?.name ?? season.name ?? words.frame.noScenario}</span>
        <span aria-hidden="true">▾</span>
      </button>
      <div id={MENU} popover="auto" className="menu" ref={menu}>
        {season.read && (
          <button
            type="button"
            onClick={() => {
              go({ view: 'problems' });
              close();
            }}
          >
            {words.frame.files}, {words.frame.problemCount(blocks + setAside + noted)}
          </button>
        )}
        {season.plan &&
          (['handover', 'papers', 'records'] as const).map((view) => (
            <button
              key={view}
              type="button"
              onClick={() => {
                go({ view });
                close();
              }}
            >
              {view === 'handover'
                ? words.papers.amounts
                : view === 'papers'
                  ? words.papers.open
                  : words.frame.views[view]}
            </button>
          ))}
        <FileInput label={words.frame.openFolder} folder onDone={close} />
        <FileInput label={words.frame.openZip} accept=".zip" onDone={close} />
        {season.read && <FileInput label={words.frame.openFiles} multiple onDone={close} />}
        <button
          type="button"
          onClick={() => {
            close();
            void fetchStart().then((start) => season.openStart(start));
          }}
        >
          {words.frame.openStart}
        </button>
        {season.plan && <SaveList close={close} />}
      </div>
    </>
  );
}

function SaveList({ close }: { readonly close: () => void }) {
  const words = useWords();
  const { plan, scenario, decisions } = useSeason();
  return (
    <div className="menu-group">
      <h2>{words.tables.save}</h2>
      {TABLE_NAMES.map((name) => (
        <button
          key={name}
          type="button"
          onClick={() => {
            if (plan && scenario) void saveTable(name, plan, scenario).then(close);
          }}
        >
          {words.tables.names[name] ?? name} <span className="note">{name}</span>
        </button>
      ))}
      <button
        type="button"
        onClick={() => {
          saveDecisions(decisions);
          close();
        }}
      >
        {words.tables.names['decisions.json']} <span className="note">decisions.json</span>
      </button>
    </div>
  );
}

interface FileInputProps {
  readonly label: string;
  readonly folder?: boolean;
  readonly multiple?: boolean;
  readonly accept?: string;
  readonly onDone?: () => void;
  readonly className?: string;
}

/** A native file input behind its own label. */
export function FileInput({ label, folder = false, multiple = false, accept, onDone, className = '' }: FileInputProps) {
  const season = useSeason();
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // React knows no property for choosing a folder.
    if (folder) input.current?.setAttribute('webkitdirectory', '');
  }, [folder]);
  return (
    <label className={`file-input ${className}`}>
      <input
        ref={input}
        type="file"
        multiple={multiple || folder}
        accept={accept}
        onChange={(event) => {
          const list = event.target.files;
          if (list && list.length > 0) void openChosen(season, list).then(onDone);
          event.target.value = '';
        }}
      />
      {label}
    </label>
  );
}
