/** One event of a calendar file. */
export interface CalendarEvent {
  /** The same for the same event in every plan of the season, so that a new file moves it and never doubles it. */
  readonly uid: string;
  /** Either a stretch of time in UTC, `20261124T033000Z`, or one whole day, `20261124`, and the day after it. */
  readonly from: string;
  readonly to: string;
  readonly isAllDay: boolean;
  readonly summary: string;
  readonly description: string;
  readonly place: string;
}

const ENDING = '\r\n';
const LINE_OCTETS = 75;

/**
 * A calendar as iCalendar (RFC 5545): lines end in CRLF and are folded after 75 octets, never inside a character; text is
 * escaped; every event has a UID and a DTSTAMP; a whole day ends on the day after it.
 *
 * @param stamp when the plan was known, in UTC: a file made twice is the same file
 */
export function calendarText(name: string, stamp: string, events: readonly CalendarEvent[]): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Nodulary//Deliveries//EN',
    'CALSCALE:GREGORIAN',
    `X-WR-CALNAME:${escaped(name)}`,
    ...events.flatMap((event) => eventLines(event, stamp)),
    'END:VCALENDAR',
  ];
  return lines.map(folded).join(ENDING) + ENDING;
}

function eventLines({ uid, from, to, isAllDay, summary, description, place }: CalendarEvent, stamp: string): string[] {
  const value = isAllDay ? ';VALUE=DATE' : '';
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART${value}:${from}`,
    `DTEND${value}:${to}`,
    `SUMMARY:${escaped(summary)}`,
    ...(description === '' ? [] : [`DESCRIPTION:${escaped(description)}`]),
    ...(place === '' ? [] : [`LOCATION:${escaped(place)}`]),
    'END:VEVENT',
  ];
}

/** Backslash first, then what parts values and lines. */
const escaped = (text: string): string =>
  text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replace(/\r\n|\r|\n/g, '\\n');

/** Octets of a character in UTF-8 (RFC 3629). */
function octetsOf(letter: string): number {
  const code = letter.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}

/** Folds a line after 75 octets at most; each continuation begins with one space, which counts. */
export function folded(line: string): string {
  const parts: string[] = [];
  let [part, octets] = ['', 0];
  for (const letter of line) {
    const size = octetsOf(letter);
    if (octets + size > LINE_OCTETS) {
      parts.push(part);
      [part, octets] = [' ', 1];
    }
    part += letter;
    octets += size;
  }
  return [...parts, part].join(ENDING);
}
