const SLACK_HOURS = 1e-9;

/** Hours on the road above the packs' own storage limit, where the programme sets a most. */
export function withinStorageHours(hoursAbove: number, mostHours: number | null): boolean {
  return mostHours === null || hoursAbove <= mostHours + SLACK_HOURS;
}
