import type { CommunityTask } from './community-task.ts';
import type { Block, Page, Row } from './page.ts';
import { capital, footOf, number, type PaperCase, shortNumber } from './paper-case.ts';

/** Rows where nobody counted the growers, and rows beyond those counted. */
const UNCOUNTED_ROWS = 25;
const SPARE_ROWS = 2;

/** Who took what: names are written in by hand and stay with the programme. */
export function distributionList(c: PaperCase, task: CommunityTask): Page {
  const { community } = c.said;
  const { listHeads, listSigns } = community;
  const given = cropsGiven(task);
  const growers = task.about.community.farmers ?? UNCOUNTED_ROWS;
  const rows = Array.from({ length: growers + SPARE_ROWS }, (_, i): Row => ({ cells: [number(c, i + 1)] }));
  return {
    title: community.listTitle(task.about.community.name),
    about: [community.listAbout],
    // Many crops need the longer side.
    turned: given.length > 2,
    blocks: [
      plannedTable(c, task),
      {
        kind: 'table',
        name: 'growers',
        look: 'list',
        columns: [
          { head: listHeads.number, align: 'right', width: 4 },
          { head: listHeads.name, blank: true, width: 22 },
          { head: listHeads.sex, blank: true, width: 6 },
          ...given.flatMap(({ crop, hasPacks, hasSeed }) => [
            ...(hasPacks ? [{ head: listHeads.packs(c.words.crops[crop]), blank: true }] : []),
            ...(hasSeed ? [{ head: listHeads.kg(c.words.crops[crop]), blank: true }] : []),
          ]),
          { head: listHeads.mark, blank: true, width: 20 },
        ],
        rows: [
          ...rows,
          { role: 'sum', cells: ['', community.listSum] },
          { role: 'sum', cells: ['', community.listLeft] },
        ],
      },
      { kind: 'signatures', labels: [listSigns.worker, listSigns.witness, listSigns.officer] },
    ],
    foot: footOf(c),
  };
}

function cropsGiven({ arrivals, crops }: CommunityTask) {
  const goods = arrivals.flatMap((one) => one.goods).filter(({ withheld }) => withheld === null);
  return crops.flatMap(({ crop }) => {
    const own = goods.filter((one) => one.crop === crop);
    const hasPacks = own.some(({ product }) => product.kind === 'inoculant');
    const hasSeed = own.some(({ product }) => product.kind === 'seed');
    return hasPacks || hasSeed ? [{ crop, own, hasPacks, hasSeed }] : [];
  });
}

function plannedTable(c: PaperCase, task: CommunityTask): Block {
  const { community } = c.said;
  const heads = community.listPlanHeads;
  const rows = cropsGiven(task).map(({ crop, own }): Row => {
    const packs = own.reduce((sum, one) => sum + (one.product.kind === 'inoculant' ? one.packs : 0), 0);
    const bags = own.filter(({ product }) => product.kind === 'seed');
    const kg = bags.reduce((sum, one) => sum + one.kg, 0);
    const growers = task.crops.find((one) => one.crop === crop)?.growers ?? null;
    const bagText = bags.map((one) =>
      community.listBags(number(c, one.packs), shortNumber(c, one.product.packG / 1000)),
    );
    return {
      cells: [
        capital(c.words.crops[crop]),
        number(c, packs),
        bagText.join(', '),
        shortNumber(c, kg),
        growers === null ? '' : number(c, growers),
        growers ? community.listEach(shortNumber(c, packs / growers, 2), shortNumber(c, kg / growers)) : '',
      ],
    };
  });
  return {
    kind: 'section',
    title: community.listPlan,
    blocks: [
      {
        kind: 'table',
        name: 'planned',
        columns: [
          { head: heads.crop },
          { head: heads.packs, align: 'right' },
          { head: heads.seed },
          { head: heads.kg, align: 'right' },
          { head: heads.growers, align: 'right' },
          { head: heads.each, align: 'right' },
        ],
        rows,
      },
    ],
  };
}
