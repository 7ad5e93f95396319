import { growerBatchKg } from './batch-sizes.ts';
import type { Drawing, Mark } from './drawing.ts';
import type { CropHandover, PackSharing } from './handover-goods.ts';
import type { Block, Cell, Row, Text } from './page.ts';
import { strong } from './page.ts';
import { capital, number, type PaperCase, shortNumber } from './paper-case.ts';

/** Who shares which packs: crop, a picture of packs above growers, and the same in words. Nothing where no packs come. */
export function sharingTable(c: PaperCase, crops: readonly CropHandover[]): Block[] {
  const { community } = c.said;
  const rows = crops.flatMap((crop) =>
    crop.sharing.map((share, i): Row => ({ cells: cellsOf(c, crop, share, i === 0) })),
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'section',
      title: community.shareTitle,
      blocks: [
        {
          kind: 'table',
          name: 'sharing',
          columns: [{ head: '', width: 18 }, { head: '' }, { head: '', width: 38 }],
          rows,
        },
      ],
    },
  ];
}

function cellsOf(c: PaperCase, crop: CropHandover, share: PackSharing, isFirst: boolean): Cell[] {
  const name: Text = [strong(capital(c.words.crops[crop.crop]))];
  const counted = isCounted(share);
  const who = counted ? [name, c.said.community.growers(number(c, share.growers ?? 0))] : [name];
  const lines = sharingTexts(c, crop, share, isFirst);
  return [{ lines: who }, isDrawn(share) ? { drawing: sharePicture(c, share) } : '', { lines }];
}

const isCounted = ({ growers }: PackSharing): boolean => growers !== null && growers > 0;

/** More growers in a group than a person counts at a glance are told in words alone. */
const MOST_DRAWN = 40;

function isDrawn(share: PackSharing): boolean {
  const growers = share.growers ?? 0;
  return isCounted(share) && Math.max(growers, share.packs) / greatestCommonDivisor(growers, share.packs) <= MOST_DRAWN;
}

/** How many growers to how many packs of one lot; with the first lot of a crop, what each coats and what is left uncoated. */
export function sharingTexts(c: PaperCase, crop: CropHandover, share: PackSharing, isFirst: boolean): Text[] {
  const { community } = c.said;
  const counted = isCounted(share);
  const told: Text[] = [];
  if (counted) {
    const common = greatestCommonDivisor(share.growers ?? 1, share.packs);
    const [growers, packs] = [(share.growers ?? 0) / common, share.packs / common];
    const lot = crop.sharing.length > 1 ? ` ${community.sharedLot(share.lotId)}` : '';
    told.push(community.shared(number(c, growers), growers === 1, number(c, packs), packs === 1) + lot);
  } else told.push(community.uncounted);
  if (isFirst) {
    if (counted && crop.rates) told.push([strong(community.eachCoats(shortNumber(c, growerBatchKg(crop))))]);
    if (crop.uncoatedKg >= 0.5) told.push(community.rest(number(c, crop.uncoatedKg)));
  }
  return told;
}

const STEP = 11;
const GAP = 10;
const WIDEST = 300;

/** Packs above a line, growers below it, group by group; one group alone where they would not fit. */
function sharePicture(c: PaperCase, share: PackSharing): Drawing {
  const all = share.growers ?? 1;
  const common = greatestCommonDivisor(all, share.packs);
  const [growers, packs] = [all / common, share.packs / common];
  const wide = Math.max(growers, packs) * STEP;
  const groups = Math.max(1, Math.min(common, Math.floor((WIDEST + GAP) / (wide + GAP))));
  const marks = Array.from({ length: groups }, (_, i) => groupMarks(i * (wide + GAP), wide, growers, packs)).flat();
  const width = groups * (wide + GAP) - GAP;
  return {
    width: Math.max(width, 1),
    height: 32,
    label: c.said.community.sharePicture(number(c, all), number(c, share.packs)),
    marks,
  };
}

function groupMarks(left: number, wide: number, growers: number, packs: number): Mark[] {
  const [packLeft, growerLeft] = [left + (wide - packs * STEP) / 2, left + (wide - growers * STEP) / 2];
  const boxes = Array.from({ length: packs }, (_, i): Mark[] => {
    const x = packLeft + i * STEP + 1;
    return [
      {
        kind: 'shape',
        spots: [
          [x, 2],
          [x + 8, 2],
          [x + 8, 15],
          [x, 15],
        ],
        fill: 'none',
      }, // prettier-ignore
      {
        kind: 'line',
        spots: [
          [x, 6],
          [x + 8, 6],
        ],
        width: 1.2,
      }, // prettier-ignore
    ];
  });
  const people = Array.from(
    { length: growers },
    (_, i): Mark => ({ kind: 'disc', at: [growerLeft + i * STEP + 5, 26], radius: 3.6, fill: 'black' }),
  );
  return [
    ...boxes.flat(),
    {
      kind: 'line',
      spots: [
        [left, 19],
        [left + wide, 19],
      ],
      width: 1.2,
    },
    ...people,
  ]; // prettier-ignore
}

const greatestCommonDivisor = (a: number, b: number): number => (b === 0 ? a : greatestCommonDivisor(b, a % b));
