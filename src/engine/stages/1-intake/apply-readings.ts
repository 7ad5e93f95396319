import { tenTo } from '../../numerics/elementary.ts';
import { HOT_LIMIT_CELSIUS } from '../../reference/boxes.ts';
import { READING_LIMITS } from '../../reference/reading-limits.ts';
import { integrateRecord } from '../../science/exposure.ts';
import { packLog10PerDay, survivalSet } from '../../science/survival.ts';
import type { LoggerReading } from '../../vocabulary/readings.ts';
import type { Lot, Product } from '../../vocabulary/supply.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import type { IntakeReport } from './intake-report.ts';

const MINUTES_PER_DAY = 1440;

/**
 * Lots as the loggers that lay with them leave them: at or above 40 °C, or hotter than anything is known of, the lot is put
 * on hold, which a decision `flag-cleared` lifts as it lifts any hold; its count falls by what the record cost since its
 * test, or since the record began where it was never tested. What befell packs on a trip is told; their lot's stock stays.
 */
export function applyReadings(
  report: IntakeReport,
  lots: readonly Lot[],
  products: readonly Product[],
  readings: readonly LoggerReading[],
): readonly Lot[] {
  for (const reading of readings) tellExposure(report, reading);
  return lots.map((lot) => {
    const own = readings.filter(({ lotId, trip }) => lotId === lot.id && trip === null);
    const product = products.find(({ id }) => id === lot.productId);
    if (own.length === 0 || product?.kind !== 'inoculant') return lot;
    const isHot = own.some(({ exposure }) => exposure.maxC >= HOT_LIMIT_CELSIUS.value);
    const held: Lot = isHot && lot.status === 'cleared' ? { ...lot, status: 'on_hold' } : lot;
    return lowerCount(report, held, product, own);
  });
}

function tellExposure(report: IntakeReport, { file, lotId, trip, exposure, log10Loss }: LoggerReading): void {
  const { maxC, minC, hoursAbove35 } = exposure;
  const tenths = (value: number) => Math.round(value * 10) / 10;
  const what = { lot: lotId ?? '', trip: trip ?? '', where: trip === null ? 'lot' : 'trip' };
  const facts = { ...what, maxC: tenths(maxC), minC: tenths(minC), hours: tenths(exposure.hours) };
  const measures = {
    meanKineticC: tenths(exposure.meanKineticC),
    above30: tenths(exposure.hoursAbove30),
    above40: tenths(exposure.hoursAbove40),
    log10: Number.isNaN(log10Loss) ? 'unknown' : Math.round(log10Loss * 1000) / 1000,
  };
  report.add('E1980', { file, value: lotId ?? trip, facts: { ...facts, ...measures } });
  if (maxC >= HOT_LIMIT_CELSIUS.value) report.add('E1981', { file, value: lotId ?? trip, facts });
  if (minC < READING_LIMITS.freezing.value) report.add('E1983', { file, value: lotId ?? trip, facts });
  if (hoursAbove35 > READING_LIMITS.hoursAbove35.value)
    report.add('E1984', { file, value: lotId ?? trip, facts: { ...facts, above35: tenths(hoursAbove35) } });
}

/** Over stretches that two loggers saw, the one that tells of the greater loss counts. */
function lowerCount(report: IntakeReport, lot: Lot, product: Product, readings: readonly LoggerReading[]): Lot {
  const countPerG = lot.testedCountPerG ?? product.countPerG;
  const since = lot.testedCountPerG === null ? Number.NEGATIVE_INFINITY : (lot.testedOn ?? 0) * MINUTES_PER_DAY;
  const sets = product.crops.map((crop) => survivalSet(product, crop));
  const losses = readings.map((reading) => {
    const from = reading.minutes.findIndex((minute) => minute >= since);
    const [minutes, celsius] = [reading.minutes.subarray(from), reading.celsius.subarray(from)];
    const log10 = Math.max(...sets.map((set) => integrateRecord(minutes, celsius, (c) => packLog10PerDay(c, set))));
    return {
      from: minutes[0] ?? 0,
      to: from < 0 ? Number.NaN : (minutes.at(-1) ?? Number.NaN),
      log10,
      file: reading.file,
    };
  });
  const { file } = readings[0] as LoggerReading;
  if (losses.some(({ to, log10 }) => !Number.isNaN(to) && Number.isNaN(log10))) {
    report.add('E1985', { file, value: lot.id, facts: { lot: lot.id } });
    return { ...lot, status: 'on_hold' };
  }
  const lost = worstOfOverlaps(losses.filter(({ to }) => !Number.isNaN(to)));
  if (countPerG === null || lost === 0) return lot;
  const testedCountPerG = countPerG * tenTo(-lost);
  const shown = (count: number) => Number(count.toPrecision(3));
  const facts = { lot: lot.id, before: shown(countPerG), after: shown(testedCountPerG), log10: shown(lost) };
  report.add('E1982', { file, value: lot.id, facts });
  return { ...lot, testedCountPerG, testedOn: countedUntil(lot, losses) };
}

/** A record from the day of the test on tells what the store cost: the count is as new as its last whole day. */
function countedUntil({ testedOn }: Lot, stretches: readonly Stretch[]): Lot['testedOn'] {
  if (testedOn === null) return null;
  const since = stretches.filter(({ from }) => from < (testedOn + 1) * MINUTES_PER_DAY);
  return dayNumber(Math.max(testedOn, ...since.map(({ to }) => Math.floor(to / MINUTES_PER_DAY))));
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly log10: number;
}

function worstOfOverlaps(stretches: readonly Stretch[]): number {
  let [sum, end, worst] = [0, Number.NEGATIVE_INFINITY, 0];
  for (const { from, to, log10 } of [...stretches].sort((a, b) => a.from - b.from)) {
    if (from >= end) {
      sum += worst;
      worst = 0;
    }
    worst = Math.max(worst, log10);
    end = Math.max(end, to);
  }
  return sum + worst;
}
