import { civilFromDay, dayOfMonthDay } from '../../../vocabulary/calendar.ts';
import { type DayNumber, dayNumber } from '../../../vocabulary/units.ts';
import { type DailyRecord, valueOn } from '../daily-record.ts';

/** Rain of one member of the season at one weather place: this season's own where it is known, else the member's year. */
export type MemberRain = (day: number) => number;

/** @param yearsOff the member's year less the season's */
export function memberRain(record: DailyRecord, yearsOff: number): MemberRain {
  return (day) => {
    const known = valueOn(record, 'rainMm', day);
    if (!Number.isNaN(known) || yearsOff === 0) return known;
    const { year, month, day: dayOfMonth } = civilFromDay(dayNumber(day));
    return valueOn(record, 'rainMm', dayOfMonthDay(year + yearsOff, { month, day: dayOfMonth }));
  };
}

/** First day on which `mm` have fallen over it and the two days before; NaN where that never comes. A missing day is no rain. */
export function releaseDay(rain: MemberRain, from: DayNumber, to: DayNumber, mm: number): number {
  const fallen = (day: number) => rain(day) || 0;
  for (let day = from; day <= to; day++) if (fallen(day) + fallen(day - 1) + fallen(day - 2) >= mm) return day;
  return Number.NaN;
}
