import { useEffect } from 'react';
import type { SeasonCalendar } from '../../../engine/index.ts';
import { useSeason } from '../../state/use-stores.ts';

/** What each day is worth to each zone; null while it is being weighed beside the page. Asks once a plan. */
export function useWorth(): SeasonCalendar | null {
  const plan = useSeason((season) => season.plan);
  const calendar = useSeason((season) => season.calendar);
  const weighDays = useSeason((season) => season.weighDays);
  const isChecked = useSeason((season) => season.findings !== null);
  useEffect(() => {
    // After the check, so that a headline never waits for it.
    if (plan !== null && isChecked) void weighDays();
  }, [plan, isChecked, weighDays]);
  return calendar?.worth ?? null;
}
