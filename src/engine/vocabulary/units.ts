/**
 * Units. A name ends in its unit (`areaHa`, `travelMinutes`, `payloadCelsius`), and a number that a reader could take
 * for another kind of number is branded at function doors. In hot loops and columns plain numbers are used.
 */
declare const unit: unique symbol;
type Branded<U extends string> = number & { readonly [unit]: U };

/** Whole days since 1970-01-01 in the civil calendar, no time zone. */
export type DayNumber = Branded<'day'>;
/** Minutes since local midnight, 0 to 1440. */
export type MinuteOfDay = Branded<'minute of day'>;

export const dayNumber = (days: number): DayNumber => days as DayNumber;
export const minuteOfDay = (minutes: number): MinuteOfDay => minutes as MinuteOfDay;
