import type { CropHandover } from '../../../presentation/papers/handover-goods.ts';
import type { PaperCase } from '../../../presentation/papers/paper-case.ts';
import { sharingTexts } from '../../../presentation/papers/sharing-table.ts';
import { PaperText } from '../paper-text.tsx';

interface SharingTextProps {
  readonly c: PaperCase;
  readonly crop: CropHandover;
}

/** Which growers share which packs, what each coats, and what is left uncoated. */
export function SharingText({ c, crop }: SharingTextProps) {
  if (crop.sharing.length === 0) {
    return <p className="handover-share">{c.said.community.noPacks(c.words.crops[crop.crop])}</p>;
  }
  return crop.sharing.map((share, i) => (
    <div key={share.lotId} className="handover-share">
      {sharingTexts(c, crop, share, i === 0).map((text) => (
        <p key={JSON.stringify(text)}>
          <PaperText text={text} />
        </p>
      ))}
    </div>
  ));
}
