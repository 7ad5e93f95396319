import { messageLength, withoutMarks } from '../exports/message-length.ts';
import { hourText, weekdayOf } from '../views/days-axis.ts';
import { dateText } from '../views/frame-view.ts';
import { contactOf } from './case-names.ts';
import { communityTask } from './community-task.ts';
import { number, type PaperCase } from './paper-case.ts';
import { communitiesServed } from './paper-sets.ts';

/** A text for the phone of whoever receives at a community: one for each visit still to come. */
export interface DeliveryMessage {
  readonly communityId: string;
  readonly date: string;
  /** Who receives and the phone, as the files say it; null where they do not. */
  readonly contact: string | null;
  readonly text: string;
}

const ONE_MESSAGE = 160;

/**
 * Place, day, hour, packs, and whom to call, short enough for one message where it can be: first the weekday goes, then the end of a
 * long name. Hours are rounded down to the quarter hour, so that nobody comes late for them.
 *
 * @param only communities to write to; null: all that are still to be visited
 */
export function deliveryMessages(c: PaperCase, only: ReadonlySet<string> | null = null): DeliveryMessage[] {
  return communitiesServed(c)
    .filter((id) => only === null || only.has(id))
    .flatMap((id) => messagesTo(c, id));
}

function messagesTo(c: PaperCase, communityId: string): DeliveryMessage[] {
  const task = communityTask(c, communityId);
  if (task === null) return [];
  const index = c.plan.ids.communities.indexOf(communityId);
  const contact = contactOf(c, c.plan.places.communityPlace[index] ?? -1);
  return task.arrivals.map(({ date, minute, goods }): DeliveryMessage => {
    const usable = goods.filter(({ withheld }) => withheld === null);
    const packs = (isLiving: boolean) =>
      usable.reduce((sum, one) => ((one.product.kind === 'inoculant') === isLiving ? sum + one.packs : sum), 0);
    const said = {
      place: task.about.place,
      weekday: c.words.weekdays[weekdayOf(date)] ?? '',
      date: dateText(date, c.words, false),
      clock: hourText(Math.floor(minute / 15) * 15),
      bags: packs(false),
      packs: packs(true),
    };
    return { communityId, date, contact, text: shortest(c, said) };
  });
}

interface Said {
  readonly place: string;
  readonly weekday: string;
  readonly date: string;
  readonly clock: string;
  readonly bags: number;
  readonly packs: number;
}

function shortest(c: PaperCase, { place, weekday, date, clock, bags, packs }: Said): string {
  const { message } = c.said.community;
  const goods = [
    ...(bags > 0 ? [message.bags(number(c, bags), bags === 1)] : []),
    ...(packs > 0 ? [message.packs(number(c, packs), packs === 1)] : []),
  ].join(', ');
  const care = packs > 0 ? message.keepCool : '';
  const call = c.scenario.contact === null ? '' : message.call(c.scenario.contact);
  const write = (name: string, day: string) =>
    withoutMarks([message.comes(name, day, clock, goods), care, call].filter((part) => part !== '').join(' '));
  const full = write(place, `${weekday} ${date}`);
  const over = (text: string) => Math.max(0, messageLength(text).units - ONE_MESSAGE);
  if (over(full) === 0 || messageLength(full).alphabet === 'sixteen-bit') return full;
  const shorter = write(place, date);
  if (over(shorter) === 0) return shorter;
  const LEAST_NAME = 8;
  return write(place.slice(0, Math.max(LEAST_NAME, place.length - over(shorter))).trimEnd(), date);
}

export const MESSAGES_HEADER = ['community_id', 'date', 'contact', 'text', 'places', 'messages'];

/** Messages as rows of a table. */
export const messageRows = (messages: readonly DeliveryMessage[]) =>
  messages.map(({ communityId, date, contact, text }) => {
    const { units, parts } = messageLength(text);
    return [communityId, date, contact ?? '', text, units, parts];
  });
