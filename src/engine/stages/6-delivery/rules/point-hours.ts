const SLACK_MINUTES = 1e-9;

/** Service begins when the hand-over place opens at the earliest. */
export function serviceStart(arriveMinute: number, opensMinute: number): number {
  return Math.max(arriveMinute, opensMinute);
}

/** Service ends before the place closes. */
export function endsBeforeClosing(departMinute: number, closesMinute: number): boolean {
  return departMinute <= closesMinute + SLACK_MINUTES;
}
