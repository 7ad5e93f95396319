import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { problem } from '../../src/engine/index.ts';
import { allocationCsv } from '../../src/presentation/exports/allocation-csv.ts';
import { deliveriesCsv } from '../../src/presentation/exports/deliveries-csv.ts';
import { needsCsv } from '../../src/presentation/exports/needs-csv.ts';
import { problemsCsv } from '../../src/presentation/exports/problems-csv.ts';
import { zonesCsv } from '../../src/presentation/exports/zones-csv.ts';
import { headlineTable } from '../../src/presentation/headline-table.ts';
import { problemLines } from '../../src/presentation/problem-lines.ts';
import { recordSmallPlan } from '../engine/record/record-small-plan.ts';

const plan = recordSmallPlan();
const rowsOf = (csv: string) => Papa.parse<Record<string, string>>(csv.trimEnd(), { header: true }).data;
const headerOf = (csv: string) => csv.split('\r\n')[0];

describe('tables of a plan', () => {
  it('writes needs, one row per zone, community and crop', () => {
    const csv = needsCsv(plan);
    expect(headerOf(csv)).toBe(
      'zone_id,community_id,crop,planned_ha,seed_kg,own_seed_kg,inoculant_g,product_id,packs_needed,sticker_packs,water_l,fertiliser_kg',
    );
    expect(csv.split('\r\n')[1]).toBe('Z1,C1,soybean,10,600,120,3000,P-INO,30,0,9,0');
  });

  it('leaves the zone blank outside all zones', () => {
    const outside = { ...plan, needs: { ...plan.needs, zone: [-1] } };
    expect(rowsOf(needsCsv(outside))[0]?.['zone_id']).toBe('');
  });

  it('writes the allocation with the share met by each kind of goods', () => {
    const csv = allocationCsv(plan, ['seed', 'inoculant']);
    expect(csv).toBe(
      'community_id,crop,lot_id,packs,kg,share_met\r\nC1,soybean,L-SEED,18,360,0.8\r\nC1,soybean,L-INO,12,1.2,0.4\r\n',
    );
  });

  it('writes deliveries, one row per stop, load and lot', () => {
    const csv = deliveriesCsv(plan);
    expect(headerOf(csv)).toBe(
      'date,vehicle_id,trip,stop,community_id,consignment_id,lot_id,packs,arrive,depart,load_kg,box_max_c,log10_loss,leave,leave_by',
    );
    expect(csv.split('\r\n').slice(1, -1)).toEqual([
      '2026-11-05,V1,1,1,C1,C1/dry/D1,L-SEED,18,07:10,07:45,361.2,12,0.02,06:40,06:40',
      '2026-11-05,V1,1,1,C1,C1/inoculant/D1,L-INO,12,07:10,07:45,361.2,12,0.02,06:40,06:40',
    ]);
  });

  it('adds up packs of one lot for two crops in a load', () => {
    const { grants } = plan.allocation;
    const twice = {
      ...plan,
      allocation: { ...plan.allocation, grants: { ...grants, lot: [0, 0] } },
      delivery: { ...plan.delivery, loads: { ...plan.delivery.loads, grants: [[0, 1], [1]], packs: [[18, 2], [0]] } },
    };
    expect(rowsOf(deliveriesCsv(twice))[0]).toMatchObject({ lot_id: 'L-SEED', packs: '20' });
  });

  it('writes zones with what reaches them', () => {
    const csv = zonesCsv(plan);
    expect(headerOf(csv)).toBe(
      'zone_id,communities,farmers,planned_ha,seed_kg,inoculant_packs,share_met,hectares_reached,nitrogen_kg_p10,nitrogen_kg_p50,nitrogen_kg_p90',
    );
    // 360 kg and 12 packs were handed over; 4 of 10 ha have seed and inoculant; 2 are reached (one season of two).
    expect(rowsOf(csv)[0]).toMatchObject({
      zone_id: 'Z1',
      communities: '1',
      farmers: '40',
      planned_ha: '10',
      seed_kg: '360',
      inoculant_packs: '12',
      share_met: '0.4',
      hectares_reached: '2',
    });
    expect(rowsOf(csv)).toHaveLength(1);
  });

  it('writes problems with their words and remedy', () => {
    const row = rowsOf(problemsCsv([problem('E7002', { facts: { crop: 'pigeonpea' } })]))[0];
    expect(row).toMatchObject({ weight: 'noted', code: 'E7002' });
    expect(row?.['what']).toContain('pigeonpea');
    expect(row?.['remedy']).not.toBe('');
  });
});

describe('what stands on the screen', () => {
  it('gives the headline with hectares and ranges', () => {
    const table = headlineTable(plan);
    expect(table).toContain('Small plan, 2026-11-02 to 2026-11-21');
    expect(table).toMatch(/planned, hectares +10\.0$/m);
    expect(table).toMatch(/with seed, own or handed over, hectares +8\.0$/m);
    expect(table).toMatch(/goods handed over +7 920 ZMW$/m);
  });

  it('says why it is no more', () => {
    const table = headlineTable(plan);
    expect(table).toContain('2.0 hectares without seed: not enough stock');
    expect(table).toContain('4.0 hectares not inoculated: not enough stock');
    const unserved = recordSmallPlan({ inoculantServed: false });
    expect(headlineTable(unserved)).toContain('4.0 hectares whose goods stay at the depot: no vehicle that reaches');
    const lots = { ...plan.allocation.lots, reasons: [['expired' as const], []] };
    const held = { ...plan, allocation: { ...plan.allocation, lots } };
    expect(headlineTable(held)).toContain('L-SEED is not given: past its expiry date');
  });

  it('says where a price is missing', () => {
    const { headline } = plan.outcomes;
    const unpriced = { ...plan, outcomes: { ...plan.outcomes, headline: { ...headline, goodsCost: null } } };
    expect(headlineTable(unpriced)).toMatch(/goods handed over +not stated/);
  });

  it('counts the problems that it does not list', () => {
    const crops = ['soybean', 'cowpea', 'lentil'].map((crop) => problem('E7002', { facts: { crop } }));
    expect(problemLines(crops, 2).split('\n')).toHaveLength(3);
    expect(problemLines(crops, 2)).toContain('noted E7002: and 1 more like it');
  });
});
