import { describe, expect, it } from 'vitest';
import { takeFolderOff } from '../../src/adapters/browser/gather-files.ts';
import { mendTable } from '../../src/adapters/browser/mend-table.ts';
import { changedInputs, isStale } from '../../src/app/state/changed-inputs.ts';
import { createSeasonStore } from '../../src/app/state/season-store.ts';
import type { Decision } from '../../src/engine/index.ts';
import { planFiles } from '../plan-files.ts';
import { memory, plannerAtHand, tinyFiles } from './planner-at-hand.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const whole = (files = tinyFiles()) => ({ name: 'tiny', files, faults: [], whole: true });

async function opened() {
  const client = plannerAtHand();
  const kept = memory();
  const store = createSeasonStore(client, kept);
  await store.getState().openFiles(whole());
  return { client, kept, store, state: store.getState };
}

const away = (vehicleId: string): Decision => ({
  kind: 'vehicle-away',
  vehicleId,
  from: '2026-11-21',
  to: '2026-11-22',
});

describe('opening and planning', () => {
  it('plans what it opens, and makes the plan of the command line with the same seed and steps', async () => {
    const { state, client } = await opened();
    const { plan, problems } = planFiles(tinyFiles(), 20_000);
    expect(state().plan).toEqual({ ...plan, problems: [...problems, ...plan.problems] });
    expect(state().findings).toEqual([]);
    expect(client.asked).toEqual(['open', 'plan', 'check']);
    expect(changedInputs(state())).toBe(0);
  });

  it('shows the plan that came with the page without planning, where its hashes are those of the files', async () => {
    const { plan } = planFiles(tinyFiles());
    const client = plannerAtHand();
    const store = createSeasonStore(client, memory());
    await store.getState().openStart({ ...whole(), plan });
    expect(store.getState().plan).toBe(plan);
    expect(store.getState().notice).toBeNull();
    expect(client.asked).toEqual(['open', 'check']);
  });

  it.each(['scenarioSha256', 'decisionsSha256'])('plans anew where its %s is another', async (hash) => {
    const { plan } = planFiles(tinyFiles());
    const client = plannerAtHand();
    const store = createSeasonStore(client, memory());
    const notices: (string | undefined)[] = [];
    store.subscribe(({ notice }) => notices.push(notice?.kind));
    await store.getState().openStart({ ...whole(), plan: { ...plan, [hash]: '0'.repeat(64) } });
    expect(notices).toContain('other-plan');
    expect(client.asked).toEqual(['open', 'plan', 'check']);
    expect(store.getState().plan?.iterations).toBeGreaterThan(0);
  });

  it('opens nothing where scenario.json is missing, and keeps what is open', async () => {
    const { state } = await opened();
    const before = state().plan;
    await state().openFiles(takeFolderOff('elsewhere', new Map([['notes.txt', bytes('x')]]), []));
    expect(state().notice).toEqual({ kind: 'no-scenario-in', text: 'elsewhere' });
    expect(state().plan).toBe(before);
  });

  it('keeps the last plan where planning is cancelled', async () => {
    const { state } = await opened();
    const before = state().plan;
    const running = state().replan();
    expect(state().planning).not.toBeNull();
    state().cancel();
    await running;
    expect(state().plan).toBe(before);
    expect(state().planning).toBeNull();
    expect(state().notice).toEqual({ kind: 'cancelled' });
  });
});

describe('decisions', () => {
  it('are undone and redone, counted against the plan, and kept for the scenario', async () => {
    const { state, kept } = await opened();
    const [one, two] = [away(state().scenario?.vehicles[0]?.id ?? ''), away(state().scenario?.vehicles[0]?.id ?? '')];
    state().decide(one);
    state().decide({ ...two, to: '2026-11-23' } as Decision);
    expect(changedInputs(state())).toBe(2);
    state().undo();
    expect(state().decisions).toEqual([one]);
    state().redo();
    expect(state().decisions).toHaveLength(2);
    state().undo();
    expect(kept.decisionsFor(state().read?.sha256 ?? '')).toEqual([one]);
    state().undo();
    expect(changedInputs(state())).toBe(0);
    expect(state().undone).toHaveLength(2);
    state().decide(one);
    expect(state().undone).toEqual([]);
  });

  it('that move one stop, seed and inoculant, count once and are undone together', async () => {
    const { state } = await opened();
    const [community, other] = state().scenario?.communities ?? [];
    const vehicleId = state().scenario?.vehicles[0]?.id ?? '';
    const lock = (communityId: string | undefined, commodity: 'seed' | 'inoculant'): Decision => ({
      kind: 'lock',
      communityId: communityId ?? '',
      commodity,
      vehicleId,
      date: '2026-11-23',
    });
    state().decide(lock(other?.id, 'seed'));
    state().decide(lock(community?.id, 'seed'), lock(community?.id, 'inoculant'));
    expect(changedInputs(state())).toBe(2);
    state().undo();
    expect(state().decisions).toEqual([lock(other?.id, 'seed')]);
    state().redo();
    expect(state().decisions).toHaveLength(3);
  });

  it('leave needs firm and make what comes after them stale; a replaced reference value makes all stale', async () => {
    const { state } = await opened();
    state().decide(away(state().scenario?.vehicles[0]?.id ?? ''));
    expect(isStale(state(), 'needs.seedKg')).toBe(false);
    expect(isStale(state(), 'outcomes.headline.reachedHa')).toBe(true);
    state().decide({ kind: 'assume', name: 'soybean.seedRateKgPerHa', value: 80 });
    expect(isStale(state(), 'needs.seedKg')).toBe(true);
  });

  it('are planned with when asked', async () => {
    const { state } = await opened();
    const vehicles = state().scenario?.vehicles ?? [];
    state().decide(...vehicles.map(({ id }): Decision => ({ ...away(id), to: '2026-11-25' }) as Decision));
    const before = state().plan;
    await state().replan();
    expect(changedInputs(state())).toBe(0);
    expect(before?.delivery.trips.vehicle.length).toBeGreaterThan(0);
    expect(state().plan?.delivery.trips.vehicle).toEqual([]);
    expect(state().findings).toEqual([]);
  });
});

describe('a broken file', () => {
  it('blocks, is mended by a file of the same name, and then plans', async () => {
    const files = new Map(tinyFiles());
    const communities = files.get('communities.geojson') as Uint8Array;
    files.set('communities.geojson', bytes('{"type": "FeatureCollection", "features": ['));
    const store = createSeasonStore(plannerAtHand(), memory());
    await store.getState().openFiles(whole(files));
    expect(store.getState().read?.scenario).toBeNull();
    expect(store.getState().plan).toBeNull();
    await store.getState().replaceFiles(new Map([['communities.geojson', communities]]));
    expect(store.getState().scenario).not.toBeNull();
    await store.getState().replan();
    expect(store.getState().plan).not.toBeNull();
  });

  it('leaves the plan and its scenario in place while a mended file waits to be planned', async () => {
    const { state } = await opened();
    const [plan, scenario] = [state().plan, state().scenario];
    const lots = state().files.get('lots.csv') as Uint8Array;
    await state().replaceFiles(new Map([['lots.csv', mendTable(lots, [{ row: 2, column: 'packs', value: '7' }])]]));
    expect(state().plan).toBe(plan);
    expect(state().scenario).toBe(scenario);
    expect(changedInputs(state())).toBe(1);
    expect(isStale(state(), 'needs.seedKg')).toBe(true);
    await state().replan();
    expect(state().scenario?.lots.some(({ packs }) => packs === 7)).toBe(true);
    expect(changedInputs(state())).toBe(0);
  });

  it('is not taken where the scenario has no file of that name', async () => {
    const { state } = await opened();
    const before = state().files;
    await state().replaceFiles(new Map([['stranger.csv', bytes('a\n1\n')]]));
    expect(state().files).toBe(before);
    expect(state().notice).toEqual({ kind: 'strangers', text: 'stranger.csv' });
  });
});
