import { expect, it } from 'vitest';
import { dayNumber, type Handover } from '../../../src/engine/index.ts';
import { soFarByCommunity } from '../../../src/presentation/views/coverage-so-far.ts';
import { signedForSymbols } from '../../../src/presentation/views/signed-for-symbols.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario: sent } = stockCase('demo-district');
const [first, second] = sent.communities;
const record = (change: Partial<Handover>): Handover => ({
  date: dayNumber(sent.planning.from),
  communityId: first?.id ?? '',
  lotId: 'SB-0702',
  packs: 10,
  kg: null,
  boxC: null,
  returnedPacks: 0,
  sownOn: null,
  growers: null,
  growersWomen: null,
  vehicleId: null,
  reason: null,
  ...change,
});
const scenario = {
  ...sent,
  handovers: [
    record({ growers: 20, growersWomen: 11 }),
    record({ packs: 6, returnedPacks: 2, date: dayNumber(sent.planning.from + 2), growers: 14 }),
    record({ lotId: 'S-SOY-5-C', packs: 30, sownOn: dayNumber(sent.planning.from + 4) }),
    record({ communityId: second?.id ?? '', packs: 5, returnedPacks: 5 }),
  ],
};

it('adds up the records of each community: packs and bags less what came back, the best attended day, the sowing', () => {
  const told = soFarByCommunity(plan, scenario, null);
  expect(told).toHaveLength(2);
  expect(told.find(({ communityId }) => communityId === first?.id)).toMatchObject({
    inoculantPacks: 14,
    seedBags: 30,
    returned: 2,
    growers: 20,
    growersWomen: 11,
    first: '2026-11-16',
    last: '2026-11-18',
    sownOn: '2026-11-20',
  });
  expect(told.find(({ communityId }) => communityId === second?.id)).toMatchObject({ inoculantPacks: 0, returned: 5 });
});

it('tells of one zone where one is chosen, and marks on the map whoever has kept something', () => {
  const zone = soFarByCommunity(plan, scenario, null)[0]?.zoneId ?? '';
  expect(soFarByCommunity(plan, scenario, zone).every(({ zoneId }) => zoneId === zone)).toBe(true);
  expect(signedForSymbols(plan, scenario)).toHaveLength(1);
});
