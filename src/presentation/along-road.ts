import type { Position } from '../engine/index.ts';

/** Positions of a road line from one place along it to another, counted in vertices (2.5 is half way from vertex 2 to 3). */
export function alongRoad(positions: readonly Position[], from: number, to: number): Position[] {
  const line = [positionAt(positions, from)];
  if (from <= to) {
    for (let vertex = Math.floor(from) + 1; vertex < to; vertex++) line.push(positionAt(positions, vertex));
  } else {
    for (let vertex = Math.ceil(from) - 1; vertex > to; vertex--) line.push(positionAt(positions, vertex));
  }
  line.push(positionAt(positions, to));
  return line;
}

function positionAt(positions: readonly Position[], place: number): Position {
  const before = Math.min(Math.floor(place), positions.length - 1);
  const [a, b] = [positions[before] ?? [0, 0], positions[Math.min(before + 1, positions.length - 1)] ?? [0, 0]];
  const part = place - before;
  return [coordinate(a[0] + (b[0] - a[0]) * part), coordinate(a[1] + (b[1] - a[1]) * part)];
}

/** Seven decimals of a degree: about a centimetre. */
function coordinate(degrees: number): number {
  return Math.round(degrees * 1e7) / 1e7;
}
