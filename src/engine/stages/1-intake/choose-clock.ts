import { exactSum } from '../../numerics/exact-sum.ts';
import type { ScenarioRecords } from '../../vocabulary/records.ts';
import type { Community } from '../../vocabulary/scenario.ts';
import { placeMiddle } from './canonical-order.ts';
import type { IntakeReport } from './intake-report.ts';

/** The Earth turns 15 degrees of longitude an hour. */
const DEGREES_PER_HOUR = 15;

/**
 * Local clock of the scenario: the offset of its time zone, or where the zone is unknown the whole hour of the communities'
 * mean longitude (nautical time; assumed).
 */
export function chooseClock(
  report: IntakeReport,
  records: ScenarioRecords,
  timeZone: string | null,
  communities: readonly Community[],
): { readonly timeZone: string; readonly utcOffsetMinutes: number } {
  const { utcOffsetMinutes, utcOffsetAtEndMinutes } = records;
  const minutes = Math.abs((utcOffsetAtEndMinutes ?? 0) - (utcOffsetMinutes ?? 0));
  if (utcOffsetMinutes !== null && utcOffsetAtEndMinutes !== null && minutes > 0)
    report.add('E1210', {
      file: records.document?.file ?? null,
      column: 'timeZone',
      value: timeZone,
      facts: { minutes },
    });
  if (timeZone !== null && utcOffsetMinutes !== null) return { timeZone, utcOffsetMinutes };
  const longitudes = communities.map(({ geometry }) => placeMiddle(geometry)[0]);
  const hours = Math.round(exactSum(longitudes) / Math.max(1, longitudes.length) / DEGREES_PER_HOUR);
  const facts = { utcOffsetMinutes: hours * 60 };
  report.add('E1205', { file: records.document?.file ?? null, column: 'timeZone', value: timeZone, facts });
  return { timeZone: timeZone ?? '', utcOffsetMinutes: hours * 60 };
}
