import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan, Scenario } from '../../../src/engine/index.ts';
import { growerBatchKg } from '../../../src/presentation/papers/batch-sizes.ts';
import { type CommunityTask, communityTask } from '../../../src/presentation/papers/community-task.ts';
import { paperCase } from '../../../src/presentation/papers/paper-case.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { projectRoot } from '../../architecture/source-files.ts';
import { planFiles, readFolderFiles } from '../../plan-files.ts';

let plan: Plan;
let scenario: Scenario;
let all: CommunityTask[];
let taskOf: (communityId: string | null) => CommunityTask | null;

beforeAll(() => {
  ({ plan, scenario } = planFiles(readFolderFiles(join(projectRoot, 'scenarios', 'demo-district')), 300));
  const c = paperCase(plan, scenario, [], english);
  taskOf = (communityId) => communityTask(c, communityId);
  all = scenario.communities.flatMap(({ id }) => taskOf(id) ?? []);
});

const total = (goods: readonly { readonly packs: number }[]) => goods.reduce((sum, { packs }) => sum + packs, 0);

describe('handovers of all communities', () => {
  it('hold every pack that is given out, once', () => {
    const handed = all.flatMap(({ about }) => about.crops.flatMap(({ seed, inoculant }) => [...seed, ...inoculant]));
    expect(total(handed)).toBe(plan.allocation.grants.packs.reduce((sum, packs) => sum + packs, 0));
  });

  it('name, arrival by arrival, every pack that a vehicle carries', () => {
    const carried = all.flatMap(({ arrivals }) => arrivals.flatMap(({ goods }) => goods));
    const loads = plan.delivery.stops.loads.flat();
    const packs = loads.flatMap((load) => plan.delivery.loads.packs[load] ?? []);
    expect(total(carried)).toBe(packs.reduce((sum, count) => sum + count, 0));
  });

  it('name no lot that is held or past its day at the handover', () => {
    for (const { arrivals } of all) {
      for (const { date, goods } of arrivals) {
        for (const { lot, expires, withheld } of goods) {
          expect(lot.status).toBe('cleared');
          expect(expires >= date).toBe(true);
          expect(withheld).toBeNull();
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
    expect(taskOf('nowhere')).toBeNull();
    expect(taskOf(null)).toBeNull();
  });
});
