/** Seasons whose day has come by `day`; a season without one (NaN) never comes. */
function seasonsComeBy(days: ArrayLike<number>, day: number): number {
  let come = 0;
  for (let season = 0; season < days.length; season++) if ((days[season] as number) <= day) come++;
  return come;
}

/** Share of seasons whose day comes later than `day`, or never. NaN without seasons. */
export function chanceLaterThan(days: ArrayLike<number>, day: number): number {
  return (days.length - seasonsComeBy(days, day)) / days.length;
}

/**
 * Chance of having begun to sow by each day of an outlook: the share of seasons whose first sowing day has come. 0
 * without seasons.
 *
 * @param firstSowingDays day numbers, one per season, NaN where that season gives none
 * @param firstDay first day of the outlook
 */
export function sowingChance(firstSowingDays: ArrayLike<number>, firstDay: number, outlookDays: number): Float64Array {
  const seasons = Math.max(1, firstSowingDays.length);
  return Float64Array.from(
    { length: outlookDays },
    (_, offset) => seasonsComeBy(firstSowingDays, firstDay + offset) / seasons,
  );
}
