import type { ProblemCode } from '../../vocabulary/problems.ts';
import type { ReadFaultKind, ScenarioPart, ScenarioRecords } from '../../vocabulary/records.ts';
import type { IntakeReport } from './intake-report.ts';

const CODE_OF_FAULT: Readonly<Record<ReadFaultKind, ProblemCode>> = {
  missing: 'E1100',
  empty: 'E1101',
  encoding: 'E1102',
  'not-json': 'E1103',
  'too-deep': 'E1104',
  'too-large': 'E1105',
  'not-csv': 'E1106',
  'not-geojson': 'E1107',
  'row-shape': 'E1108',
  'unsafe-path': 'E1109',
  'byte-order-mark': 'E1110',
  'bare-nan': 'E1111',
};

/** Without these there is no land, no stock, no way and no weather to plan with. */
const NEEDED = [
  'communities',
  'depots',
  'products',
  'lots',
  'vehicles',
  'roads',
  'weather',
] as const satisfies ScenarioPart[];

/** What the adapter met on the way, and the files without which no honest plan is possible. */
export function reportFaults(report: IntakeReport, records: ScenarioRecords): void {
  for (const { kind, file, row, value } of records.faults) {
    report.add(CODE_OF_FAULT[kind], { file, row, value: value === '' ? null : value });
  }
  if (records.document === null) report.add('E1120', { value: 'scenario.json' });
  else for (const part of NEEDED) if (records[part] === null) report.add('E1120', { value: part });
}

/** Parts that were read but of which no row is left: no plan without land, depots, products or weather; the rest is said. */
export function reportEmptyParts(
  report: IntakeReport,
  records: ScenarioRecords,
  read: Readonly<Record<(typeof NEEDED)[number], readonly unknown[]>>,
): void {
  const planless: readonly string[] = ['communities', 'depots', 'products', 'weather'];
  for (const part of NEEDED) {
    const sent = records[part];
    if (sent === null || read[part].length > 0) continue;
    report.add(planless.includes(part) ? 'E1121' : 'E1122', { file: sent.file, value: part });
  }
}
