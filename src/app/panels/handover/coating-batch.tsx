import { useState } from 'react';
import { localNumber } from '../../../presentation/local-number.ts';
import { growerBatchKg, LADDER_KG } from '../../../presentation/papers/batch-sizes.ts';
import { type CoatingRates, capsPerPack, coatingAmounts } from '../../../presentation/papers/coating-amounts.ts';
import type { CropHandover } from '../../../presentation/papers/handover-goods.ts';
import { useHandoverWords } from './use-handover.ts';

interface CoatingBatchProps {
  readonly crop: CropHandover;
  readonly rates: CoatingRates;
}

/** Amounts for the batch at hand: powder in level caps, water in caps; and a ladder of other batches. */
export function CoatingBatch({ crop, rates }: CoatingBatchProps) {
  const words = useHandoverWords();
  const { handover } = words;
  const [seedKg, setSeedKg] = useState(() => growerBatchKg(crop));
  const amounts = coatingAmounts(rates, seedKg);
  const number = (value: number, decimals = 0) => localNumber(value, words, decimals);
  const halves = (value: number) => number(value, Number.isInteger(value) ? 0 : 1);
  const [first] = crop.inoculant;
  if (first === undefined) return null;
  const step = (by: number) => setSeedKg(Math.max(0.5, Math.floor(seedKg * 2) / 2 + by));
  return (
    <>
      <div className="batch">
        <span>{handover.batch}</span>
        <button type="button" className="edged" aria-label={handover.less} onClick={() => step(-0.5)}>
          −
        </button>
        <output className="batch-kg">
          {halves(seedKg)} {handover.kg}
        </output>
        <button type="button" className="edged" aria-label={handover.more} onClick={() => step(0.5)}>
          +
        </button>
      </div>
      <div className="amount">
        {amounts.caps === null ? (
          <p>{handover.noCaps}</p>
        ) : (
          <p className="cap-count">
            <b>{halves(amounts.caps)}</b> {handover.caps(amounts.caps === 1)}
          </p>
        )}
        <p className="note">
          {handover.grams(number(amounts.powderG, 1), number(amounts.powderG / first.product.packG, 2))}
        </p>
        {amounts.caps !== null && <Caps caps={amounts.caps} />}
      </div>
      <div className="amount">
        <p className="cap-count">
          <b>{number(amounts.waterCaps)}</b> {handover.waterCaps(amounts.waterCaps === 1)}
        </p>
        <p className="note">
          {amounts.stickerPacks > 0
            ? handover.stickerWater(number(amounts.waterMl), number(amounts.stickerPacks, 2))
            : handover.waterMl(number(amounts.waterMl))}
        </p>
      </div>
      <p className="note">
        {handover.capFills(number(capsPerPack(first.product, rates)), number(rates.gramsPerCap, 1))}
      </p>
      <table className="ruled ladder">
        <caption>{handover.ladder}</caption>
        <thead>
          <tr>
            {Object.values(handover.ladderHeads).map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {LADDER_KG.map((kg) => {
            const row = coatingAmounts(rates, kg);
            return (
              <tr key={kg}>
                <th scope="row" className="number">
                  {number(kg)}
                </th>
                <td className="number">{row.caps === null ? '–' : halves(row.caps)}</td>
                <td className="number">{number(row.powderG, 1)}</td>
                <td className="number">{number(row.waterMl)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

/** So many caps as a picture; a half one is half filled. More than fits two lines is left to the figure. */
function Caps({ caps }: { readonly caps: number }) {
  if (caps > 24) return null;
  return (
    <span className="caps" aria-hidden="true">
      {Array.from({ length: Math.ceil(caps) }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: caps are all alike
        <svg key={i} aria-hidden="true" viewBox="0 0 24 18">
          <path className={caps - i < 1 ? 'half' : 'full'} d="M1 1H23L19 17H5Z" />
          {caps - i < 1 && <path className="filled" d="M3 9H21L19 17H5Z" />}
        </svg>
      ))}
    </span>
  );
}
