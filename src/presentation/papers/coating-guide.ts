import { INOCULATION_PRACTICE } from '../../engine/index.ts';
import { usesLiquid, usesPowder } from './coating-table.ts';
import type { CommunityTask } from './community-task.ts';
import type { Block, Text } from './page.ts';
import { strong } from './page.ts';
import { number, type PaperCase } from './paper-case.ts';

export const coatingSteps = (c: PaperCase, task: CommunityTask): Block => ({
  kind: 'section',
  title: c.said.community.stepsTitle,
  blocks: [{ kind: 'steps', columns: 3, items: stepTexts(c, task) }],
});

/** The steps of coating, in order, with the lots that this sheet speaks of and no other. */
export function stepTexts(c: PaperCase, task: Pick<CommunityTask, 'crops' | 'coatings'>): string[] {
  const { steps, opened } = c.said.community;
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
  return [
    `${steps.soil}${goodFor.length > 0 ? ` ${opened(number(c, Math.min(...goodFor)))}` : ''}`,
    steps.label([...new Set(lots)].join(', ')),
    ...wetting,
    ...(usesPowder(task) ? [`${steps.powder}${hasGroundnut ? ` ${steps.groundnut}` : ''}`] : []),
    `${steps.dry(number(c, least), number(c, most))} ${steps.wet}`,
    steps.sow,
  ];
}

/** Cautions that stand on every sheet, whatever it brings. */
export function coatingCare(c: PaperCase): Block {
  const column = (texts: readonly Text[]) => texts.map((text): Block => ({ kind: 'text', text }));
  const [poison = '', keep = '', food = '', ...last] = careTexts(c);
  return {
    kind: 'section',
    title: c.said.community.careTitle,
    look: 'care',
    blocks: [
      {
        kind: 'beside',
        shares: [1, 1, 1],
        parts: [column([poison]), column([keep, food]), column(last)],
      },
    ],
  };
}

export function careTexts(c: PaperCase): Text[] {
  const { care } = c.said.community;
  return [
    [strong(care.poison), ` ${care.poisonSaid}`],
    [strong(care.keep), ` ${care.keepSaid}`],
    [strong(care.food), ` ${care.foodSaid}`],
    [strong(care.dust), ` ${care.dustSaid}`],
    [strong(care.back), ` ${care.backSaid}`],
  ];
}
