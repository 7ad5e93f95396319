import type { RoadClass } from './places.ts';
import type { DayNumber, MinuteOfDay } from './units.ts';

export const CARRIAGES = ['open_bed', 'covered_bed', 'closed_cabin', 'pannier'] as const;
/** How the box rides, which decides the air it feels. */
export type Carriage = (typeof CARRIAGES)[number];

/** One real vehicle: a row with `count` n is read as n vehicles ID#1 to ID#n. */
export interface Vehicle {
  readonly id: string;
  readonly kind: string;
  readonly depotId: string;
  readonly payloadKg: number;
  /** Litres for packs, net of ice. 0: no box. */
  readonly coolLitres: number;
  readonly coolUaWPerK: number | null;
  /** Ice, or cool water packs, that the box takes. 0: none. */
  readonly iceKg: number;
  /** Temperature of the packs of water as they are loaded: 0 conditioned ice, above it cool water that melts nothing. */
  readonly coolantC: number;
  readonly carriage: Carriage;
  /** Where it stands while packs are handed over. */
  readonly parksInShade: boolean;
  readonly costPerKm: number;
  readonly costPerDay: number;
  readonly crew: number;
  readonly perDiem: number;
  readonly shiftStart: MinuteOfDay;
  readonly maxHours: number;
  readonly roadsAllowed: readonly RoadClass[];
  readonly availableFrom: DayNumber | null;
  readonly availableTo: DayNumber | null;
}
