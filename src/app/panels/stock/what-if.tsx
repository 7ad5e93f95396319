import { useId, useState } from 'react';
import type { Scenario, StockChange } from '../../../engine/index.ts';
import { type Supposition, supposedChange } from '../../../presentation/views/stock-suppositions.ts';
import { useWords } from '../../state/use-stores.ts';
import { AskStock } from './ask-stock.tsx';
import { AskTransfers } from './ask-transfers.tsx';

const KINDS: readonly Supposition['kind'][] = ['lot-fails', 'lot-cleared', 'lot-replaced', 'more-packs'];

/** Questions to the stock for the meeting: nothing of them is kept. */
export function WhatIf({ scenario }: { readonly scenario: Scenario }) {
  const words = useWords();
  const { stock } = words;
  const [kind, setKind] = useState<Supposition['kind']>('lot-fails');
  const [lotId, setLotId] = useState(scenario.lots[0]?.id ?? '');
  const [productId, setProductId] = useState(scenario.products[0]?.id ?? '');
  const [depotId, setDepotId] = useState(scenario.depots[0]?.id ?? '');
  const [packs, setPacks] = useState(100);
  const change: StockChange | null = supposedChange({ kind, lotId, productId, depotId, packs }, scenario);
  return (
    <details className="orders what-if">
      <summary>
        <h2>{stock.whatIf}</h2> {stock.whatIfNote}
      </summary>
      <div className="what-if-fields">
        <Choice
          label={stock.whatIf}
          value={kind}
          options={KINDS}
          name={(one) => stock.suppose[one]}
          onChoose={setKind}
        />
        {kind === 'more-packs' ? (
          <>
            <label>
              <span className="unseen">{stock.packsInput}</span>
              <input
                type="number"
                min={1}
                step={1}
                value={packs}
                onChange={({ target }) => setPacks(Math.max(1, Math.floor(target.valueAsNumber) || 1))}
              />
            </label>
            <Choice
              label={stock.productInput}
              value={productId}
              options={scenario.products.map(({ id }) => id)}
              onChoose={setProductId}
            />
            <Choice
              label={stock.depotInput}
              value={depotId}
              options={scenario.depots.map(({ id }) => id)}
              name={(id) => scenario.depots.find((depot) => depot.id === id)?.name || id}
              onChoose={setDepotId}
            />
          </>
        ) : (
          <Choice label={stock.lot} value={lotId} options={scenario.lots.map(({ id }) => id)} onChoose={setLotId} />
        )}
        {change && <AskStock key={JSON.stringify(change)} label={stock.ask} changes={[change]} />}
        <AskTransfers scenario={scenario} />
      </div>
    </details>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly T[];
  readonly name?: (option: T) => string;
  readonly onChoose: (option: T) => void;
}

function Choice<T extends string>({ label, value, options, name = (option) => option, onChoose }: ChoiceProps<T>) {
  const id = useId();
  return (
    <>
      <label className="unseen" htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        value={value}
        onChange={({ target }) => {
          const chosen = options.find((option) => option === target.value);
          if (chosen !== undefined) onChoose(chosen);
        }}
      >
        {options.map((option) => (
          <option key={option} value={option}>
            {name(option)}
          </option>
        ))}
      </select>
    </>
  );
}
