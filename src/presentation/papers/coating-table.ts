import type { Product } from '../../engine/index.ts';
import { growerBatchKg, LADDER_KG } from './batch-sizes.ts';
import { type CoatingRates, capsPerPack, coatingAmounts, isLiquid } from './coating-amounts.ts';
import type { CommunityTask, CropCoating } from './community-task.ts';
import { sizeText } from './goods-text.ts';
import type { Block, Cell, Row, Table } from './page.ts';
import { strong } from './page.ts';
import { capital, number, type PaperCase, shortNumber } from './paper-case.ts';

/** A product, and what its label says of it. */
export interface CoatedWith {
  readonly product: Product;
  readonly rates: CoatingRates;
}

/** Crops whose products are used alike share one ladder. */
interface Ladder extends CoatedWith {
  readonly crops: readonly CropCoating['crop'][];
}

/** How much of what for 1, 2, 5 and 10 kg, and for each grower's share; what a pack fills. */
export function coatingTable(c: PaperCase, task: CommunityTask): Block[] {
  const { community } = c.said;
  const ladders = laddersOf(task.coatings);
  const unstated = task.coatings.flatMap(({ crop, rates }) => (rates === null ? [crop] : []));
  if (ladders.length === 0 && unstated.length === 0) return [];
  return [
    {
      kind: 'section',
      title: community.coatTitle,
      look: 'framed',
      blocks: [
        ...ladders.flatMap((ladder): Block[] => [
          {
            kind: 'text',
            text: [
              strong(
                capital(
                  community.ladderOf(
                    ladder.crops.map((crop) => c.words.crops[crop]).join(', '),
                    sizeText(c, ladder.product),
                  ),
                ),
              ),
              ladder.crops.length > 1 ? ` ${community.ownPacks}` : '',
              ` ${capsText(c, ladder)} `,
              strong(community.never),
            ],
          },
          ladderTable(c, task, ladder),
        ]),
        ...unstated.map(
          (crop): Block => ({ kind: 'text', text: [strong(community.doseUnknown(c.words.crops[crop]))] }),
        ),
      ],
    },
  ];
}

function laddersOf(coatings: readonly CropCoating[]): Ladder[] {
  const alike = new Map<string, Ladder>();
  for (const { crop, product, rates } of coatings) {
    if (rates === null) continue;
    const key = JSON.stringify([rates, product.packG, product.packUnit]);
    const known = alike.get(key);
    alike.set(
      key,
      known ? { ...known, crops: [...new Set([...known.crops, crop])] } : { product, rates, crops: [crop] },
    );
  }
  return [...alike.values()];
}

/** How many caps a pack fills, and how a cap is filled. */
export function capsText(c: PaperCase, { product, rates }: CoatedWith): string {
  const { capFills, capFillsLiquid } = c.said.community;
  const said = isLiquid(product) ? capFillsLiquid : capFills;
  return said(number(c, capsPerPack(product, rates)), shortNumber(c, rates.gramsPerCap));
}

/** Batches across, what goes into each down: caps are what a hand counts, grams and millilitres what a scale says. */
function ladderTable(c: PaperCase, task: CommunityTask, { product, rates, crops }: Ladder): Table {
  const { ladderHeads, batch, eachGrower, noCap } = c.said.community;
  const shares = task.crops
    .filter(({ crop, coatedKg }) => crops.includes(crop) && coatedKg > 0)
    .map((crop) => ({ kg: growerBatchKg(crop), name: c.words.crops[crop.crop] }));
  const heads = [
    ...LADDER_KG.map((kg) => batch(number(c, kg))),
    ...shares.map(({ kg, name }) => eachGrower(name, shortNumber(c, kg))),
  ];
  const amounts = [...LADDER_KG, ...shares.map(({ kg }) => kg)].map((kg) => coatingAmounts(rates, kg));
  const row = (head: string, cells: readonly Cell[]): Row => ({ cells: [head, ...cells] });
  const firm = (text: string): Cell => [strong(text)];
  const liquid = isLiquid(product);
  return {
    kind: 'table',
    name: 'ladder',
    look: 'even',
    columns: [{ head: '', width: 24 }, ...heads.map((head) => ({ head, align: 'right' as const }))],
    rows: [
      row(
        liquid ? ladderHeads.liquidCaps : ladderHeads.caps,
        amounts.map(({ caps }) => firm(caps === null ? noCap : halves(c, caps))),
      ),
      row(
        ladderHeads.waterCaps,
        amounts.map(({ waterCaps }) => firm(number(c, waterCaps))),
      ),
      ...(rates.stickerPacksPerKg > 0
        ? [
            row(
              ladderHeads.sticker,
              amounts.map(({ stickerPacks }) => shortNumber(c, stickerPacks, 2)),
            ),
          ]
        : []),
      row(
        liquid ? ladderHeads.millilitres : ladderHeads.grams,
        amounts.map(({ powderG }) => shortNumber(c, powderG)),
      ),
      row(
        ladderHeads.water,
        amounts.map(({ waterMl }) => number(c, Math.round(waterMl))),
      ),
    ],
  };
}

/** `7½`: a half is easier seen so than behind a comma. */
export function halves(c: PaperCase, caps: number): string {
  const whole = Math.floor(caps);
  if (caps === whole) return number(c, whole);
  return `${whole === 0 ? '' : number(c, whole)}½`;
}

type Coatings = Pick<CommunityTask, 'coatings'>;

export const usesLiquid = ({ coatings }: Coatings): boolean => coatings.some(({ product }) => isLiquid(product));
export const usesPowder = ({ coatings }: Coatings): boolean => coatings.some(({ product }) => !isLiquid(product));
