import { INOCULATION_PRACTICE } from '../../engine/index.ts';
import { usesLiquid, usesPowder } from './coating-table.ts';
import type { CommunityTask } from './community-task.ts';
import type { Block } from './page.ts';
import { strong } from './page.ts';
import { number, type PaperCase } from './paper-case.ts';

/** The steps of coating, in order, with the lots that this sheet speaks of and no other. */
export function coatingSteps(c: PaperCase, task: CommunityTask): Block {
  const { steps, stepsTitle, opened } = c.said.community;
  const { least, most } = INOCULATION_PRACTICE.dryingMinutes.value;
  const lots = task.crops.flatMap(({ sharing }) => sharing.map(({ lotId }) => lotId));
  const days = task.crops.flatMap(({ sharing }) => sharing.map(({ openedPackDays }) => openedPackDays));
  const hasSticker = task.coatings.some(({ rates }) => (rates?.stickerPacksPerKg ?? 0) > 0);
  const hasGroundnut = task.coatings.some(({ crop }) => crop === 'groundnut');
  const wetting = [
    ...(usesLiquid(task) ? [steps.liquid] : []),
    ...(hasSticker ? [steps.sticker] : usesPowder(task) ? [steps.water] : []),
  ];
  const goodFor = days.filter(Number.isFinite);
  return {
    kind: 'section',
    title: stepsTitle,
    blocks: [
      {
        kind: 'steps',
        columns: 3,
        items: [
          `${steps.soil}${goodFor.length > 0 ? ` ${opened(number(c, Math.min(...goodFor)))}` : ''}`,
          steps.label([...new Set(lots)].join(', ')),
          ...wetting,
          ...(usesPowder(task) ? [`${steps.powder}${hasGroundnut ? ` ${steps.groundnut}` : ''}`] : []),
          `${steps.dry(number(c, least), number(c, most))} ${steps.wet}`,
          steps.sow,
        ],
      },
    ],
  };
}

/** Cautions that stand on every sheet, whatever it brings. */
export function coatingCare(c: PaperCase): Block {
  const { care, careTitle } = c.said.community;
  const line = (lead: string, said: string): Block => ({ kind: 'text', text: [strong(lead), ` ${said}`] });
  return {
    kind: 'section',
    title: careTitle,
    look: 'care',
    blocks: [
      {
        kind: 'beside',
        shares: [1, 1, 1],
        parts: [
          [line(care.poison, care.poisonSaid)],
          [line(care.keep, care.keepSaid), line(care.food, care.foodSaid)],
          [line(care.dust, care.dustSaid), line(care.back, care.backSaid)],
        ],
      },
    ],
  };
}
