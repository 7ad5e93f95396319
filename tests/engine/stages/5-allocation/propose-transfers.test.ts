import { expect, it } from 'vitest';
import { loadHighsSolver } from '../../../../src/adapters/solver/load-highs-solver.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { proposeTransfers } from '../../../../src/engine/stages/5-allocation/propose-transfers.ts';
import { type DistrictSpec, decisions, lot, seedPack, smallDistrict } from './small-district.ts';

const solver = await loadHighsSolver();
const BAG = seedPack('soybean', 5);

const ask = (spec: DistrictSpec) => {
  const district = smallDistrict(spec);
  const { scenario, places, season, needs } = district;
  const before = allocateStock(scenario, decisions(), places, season, needs, solver, null).result;
  return proposeTransfers({ ...district, decisions: decisions(), solver }, before);
};

const spec: DistrictSpec = {
  crops: ['soybean'],
  // The first depot reaches the first community alone, and holds 100 kg for its 40; the second community lacks all its 50 kg.
  communities: [
    { ha: { soybean: 4 }, minutes: [30, null] },
    { ha: { soybean: 5 }, minutes: [null, 30] },
  ],
  products: [BAG],
  lots: [lot(BAG, 20)],
  depots: [{}, {}],
};

it('60 kg lie idle while 50 are short elsewhere: ten bags carried over serve five hectares', () => {
  expect(ask(spec)).toMatchObject([{ lot: 0, depot: 1, packs: 10, hectares: 5, worth: null }]);
});

it('nothing is carried where nothing lies idle, or nobody lacks it', () => {
  expect(ask({ ...spec, lots: [lot(BAG, 8)] })).toEqual([]);
  expect(ask({ ...spec, lots: [lot(BAG, 20), lot(BAG, 10, { depotId: 'DEPOT-1' })] })).toEqual([]);
});
