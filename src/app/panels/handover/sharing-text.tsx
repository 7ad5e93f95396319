import { localNumber } from '../../../presentation/local-number.ts';
import { growerBatchKg } from '../../../presentation/papers/batch-sizes.ts';
import type { CropHandover, PackSharing } from '../../../presentation/papers/handover-goods.ts';
import type { HandoverWords } from '../../../presentation/wording/handover-words.ts';
import { useHandoverWords } from './use-handover.ts';

/** Which growers share which packs, and what is left uncoated. */
export function SharingText({ crop }: { readonly crop: CropHandover }) {
  const words = useHandoverWords();
  const { handover } = words;
  const { inoculant, coatedKg, uncoatedKg, sharing, rates, packsAskedFor } = crop;
  if (inoculant.length === 0) return <p className="handover-share">{handover.notInoculated(words.crops[crop.crop])}</p>;
  const given = inoculant.reduce((sum, { packs }) => sum + packs, 0);
  const counted = sharing.every(({ growers }) => growers !== null);
  const openedDays = Math.min(...sharing.map((share) => share.openedPackDays));
  return (
    <>
      {sharing.map((share) => (
        <p key={share.lotId} className="handover-share">
          {shareText(share, words)} {sharing.length > 1 && <span className="note">{share.lotId}</span>}
        </p>
      ))}
      {counted && coatedKg > 0 && rates && (
        <p className="handover-share">{handover.eachCoats(halves(growerBatchKg(crop), words))}</p>
      )}
      <p className="note">
        {Number.isFinite(openedDays) && handover.openedDays(localNumber(openedDays, words))}{' '}
        {given < packsAskedFor && handover.asked(localNumber(packsAskedFor, words), localNumber(given, words))}{' '}
        {uncoatedKg >= 0.5 && handover.uncoated(localNumber(uncoatedKg, words))}
      </p>
      {rates === null && <p className="alarm">{handover.doseUnknown}</p>}
    </>
  );
}

/** Whole kilograms without a decimal. */
const halves = (kg: number, words: HandoverWords) => localNumber(kg, words, Number.isInteger(kg) ? 0 : 1);

/** In whole growers and packs of the smallest group that shares evenly; the whole lot where none does. */
function shareText({ growers, packs }: PackSharing, words: HandoverWords): string {
  const { handover } = words;
  if (growers === null || growers === 0) return handover.cropPacks(localNumber(packs, words), packs === 1);
  if (growers <= packs) {
    const each = packs / growers;
    if (each === 1) return handover.aPackEach;
    return Number.isInteger(each)
      ? handover.packsEach(localNumber(each, words))
      : handover.share(localNumber(growers, words), growers === 1, localNumber(packs, words), packs === 1);
  }
  const common = greatestCommonDivisor(growers, packs);
  const [group, shared] = [growers / common, packs / common];
  return handover.share(localNumber(group, words), group === 1, localNumber(shared, words), shared === 1);
}

const greatestCommonDivisor = (a: number, b: number): number => (b === 0 ? a : greatestCommonDivisor(b, a % b));
