import { tenTo } from '../numerics/elementary.ts';
import {
  BOX_UA_W_PER_K,
  CARRIER_LITRES,
  CARRIER_UA_W_PER_K,
  CARTON_TAU_HOURS,
  ICE_MELT_J_PER_KG,
  LINER_J_PER_K,
  PACKS_J_PER_KG_K,
  WATER_J_PER_KG_K,
} from '../reference/boxes.ts';
import { REFERENCE_CELSIUS, type SurvivalSet } from '../reference/survival-sets.ts';
import type { Vehicle } from '../vocabulary/fleet.ts';

/** Explicit steps of 20 s: the box's own time constants are hours. */
const STEP_SECONDS = 20;
const MELT = ICE_MELT_J_PER_KG.value;

/** Packs on the road: one lump of heat, ice beside it, what has happened to it so far. */
export class OwnBox {
  celsius: number;
  hottest: number;
  iceKg = 0;
  waterKg = 0;
  packsKg: number;
  /** Null: cartons without a box. */
  readonly uaWPerK: number | null;

  constructor(vehicle: Vehicle, packsKg: number, startC: number, iceKg: number) {
    this.uaWPerK = uaOf(vehicle);
    this.packsKg = packsKg;
    this.celsius = startC;
    if (this.uaWPerK !== null && iceKg > 0 && vehicle.coolantC > 0) this.mixWith(iceKg, vehicle.coolantC);
    else if (this.uaWPerK !== null && iceKg > 0 && startC > 0) this.coolByIce(iceKg);
    this.hottest = this.celsius;
  }

  /** Packs and liner give their heat to the ice at once, down to 0 °C or until the ice is gone. */
  private coolByIce(iceKg: number): void {
    const heat = (this.packsKg * PACKS_J_PER_KG_K.value + LINER_J_PER_K.value) * this.celsius;
    const melted = Math.min(iceKg, heat / MELT);
    this.waterKg = melted;
    this.iceKg = iceKg - melted;
    this.celsius = (heat - melted * MELT) / this.heatCapacity();
  }

  /** Packs, liner and cool water come to one temperature. */
  private mixWith(waterKg: number, waterC: number): void {
    const held = this.heatCapacity() * this.celsius + waterKg * WATER_J_PER_KG_K.value * waterC;
    this.waterKg = waterKg;
    this.celsius = held / this.heatCapacity();
  }

  private heatCapacity(): number {
    return this.waterKg * WATER_J_PER_KG_K.value + this.packsKg * PACKS_J_PER_KG_K.value + LINER_J_PER_K.value;
  }

  private step(airC: number, seconds: number): void {
    if (this.uaWPerK === null) this.celsius += ((airC - this.celsius) / (CARTON_TAU_HOURS.value * 3600)) * seconds;
    else if (this.iceKg > 0) {
      const melted = Math.min(this.iceKg, (this.uaWPerK * Math.max(0, airC - this.celsius) * seconds) / MELT);
      this.iceKg -= melted;
      this.waterKg += melted;
    } else this.celsius += ((this.uaWPerK * (airC - this.celsius)) / this.heatCapacity()) * seconds;
    if (this.celsius > this.hottest) this.hottest = this.celsius;
  }

  /** Runs from one minute of the day to another; `each` is told the temperature and the minutes of every step. */
  run(
    from: number,
    to: number,
    airAt: (minute: number) => number,
    each?: (celsius: number, minutes: number) => void,
  ): void {
    const steps = Math.max(1, Math.ceil(((to - from) * 60) / STEP_SECONDS));
    const minutes = (to - from) / steps;
    if (!(minutes > 0)) return;
    for (let i = 0; i < steps; i++) {
      const before = this.celsius;
      this.step(airAt(from + (i + 0.5) * minutes), minutes * 60);
      each?.((before + this.celsius) / 2, minutes);
    }
  }
}

function uaOf(vehicle: Vehicle): number | null {
  if (vehicle.coolLitres <= 0) return null;
  if (vehicle.coolUaWPerK !== null) return vehicle.coolUaWPerK;
  return vehicle.coolLitres <= CARRIER_LITRES.value ? CARRIER_UA_W_PER_K.value : BOX_UA_W_PER_K.value;
}

/** log10 of the cells lost in so many minutes at a temperature; nothing is known above the set's range. */
export function lossOver(
  celsius: number,
  minutes: number,
  { rateFactor, daysPerLog10, zCelsius, validToC }: SurvivalSet,
) {
  if (celsius > validToC) return Number.POSITIVE_INFINITY;
  return (minutes / 1440) * (rateFactor / daysPerLog10) * tenTo((celsius - REFERENCE_CELSIUS) / zCelsius);
}
