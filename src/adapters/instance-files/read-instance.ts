import type { RoutingInstance } from '../../engine/index.ts';
import { InstanceFault } from './instance-fault.ts';
import { readMixedFleetText } from './mixed-fleet-text.ts';
import { readSolomonText } from './solomon-text.ts';
import { readVrplibText } from './vrplib-text.ts';

export { InstanceFault };

/** Reads a published routing instance; its text tells which format it is. @throws InstanceFault */
export function readInstance(text: string): RoutingInstance {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  if (lines.some((line) => /^\s*DIMENSION\s*:/.test(line))) return readVrplibText(lines);
  if (lines.some((line) => /^\s*VEHICLE\s*$/.test(line))) return readSolomonText(lines);
  if (lines.some((line) => /^\s*\/\//.test(line))) return readMixedFleetText(lines);
  throw new InstanceFault(
    'This is no routing instance that is read here: VRPLIB text, Solomon text, or a mixed-fleet text.',
  );
}
