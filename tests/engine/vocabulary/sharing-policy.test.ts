import { describe, expect, it } from 'vitest';
import type { Decision } from '../../../src/engine/vocabulary/decisions.ts';
import { sharingPolicy } from '../../../src/engine/vocabulary/decisions.ts';
import type { Policy } from '../../../src/engine/vocabulary/scenario.ts';

const policy = { fairness: 'equal-share', equalOver: 'community', reservePercent: 2, trainingMinutes: 30 } as Policy;

describe('the sharing policy after decisions', () => {
  it('has the last word on each part, and leaves the others', () => {
    const decisions: Decision[] = [
      { kind: 'sharing', fairness: 'most-hectares', reservePercent: 5 },
      { kind: 'sharing', fairness: 'priority-first' },
    ];
    expect(sharingPolicy(policy, decisions)).toEqual({ ...policy, fairness: 'priority-first', reservePercent: 5 });
  });

  it('keeps a reserve of nought as decided', () => {
    expect(sharingPolicy(policy, [{ kind: 'sharing', reservePercent: 0 }]).reservePercent).toBe(0);
  });

  it('is the scenario’s own object where nothing was decided', () => {
    expect(sharingPolicy(policy, [])).toBe(policy);
  });
});
