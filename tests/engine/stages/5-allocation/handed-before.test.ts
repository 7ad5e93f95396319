import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import { checkPlan, type Decision, dayNumber, type Handover } from '../../../../src/engine/index.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { planFiles, readFolderFiles } from '../../../plan-files.ts';
import { decisions, FROM, lot, sachet, seedPack, smallDistrict } from './small-district.ts';

const solver = await loadHighsSolver();
const BAG = seedPack('soybean', 2);
const SACHET = sachet(['soybean']);

const handover = (community: number, lotId: string, packs: number, returnedPacks = 0): Handover => ({
  date: dayNumber(FROM - 5),
  communityId: `COM-${community}`,
  lotId,
  packs,
  kg: null,
  boxC: null,
  returnedPacks,
  sownOn: null,
  growers: null,
  growersWomen: null,
  vehicleId: null,
  reason: null,
});

describe('past hand-overs', () => {
  const district = smallDistrict({
    crops: ['soybean'],
    communities: [{ ha: { soybean: 10 } }, { ha: { soybean: 10 } }],
    products: [BAG, SACHET],
    lots: [lot(BAG, 50, { id: 'SEED' }), lot(SACHET, 10, { id: 'INO' })],
  });
  const allocate = (...handovers: Handover[]) => decide([], ...handovers);
  const decide = (made: readonly Decision[], ...handovers: Handover[]) =>
    allocateStock(
      { ...district.scenario, handovers },
      decisions(...made),
      district.places,
      district.season,
      district.needs,
      solver,
      null,
    ).result;

  it('stock falls by what went and rises by what came back: 50 bags, 12 out, 2 back, 40 to give', () => {
    const { lots } = allocate(handover(0, 'SEED', 12, 2));
    expect(lots[0]?.packsOffered).toBe(40);
  });

  it('who has some already is given less, to the same share: 20 kg there, 100 kg for two needs of 100: 30 and 50', () => {
    const { shares, shortfalls } = allocate(handover(0, 'SEED', 10));
    // 40 bags are left, 80 kg: with the 20 kg there, 50 each.
    expect(Array.from(shares.seedGivenKg)).toEqual([30, 50]);
    expect(shortfalls.find(({ reason }) => reason === 'handed-over-before')).toMatchObject({
      shareRow: 0,
      shortKg: 20,
    });
    // Inoculant for all seed there: 50 kg each.
    expect(Array.from(shares.inoculantNeedSeedKg)).toEqual([50, 50]);
  });

  it('who is given no more because of a decision is short by decision, and is not said to lack stock', () => {
    const sown = { kind: 'forbid', communityId: 'COM-0', crop: 'soybean', commodity: 'seed' } as const;
    const { shares, shortfalls } = decide([{ ...sown, because: 'already sown' }], handover(0, 'SEED', 10));
    expect(shares.seedGivenKg[0]).toBe(0);
    const own = shortfalls.filter(({ shareRow, commodity }) => shareRow === 0 && commodity === 'seed');
    expect(own.map(({ reason, shortKg }) => [reason, shortKg])).toEqual([
      ['handed-over-before', 20],
      ['decision', 80],
    ]);
  });

  it('never more than the lot held, nor than the need', () => {
    const { lots, shares, shortfalls } = allocate(handover(0, 'SEED', 500));
    expect(lots[0]?.packsOffered).toBe(0);
    expect(shares.seedGivenKg[1]).toBe(0);
    expect(shortfalls.find(({ reason }) => reason === 'handed-over-before')?.shortKg).toBe(100);
  });
});

describe('past hand-overs in files', () => {
  it('a demo plan with them holds before the checker', () => {
    const files = readFolderFiles(fileURLToPath(new URL('../../../../scenarios/demo-district/', import.meta.url)));
    const text = new TextDecoder();
    const bytes = new TextEncoder();
    const document = JSON.parse(text.decode(files.get('scenario.json')));
    files.set(
      'scenario.json',
      bytes.encode(JSON.stringify({ ...document, files: { ...document.files, handovers: 'handovers.csv' } })),
    );
    const communities = JSON.parse(text.decode(files.get('communities.geojson'))).features.map(
      (feature: { properties: { community_id: string } }) => feature.properties.community_id,
    );
    const rows = communities
      .slice(0, 12)
      .flatMap((id: string, i: number) => [
        `2026-11-10,${id},S-SOY-5-C,${6 + i},${i % 3}`,
        `2026-11-10,${id},SB-0702,${2 + i},0`,
      ]);
    files.set('handovers.csv', bytes.encode(`date,community_id,lot_id,packs,returned_packs\n${rows.join('\n')}\n`));
    const { scenario, decisions: edits, plan } = planFiles(files, 200);
    expect(scenario.handovers.length).toBe(24);
    expect(plan.allocation.shortfalls.reason).toContain('handed-over-before');
    expect(checkPlan(scenario, edits, plan)).toEqual([]);
  });
});
