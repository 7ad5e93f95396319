/** Stages in the order in which they run, from the second: the first, intake, has run when a scenario is open. */
export const PLAN_STAGES: readonly string[] = [
  '2-places',
  '3-season',
  '4-needs',
  '5-allocation and 6-delivery',
  '6-delivery',
  '7-outcomes',
];
