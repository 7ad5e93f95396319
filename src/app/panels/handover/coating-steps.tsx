import { localNumber } from '../../../presentation/local-number.ts';
import { DRYING_MINUTES } from '../../../presentation/papers/coating-amounts.ts';
import type { CropHandover } from '../../../presentation/papers/handover-goods.ts';
import { dateText } from '../../../presentation/views/frame-view.ts';
import { useHandoverWords } from './use-handover.ts';

/** The steps of coating, to be ticked off, and what to take care of. */
export function CoatingSteps({ crop }: { readonly crop: CropHandover }) {
  const words = useHandoverWords();
  const { handover } = words;
  const { least, most } = DRYING_MINUTES;
  const [first] = [...crop.inoculant].sort((a, b) => (a.expires < b.expires ? -1 : 1));
  const treated = crop.seed.filter(({ product }) => product.treatedSeed && product.inoculantAllowed === true);
  const steps = first && [
    handover.stepSoil,
    handover.stepLabel(words.crops[crop.crop], dateText(first.expires, words)),
    (crop.rates?.stickerPacksPerKg ?? 0) > 0 ? handover.stepSticker : handover.stepWater,
    crop.crop === 'groundnut' ? `${handover.stepPowder} ${handover.stepGroundnut}` : handover.stepPowder,
    handover.stepDry(localNumber(least, words), localNumber(most, words)),
    handover.stepSow,
  ];
  return (
    <>
      {steps && (
        <section>
          <h2>{handover.stepsTitle}</h2>
          <ol className="coating-steps">
            {steps.map((step) => (
              <li key={step}>
                <label>
                  <input type="checkbox" /> <span>{step}</span>
                </label>
              </li>
            ))}
          </ol>
        </section>
      )}
      <section className="care">
        <h2>{handover.careTitle}</h2>
        <p>
          {handover.careTreated}{' '}
          {treated.length > 0 && handover.careTreatedLots(treated.map(({ lotId }) => lotId).join(', '))}
        </p>
        <p>{handover.careKeep}</p>
        <p>{handover.careDust}</p>
        <p>
          <b>{handover.careLabel}</b>
        </p>
      </section>
    </>
  );
}
