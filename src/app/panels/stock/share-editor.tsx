import { type FormEvent, type KeyboardEvent, lazy, Suspense, useEffect, useId, useRef, useState } from 'react';
import type { Commodity, Plan, Scenario } from '../../../engine/index.ts';
import { localNumber, wholePercent, withUnit } from '../../../presentation/local-number.ts';
import { type Cell, type HoldKind, holdCell, stepsToRelease } from '../../../presentation/views/stock-cells.ts';
import { previewFix } from '../../../presentation/views/stock-fix.ts';
import { cropName } from '../../../presentation/views/stock-goods.ts';
import { landShare } from '../../../presentation/views/stock-land.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';

const AskLift = lazy(async () => ({ default: (await import('./ask-lift.tsx')).AskLift }));
const AskStock = lazy(async () => ({ default: (await import('./ask-stock.tsx')).AskStock }));

interface ShareEditorProps {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly cell: Cell;
  readonly place: string;
  readonly onLeave: () => void;
}

/** A share fixed by hand, with its price elsewhere told before it is taken. Enter takes it, Esc leaves. */
export function ShareEditor({ plan, scenario, cell, place, onLeave }: ShareEditorProps) {
  const words = useWords();
  const { stock } = words;
  const decide = useSeason((season) => season.decide);
  const [commodity, setCommodity] = useState<Commodity>(() => scarcer(cell));
  const [kind, setKind] = useState<HoldKind>('fix');
  const exact = heldShare(cell, commodity) ?? landShare(cell.land, commodity);
  const now = wholePercent(exact);
  const [typed, setTyped] = useState(String(now));
  const input = useFocusedInput();
  const percent = Number(typed);
  const isShare = kind === 'forbid' || (typed.trim() !== '' && percent >= 0 && percent <= 100);
  const decisions = isShare ? holdCell(cell, commodity, kind, percent / 100) : [];
  const shown = (value: number) => withUnit(localNumber(value, words), '%');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!isShare) return;
    decide(...decisions);
    onLeave();
  };
  const choose = (to: Commodity) => {
    setCommodity(to);
    setTyped(String(wholePercent(heldShare(cell, to) ?? landShare(cell.land, to))));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    // The grid around must not take the arrows that move within the form.
    event.stopPropagation();
    if (event.key === 'Escape') onLeave();
  };
  return (
    <form className="share-editor" onSubmit={submit} onKeyDown={onKeyDown} noValidate>
      <p>
        <b>{stock.editorTitle(cropName(cell.crop, words), place)}</b>{' '}
        <span className="soft">
          {stock.editorFor(localNumber(cell.communityIds.length, words), cell.communityIds.length === 1)}
        </span>
      </p>
      <div className="share-editor-fields">
        <CommodityChoice chosen={commodity} onChoose={choose} />
        <KindChoice chosen={kind} onChoose={setKind} />
        <label hidden={kind === 'forbid'}>
          <span className="unseen">{stock.shareInput}</span>
          <input
            ref={input}
            type="number"
            min={0}
            max={100}
            step={1}
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
          />{' '}
          %
        </label>
        <button type="submit" className="strong" disabled={!isShare}>
          {stock.holdAt[kind](isShare ? shown(percent) : '…')}
        </button>
        <button type="button" className="edged" onClick={onLeave}>
          {stock.leaveAt(shown(now))}
        </button>
        <ReleaseButton cell={cell} onReleased={onLeave} />
      </div>
      <p className="share-editor-price" aria-live="polite">
        {isShare && kind === 'fix' ? (
          <Price {...{ plan, scenario, cell, commodity, share: percent === now ? exact : percent / 100 }} />
        ) : (
          !isShare && stock.badShare
        )}
      </p>
      {isShare && (
        <Suspense>
          <AskStock
            key={JSON.stringify(decisions[0])}
            label={stock.priceElsewhere}
            changes={decisions.map((decision) => ({ kind: 'decide', decision }))}
          />
        </Suspense>
      )}
      <Suspense>
        <AskLift key={commodity} {...{ plan, scenario, cell, commodity }} />
      </Suspense>
    </form>
  );
}

const heldShare = (cell: Cell, commodity: Commodity): number | null =>
  cell.fixed.find((fixed) => fixed.commodity === commodity)?.share ?? null;

/** What the cell lacks more of: seed, or inoculant for the seed that is there. */
const scarcer = ({ land }: Cell): Commodity =>
  land.plannedHa - land.seedHa > land.seedHa - land.inoculatedHa ? 'seed' : 'inoculant';

function CommodityChoice(props: { readonly chosen: Commodity; readonly onChoose: (commodity: Commodity) => void }) {
  const { stock } = useWords();
  const name = useId();
  return (
    <fieldset>
      <legend>{stock.shareOf}</legend>
      {(['inoculant', 'seed'] as const).map((commodity) => (
        <label key={commodity}>
          <input
            type="radio"
            name={name}
            checked={props.chosen === commodity}
            onChange={() => props.onChoose(commodity)}
          />
          {stock.commodity[commodity]}
        </label>
      ))}
    </fieldset>
  );
}

const KINDS: readonly HoldKind[] = ['fix', 'floor', 'cap', 'forbid'];

function KindChoice(props: { readonly chosen: HoldKind; readonly onChoose: (kind: HoldKind) => void }) {
  const { stock } = useWords();
  return (
    <label>
      <span className="unseen">{stock.holdKind}</span>
      <select
        value={props.chosen}
        onChange={({ target }) => {
          const kind = KINDS.find((one) => one === target.value);
          if (kind) props.onChoose(kind);
        }}
      >
        {KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {stock.holdKinds[kind]}
          </option>
        ))}
      </select>
    </label>
  );
}

interface PriceProps {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly cell: Cell;
  readonly commodity: Commodity;
  readonly share: number;
}

function Price({ plan, scenario, cell, commodity, share }: PriceProps) {
  const words = useWords();
  const { takes, others, limit } = previewFix(plan, scenario, cell, commodity, share, words);
  return [takes, others, limit].filter((said) => said).join(' ');
}

/** Takes a fix back by undo, where it is the last that was decided. */
function ReleaseButton({ cell, onReleased }: { readonly cell: Cell; readonly onReleased: () => void }) {
  const { stock } = useWords();
  const decisions = useSeason((season) => season.decisions);
  const undo = useSeason((season) => season.undo);
  const steps = stepsToRelease(decisions, cell);
  if (cell.fixed.length === 0) return null;
  const release = () => {
    undo(steps);
    onReleased();
  };
  return (
    <button
      type="button"
      className="edged"
      disabled={steps === 0}
      title={steps === 0 ? stock.releaseLater : undefined}
      onClick={release}
    >
      {stock.release}
    </button>
  );
}

/** The input takes the focus when the editor opens, its number chosen, so that typing replaces it. */
function useFocusedInput() {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.select(), []);
  return input;
}
