/**
 * Minutes that a time zone (IANA name) is ahead of UTC at noon UTC of a day; null where the zone or the day is not known.
 *
 * @param day `YYYY-MM-DD`
 */
export function zoneOffsetMinutes(timeZone: unknown, day: unknown): number | null {
  if (typeof timeZone !== 'string' || typeof day !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(day)) return null;
  const noon = new Date(`${day}T12:00:00Z`);
  if (Number.isNaN(noon.getTime())) return null;
  try {
    return wallClock(timeZone, noon) - Math.floor(noon.getTime() / 60_000);
  } catch {
    // Intl throws a RangeError at a zone that it does not know.
    return null;
  }
}

/** Minutes since 1970-01-01T00:00 that the clocks of a zone show. */
function wallClock(timeZone: string, at: Date): number {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  });
  const shown = new Map(format.formatToParts(at).map(({ type, value }) => [type, Number(value)]));
  const part = (type: Intl.DateTimeFormatPartTypes): number => shown.get(type) ?? Number.NaN;
  return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute')) / 60_000;
}
