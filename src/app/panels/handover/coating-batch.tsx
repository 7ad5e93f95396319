import { useState } from 'react';
import { withUnit } from '../../../presentation/local-number.ts';
import { growerBatchKg, LADDER_KG } from '../../../presentation/papers/batch-sizes.ts';
import { coatingAmounts, isLiquid } from '../../../presentation/papers/coating-amounts.ts';
import { type CoatedWith, capsText, halves } from '../../../presentation/papers/coating-table.ts';
import type { CropCoating } from '../../../presentation/papers/community-task.ts';
import { productText } from '../../../presentation/papers/goods-text.ts';
import type { CropHandover } from '../../../presentation/papers/handover-goods.ts';
import { capital, number, type PaperCase, shortNumber } from '../../../presentation/papers/paper-case.ts';

interface CoatingBatchProps {
  readonly c: PaperCase;
  readonly crop: CropHandover;
  readonly coatings: readonly CropCoating[];
}

/** Amounts for the batch at hand, of each product that coats the crop, and a ladder of other batches. */
export function CoatingBatch({ c, crop, coatings }: CoatingBatchProps) {
  const { handover, community } = c.said;
  const [seedKg, setSeedKg] = useState(() => growerBatchKg(crop));
  const step = (by: number) => setSeedKg(Math.max(0.5, Math.floor(seedKg * 2) / 2 + by));
  return (
    <>
      <div className="batch">
        <span>{handover.batch}</span>
        <button type="button" className="edged" aria-label={handover.less} onClick={() => step(-0.5)}>
          −
        </button>
        <output className="batch-kg">
          {shortNumber(c, seedKg)} {handover.kg}
        </output>
        <button type="button" className="edged" aria-label={handover.more} onClick={() => step(0.5)}>
          +
        </button>
      </div>
      {coatings.map(({ product, rates }) => (
        <div key={product.id}>
          {coatings.length > 1 && <h3>{capital(productText(c, { ...product, crops: [crop.crop] }))}</h3>}
          {rates === null ? (
            <p className="alarm">{community.doseUnknown(c.words.crops[crop.crop])}</p>
          ) : (
            <>
              <Amounts c={c} coated={{ product, rates }} seedKg={seedKg} />
              <Ladder c={c} coated={{ product, rates }} />
            </>
          )}
        </div>
      ))}
    </>
  );
}

interface AmountsProps {
  readonly c: PaperCase;
  readonly coated: CoatedWith;
  readonly seedKg: number;
}

/** Inoculant and water in caps, large; in grams or millilitres below, for whoever has a scale. */
function Amounts({ c, coated, seedKg }: AmountsProps) {
  const { handover, community } = c.said;
  const { product, rates } = coated;
  const { caps, powderG, waterCaps, waterMl, stickerPacks } = coatingAmounts(rates, seedKg);
  const liquid = isLiquid(product);
  const amount = withUnit(number(c, powderG, 1), liquid ? 'mL' : 'g');
  const water = number(c, waterMl);
  return (
    <>
      <div className="amount">
        {caps === null ? (
          <p>{liquid ? handover.noLiquidCaps : handover.noCaps}</p>
        ) : (
          <p className="cap-count">
            <b>{halves(c, caps)}</b> {(liquid ? handover.liquidCaps : handover.caps)(caps <= 1)}
          </p>
        )}
        <p className="note">{handover.ofPack(amount, number(c, powderG / product.packG, 2))}</p>
        {caps !== null && <Caps caps={caps} />}
      </div>
      <div className="amount">
        <p className="cap-count">
          <b>{number(c, waterCaps)}</b> {handover.waterCaps(waterCaps === 1)}
        </p>
        <p className="note">
          {stickerPacks > 0
            ? handover.stickerWater(water, number(c, stickerPacks, 2))
            : (liquid ? handover.waterWithLiquid : handover.waterMl)(water)}
        </p>
      </div>
      <p className="note">
        {capsText(c, coated)} <b>{community.never}</b>
      </p>
    </>
  );
}

/** What other batches take. */
function Ladder({ c, coated: { product, rates } }: Omit<AmountsProps, 'seedKg'>) {
  const { handover, community } = c.said;
  const heads = community.ladderHeads;
  const [caps, amount] = isLiquid(product) ? [heads.liquidCaps, heads.millilitres] : [heads.caps, heads.grams];
  return (
    <table className="ruled ladder">
      <caption>{handover.ladder}</caption>
      <thead>
        <tr>
          {[handover.seedKg, caps, amount, heads.water].map((head) => (
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
                {number(c, kg)}
              </th>
              <td className="number">{row.caps === null ? community.noCap : halves(c, row.caps)}</td>
              <td className="number">{number(c, row.powderG, 1)}</td>
              <td className="number">{number(c, row.waterMl)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
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
