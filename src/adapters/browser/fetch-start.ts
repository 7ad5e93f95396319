import type { Plan } from '../../engine/index.ts';
import type { GatheredFiles } from '../workers/worker-messages.ts';

/** What `npm start` serves beside the page: a scenario's files and the plan made from them. */
export interface StartFiles extends GatheredFiles {
  readonly name: string;
  /** Null where it is missing or not JSON. */
  readonly plan: Plan | null;
}

/** Fetches the scenario that is served with the page; null where the page is served without one. */
export async function fetchStart(): Promise<StartFiles | null> {
  const list = await getJson<{ readonly name: string; readonly files: readonly string[] }>('start/files.json');
  if (list === null) return null;
  const plan = getJson<Plan>('start/plan.json');
  const files = await Promise.all(
    list.files.map(async (path) => [path, await getBytes(`start/files/${path}`)] as const),
  );
  const there = files.filter((entry): entry is readonly [string, Uint8Array] => entry[1] !== null);
  return { name: list.name, files: new Map(there), faults: [], plan: await plan };
}

async function get(address: string): Promise<Response | null> {
  try {
    const response = await fetch(address);
    return response.ok ? response : null;
  } catch {
    return null;
  }
}

async function getJson<T>(address: string): Promise<T | null> {
  const response = await get(address);
  try {
    return response === null ? null : ((await response.json()) as T);
  } catch {
    return null;
  }
}

async function getBytes(address: string): Promise<Uint8Array | null> {
  const response = await get(address);
  return response === null ? null : new Uint8Array(await response.arrayBuffer());
}
