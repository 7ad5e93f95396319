/** What each stage does, said while it runs. */
export const STAGE_WORDING: Readonly<Record<string, string>> = {
  '1-intake': 'Reading the files',
  '2-places': 'Measuring land and roads',
  '3-season': 'Looking at the season',
  '4-needs': 'Working out what the land needs',
  '5-allocation and 6-delivery': 'Sharing out the stock and planning the days',
  '7-outcomes': 'Weighing what it gives',
};
