import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan, Scenario } from '../../../src/engine/index.ts';
import { growerBatchKg } from '../../../src/presentation/papers/batch-sizes.ts';
import { type HandoverGoods, handoverGoods } from '../../../src/presentation/papers/handover-goods.ts';
import { projectRoot } from '../../architecture/source-files.ts';
import { planFiles, readFolderFiles } from '../../plan-files.ts';

let plan: Plan;
let scenario: Scenario;
let all: HandoverGoods[];

beforeAll(() => {
  ({ plan, scenario } = planFiles(readFolderFiles(join(projectRoot, 'scenarios', 'demo-district')), 300));
  all = scenario.communities.flatMap(({ id }) => handoverGoods(plan, scenario, id) ?? []);
});

const total = (goods: readonly { readonly packs: number }[]) => goods.reduce((sum, { packs }) => sum + packs, 0);

describe('handovers of all communities', () => {
  it('hold every pack that is given out, once', () => {
    const handed = all.flatMap(({ crops }) => crops.flatMap(({ seed, inoculant }) => [...seed, ...inoculant]));
    expect(total(handed)).toBe(plan.allocation.grants.packs.reduce((sum, packs) => sum + packs, 0));
  });

  it('name, visit by visit, every pack that a vehicle carries', () => {
    const carried = all.flatMap(({ visits }) => visits.flatMap(({ goods }) => goods));
    const loads = plan.delivery.stops.loads.flat();
    const packs = loads.flatMap((load) => plan.delivery.loads.packs[load] ?? []);
    expect(total(carried)).toBe(packs.reduce((sum, count) => sum + count, 0));
  });

  it('name no lot that is held or past its day at the handover', () => {
    for (const { visits } of all) {
      for (const { date, goods } of visits) {
        for (const { lotId, expires } of goods) {
          expect(scenario.lots.find(({ id }) => id === lotId)?.status).toBe('cleared');
          expect(expires >= date).toBe(true);
        }
      }
    }
  });

  it('have growers coat together what the packs coat, and no more', () => {
    for (const { crops } of all) {
      for (const crop of crops.filter(({ rates }) => rates !== null)) {
        const growers = crop.sharing.reduce((sum, share) => sum + (share.growers ?? 0), 0);
        if (growers === 0 || crop.coatedKg / growers < 0.5) continue;
        expect(growerBatchKg(crop) * growers).toBeLessThanOrEqual(crop.coatedKg + 1e-6);
      }
    }
  });

  it('are none where nobody knows the community', () => {
    expect(handoverGoods(plan, scenario, 'nowhere')).toBeNull();
    expect(handoverGoods(plan, scenario, null)).toBeNull();
  });
});
