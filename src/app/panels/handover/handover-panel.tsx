import { useState } from 'react';
import { messageLength } from '../../../presentation/exports/message-length.ts';
import type { CommunityTask } from '../../../presentation/papers/community-task.ts';
import { deliveryMessages } from '../../../presentation/papers/delivery-messages.ts';
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
  const communityId = task.about.community.id;
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
      <Messages c={c} communityId={communityId} />
    </div>
  );
}

/** What to send to the phone of whoever receives here, with the places it takes. */
function Messages({ c, communityId }: { readonly c: PaperCase; readonly communityId: string }) {
  const messages = deliveryMessages(c, new Set([communityId]));
  const { handover } = c.said;
  if (messages.length === 0) return null;
  return (
    <section>
      <h3>{handover.messages}</h3>
      {messages.map(({ date, text }) => (
        <p key={`${date} ${text}`}>
          {text} <span className="note">{handover.places(number(c, messageLength(text).units))}</span>
        </p>
      ))}
    </section>
  );
}
