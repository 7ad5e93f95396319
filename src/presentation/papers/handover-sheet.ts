import { hourText } from '../views/days-axis.ts';
import { dateText } from '../views/frame-view.ts';
import { type CarriedGoods, isTreated, mayBeCoated } from './carried-goods.ts';
import { zoneNames, zoneOfCommunity } from './case-names.ts';
import { coatingCare, coatingSteps } from './coating-guide.ts';
import { coatingTable } from './coating-table.ts';
import type { CommunityTask } from './community-task.ts';
import { productText } from './goods-text.ts';
import type { CropHandover } from './handover-goods.ts';
import type { Block, Page, Row, Text } from './page.ts';
import { strong } from './page.ts';
import { capital, daysBetween, dayText, footOf, number, type PaperCase, shortNumber } from './paper-case.ts';
import { sharingTable } from './sharing-table.ts';

/** A pack that ends within so many days of its handover is said to end. */
const SOON_DAYS = 45;

/** What one community is handed, who shares it, how much of what, in what order, and what not to do. */
export function handoverSheet(c: PaperCase, task: CommunityTask): Page {
  const { community } = c.said;
  const { about, arrivals, crops, coatings } = task;
  const planned = about.community.crops.reduce((sum, { plannedHa }) => sum + plannedHa, 0);
  const { farmers } = about.community;
  const zone =
    zoneNames(
      c,
      [zoneOfCommunity(c, about.community.id)].filter((id) => id !== ''),
    ) || c.words.days.outside;
  const who =
    farmers === null
      ? community.aboutUncounted(zone, number(c, planned))
      : community.about(zone, number(c, farmers), number(c, planned));
  return {
    title: community.title(about.community.name),
    about: [`${who} ${community.place(about.place)}`],
    blocks: [
      { kind: 'fields', labels: [community.worker, community.phone] },
      arrivals.length === 0 ? { kind: 'text', text: community.nothing, look: 'lead' } : receiveTable(c, task),
      ...sharingTable(c, crops),
      ...bare(c, crops),
      ...coatingTable(c, task),
      ...(coatings.length > 0 ? [coatingSteps(c, task)] : []),
      coatingCare(c),
      { kind: 'signatures', labels: [community.signs.worker, community.signs.driver, community.signs.box] },
    ],
    foot: footOf(c),
  };
}

function receiveTable(c: PaperCase, task: CommunityTask): Block {
  const { receiveHeads, receiveTitle, visit } = c.said.community;
  const rows = task.arrivals.flatMap((arrival): Row[] => [
    { role: 'group', cells: [visit(dayText(c, arrival.date), hourText(arrival.minute), arrival.vehicleId)] },
    ...arrival.goods.map(
      (one): Row => ({
        cells: [
          capital(productOf(c, one)),
          { big: number(c, one.packs) },
          one.lot.id,
          dateText(one.expires, c.words),
          receivedNote(c, task, one, arrival.date),
        ],
      }),
    ),
  ]);
  return {
    kind: 'section',
    title: receiveTitle,
    blocks: [
      {
        kind: 'table',
        name: 'receive',
        columns: [
          { head: receiveHeads.goods },
          { head: receiveHeads.packs, align: 'right' },
          { head: receiveHeads.lot, whole: true },
          { head: receiveHeads.expires, whole: true },
          { head: receiveHeads.note, width: 36 },
          { head: receiveHeads.counted, blank: true },
        ],
        rows,
      },
    ],
  };
}

/** A product of several crops is here for one of them. */
const productOf = (c: PaperCase, { product, crop }: CarriedGoods): string =>
  productText(c, { ...product, crops: [crop] });

/** What must be known of goods as they come: not to be used, poisonous, short, or soon at their last day. */
export function receivedNote(c: PaperCase, task: CommunityTask, one: CarriedGoods, date: string): Text {
  const { community } = c.said;
  const { crops, arrivals } = task;
  if (one.withheld !== null) return [strong(community.withheld[one.withheld])];
  if (isTreated(one)) return [strong(mayBeCoated(one) ? community.treatedMay : community.treatedNot)];
  const { rateKgPerHa } = one.product;
  if (one.product.kind === 'fertiliser' && rateKgPerHa !== null)
    return community.fertiliserRate(shortNumber(c, rateKgPerHa), shortNumber(c, rateKgPerHa / 100, 2));
  const crop = crops.find((known) => known.crop === one.crop);
  if (one.product.kind !== 'inoculant' || crop === undefined) return '';
  if (crop.coatedKg <= 0) return [strong(community.noSeedToCoat)];
  const parts: (string | ReturnType<typeof strong>)[] = [];
  // Whether all comes that was asked for is said once a crop, beside its first packs.
  const first = arrivals
    .flatMap(({ goods }) => goods)
    .find(({ product, crop: its }) => product.kind === 'inoculant' && its === one.crop);
  if (one === first) parts.push(shortText(c, crop));
  if (daysBetween(date, one.expires) <= SOON_DAYS)
    parts.push(' ', strong(community.sowBefore(dateText(one.expires, c.words))));
  return parts;
}

function shortText(c: PaperCase, { sharing, packsAskedFor }: CropHandover): string {
  const given = sharing.reduce((sum, { packs }) => sum + packs, 0);
  if (given >= packsAskedFor) return c.said.community.allAsked;
  return c.said.community.short(number(c, given), number(c, packsAskedFor));
}

/** Crops that get seed but no packs. */
function bare(c: PaperCase, crops: readonly CropHandover[]): Block[] {
  const names = crops.flatMap(({ crop, coatedKg, seed, ownSeedKg }) =>
    coatedKg <= 0 && (seed.length > 0 || ownSeedKg > 0) ? [c.words.crops[crop]] : [],
  );
  return names.length === 0 ? [] : [{ kind: 'text', text: c.said.community.noPacks(names.join(', ')) }];
}
