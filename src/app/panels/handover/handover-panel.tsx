import { useState } from 'react';
import { localNumber } from '../../../presentation/local-number.ts';
import type { CropHandover } from '../../../presentation/papers/handover-goods.ts';
import { CoatingBatch } from './coating-batch.tsx';
import { CoatingSteps } from './coating-steps.tsx';
import './handover.css';
import { SharingText } from './sharing-text.tsx';
import { useHandover, useHandoverWords } from './use-handover.ts';

/** Crop by crop: who shares the packs, what one batch takes, and the steps. */
export default function HandoverPanel() {
  const shown = useHandover();
  if (shown === null || shown.crops.length === 0) return null;
  return <Crops key={shown.community.id} crops={shown.crops} />;
}

function Crops({ crops }: { readonly crops: readonly CropHandover[] }) {
  const words = useHandoverWords();
  const { handover } = words;
  const [name, setName] = useState(crops[0]?.crop);
  const crop = crops.find((one) => one.crop === name) ?? crops[0];
  if (crop === undefined) return null;
  return (
    <div className="handover">
      <fieldset className="crop-tabs">
        <legend className="unseen">{handover.cropsLabel}</legend>
        {crops.map((one) => {
          const packs = one.inoculant.reduce((sum, goods) => sum + goods.packs, 0);
          return (
            <label key={one.crop} className={one === crop ? 'is-chosen' : ''}>
              <input
                type="radio"
                name="crop"
                className="unseen"
                checked={one === crop}
                onChange={() => setName(one.crop)}
              />
              <span>{words.crops[one.crop]}</span>
              <span className="note">
                {packs === 0 ? handover.noPacks : handover.cropPacks(localNumber(packs, words), packs === 1)}
              </span>
            </label>
          );
        })}
      </fieldset>
      <SharingText crop={crop} />
      {crop.rates && crop.coatedKg > 0 && <CoatingBatch key={crop.crop} crop={crop} rates={crop.rates} />}
      <CoatingSteps crop={crop} />
    </div>
  );
}
