import { useState } from 'react';
import type { CommunityTask } from '../../../presentation/papers/community-task.ts';
import { number, type PaperCase } from '../../../presentation/papers/paper-case.ts';
import { CoatingBatch } from './coating-batch.tsx';
import { CoatingSteps } from './coating-steps.tsx';
import './handover.css';
import { SharingText } from './sharing-text.tsx';
import { useHandover } from './use-handover.ts';

/** Crop by crop: who shares the packs, what one batch takes, and the steps. */
export default function HandoverPanel() {
  const shown = useHandover();
  if (shown === null || shown.task === null || shown.task.crops.length === 0) return null;
  return <Crops key={shown.task.about.community.id} c={shown.c} task={shown.task} />;
}

function Crops({ c, task }: { readonly c: PaperCase; readonly task: CommunityTask }) {
  const { handover } = c.said;
  const { crops } = task;
  const [name, setName] = useState(crops[0]?.crop);
  const crop = crops.find((one) => one.crop === name) ?? crops[0];
  if (crop === undefined) return null;
  const coatings = task.coatings.filter((one) => one.crop === crop.crop);
  return (
    <div className="handover">
      <fieldset className="crop-tabs">
        <legend className="unseen">{handover.cropsLabel}</legend>
        {crops.map((one) => {
          const packs = one.sharing.reduce((sum, share) => sum + share.packs, 0);
          return (
            <label key={one.crop} className={one === crop ? 'is-chosen' : ''}>
              <input
                type="radio"
                name="crop"
                className="unseen"
                checked={one === crop}
                onChange={() => setName(one.crop)}
              />
              <span>{c.words.crops[one.crop]}</span>
              <span className="note">
                {packs === 0 ? handover.noPacks : handover.cropPacks(number(c, packs), packs === 1)}
              </span>
            </label>
          );
        })}
      </fieldset>
      <SharingText c={c} crop={crop} />
      {coatings.length > 0 && <CoatingBatch key={crop.crop} c={c} crop={crop} coatings={coatings} />}
      <CoatingSteps c={c} task={{ crops: [crop], coatings }} />
    </div>
  );
}
