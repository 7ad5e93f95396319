import { isoDate } from '../../../../src/engine/index.ts';
import { at, change, decide, kindOf, later, onFirst, type PlanDraft, type Spoil, scale, set, where } from './spoil.ts';

/** Spoils of what the checker says of fertiliser; tried on a plan that gives some, not enough for all. */
const isBags = (p: PlanDraft, s: Parameters<Spoil['spoil']>[1]) => (grant: number) =>
  kindOf(s, at(p.allocation.grants.lot, grant)) === 'fertiliser';

const bagLoad = (p: PlanDraft) => (load: number) =>
  at(p.allocation.consignments.group, at(p.delivery.loads.consignment, load)) === 'fertiliser';

/** Rows of the grants that hold bags. */
const bagGrants = (p: PlanDraft, s: Parameters<Spoil['spoil']>[1]): number[] =>
  p.allocation.grants.lot.flatMap((_, grant) => (isBags(p, s)(grant) ? [grant] : []));

export const FERTILISER_SPOILS: readonly Spoil[] = [
  {
    name: 'fertiliser for more land than has seed',
    code: 'E8409',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.packs,
        (_, i) => isBags(p, s)(i),
        (i) => scale(p.allocation.grants.packs, i, 10),
      ),
  },
  {
    name: 'fertiliser given again to who has it already',
    code: 'E8409',
    spoil: (p, s) => {
      // Vethuka plans soybean alone, so that bags handed over there stand nowhere else.
      const grant = bagGrants(p, s).find(
        (i) => at(s.communities, at(p.allocation.grants.community, i)).id === 'VETHUKA',
      );
      if (grant === undefined) return false;
      const handover = {
        date: s.asOf,
        communityId: 'VETHUKA',
        lotId: at(s.lots, at(p.allocation.grants.lot, grant)).id,
        packs: 32,
        kg: null,
        boxC: null,
        returnedPacks: 0,
        growers: null,
        growersWomen: null,
        vehicleId: null,
        reason: null,
        sownOn: null,
      };
      change(p.handovers, {
        date: [isoDate(handover.date)],
        community: [at(p.allocation.grants.community, grant)],
        lot: [at(p.allocation.grants.lot, grant)],
        packs: [handover.packs],
        returnedPacks: [handover.returnedPacks],
        sownOn: [null],
      });
      return { scenario: { ...s, handovers: [handover] } as typeof s };
    },
  },
  {
    name: 'bags said to serve twice the land',
    code: 'E8407',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.servesSeedKg,
        (_, i) => isBags(p, s)(i),
        (i) => scale(p.allocation.grants.servesSeedKg, i, 2),
      ),
  },
  {
    name: 'fertiliser where nothing else goes',
    code: 'E8418',
    spoil: (p, s) => {
      const { community } = p.allocation.grants;
      const [first] = bagGrants(p, s);
      if (first === undefined) return false;
      const own = at(community, first);
      const other = community.find((c) => c !== own) ?? own;
      community.forEach((c, i) => {
        if (c === own && !isBags(p, s)(i)) set(community, i, other);
      });
      return true;
    },
  },
  {
    name: 'bags left lying where land with seed lacks them',
    code: 'E8411',
    spoil: (p, s) =>
      onFirst(
        p.allocation.grants.packs,
        (packs, i) => isBags(p, s)(i) && packs > 3,
        (i) => set(p.allocation.grants.packs, i, 1),
      ),
  },
  {
    name: 'the bags of one given to another',
    code: 'E8504',
    spoil: (p, s) => {
      const { packs, lot } = p.allocation.grants;
      const [one, other] = bagGrants(p, s).filter((i) => at(packs, i) > 8);
      if (one === undefined || other === undefined) return false;
      set(packs, other, at(packs, other) + at(packs, one) - 1);
      set(packs, one, 1);
      set(lot, other, at(lot, one));
      return true;
    },
  },
  {
    name: 'bags of a lot that a decision keeps from a community',
    code: 'E8410',
    spoil: (p, s, d) => {
      const [grant] = bagGrants(p, s);
      if (grant === undefined) return false;
      const communityId = at(s.communities, at(p.allocation.grants.community, grant)).id;
      const crop = at(s.crops, at(p.allocation.grants.crop, grant));
      const lotId = at(s.lots, at(p.allocation.grants.lot, grant)).id;
      return { decisions: decide(d, { kind: 'forbid', communityId, crop, commodity: 'seed', lotId }) };
    },
  },
  {
    name: 'fertiliser sent as part of the seed',
    code: 'E8422',
    spoil: (p) =>
      onFirst(
        p.allocation.consignments.group,
        (group) => group === 'fertiliser',
        (i) => set(p.allocation.consignments.group, i, 'dry'),
      ),
  },
  {
    name: 'fertiliser after the land is sown',
    code: 'E8710',
    spoil: (p) => {
      const { trips, stops } = p.delivery;
      const trip = where(trips.date, (_, i) => {
        const loads = stops.trip.flatMap((of, stop) => (of === i ? at(stops.loads, stop) : []));
        return loads.length > 0 && loads.every(bagLoad(p));
      });
      if (trip < 0) return false;
      set(trips.date, trip, later(at(trips.date, trip), 2));
      return true;
    },
  },
  {
    name: 'fertiliser without any seed',
    code: 'E8710',
    spoil: (p, s) => {
      const { loads, stops } = p.delivery;
      const { community, group } = p.allocation.consignments;
      const communityOf = (load: number) => at(community, at(loads.consignment, load));
      const hasOwn = (load: number) =>
        at(s.communities, communityOf(load)).crops.some(({ ownSeedKg }) => ownSeedKg > 0);
      const bags = stops.loads.flat().find((load) => bagLoad(p)(load) && !hasOwn(load));
      if (bags === undefined) return false;
      stops.loads.forEach((rows, stop) => {
        const isSeed = (load: number) => at(group, at(loads.consignment, load)) === 'dry';
        set(
          stops.loads,
          stop,
          rows.filter((load) => communityOf(load) !== communityOf(bags) || !isSeed(load)),
        );
      });
      return true;
    },
  },
  {
    name: 'hectares with fertiliser inflated',
    code: 'E8951',
    spoil: (p) => change(p.outcomes.headline, { fertilisedHa: p.outcomes.headline.fertilisedHa + 1 }),
  },
  {
    name: 'grain by phosphorus inflated',
    code: 'E8952',
    spoil: (p) => {
      const { central } = p.outcomes.headline;
      return change(central, { phosphorusGrainT: (central.phosphorusGrainT ?? 0) * 1.1 });
    },
  },
  {
    name: 'nitrogen by phosphorus inflated',
    code: 'E8952',
    spoil: (p) => {
      const { central } = p.outcomes.headline;
      return change(central, { phosphorusNitrogenKg: (central.phosphorusNitrogenKg ?? 0) * 1.1 });
    },
  },
  {
    name: 'range of grain by phosphorus inverted',
    code: 'E8953',
    spoil: (p) => {
      const { phosphorusGrainT } = p.outcomes.headline;
      return change(phosphorusGrainT, { p10: phosphorusGrainT.p90 + 1 });
    },
  },
  {
    name: 'ten times the fertiliser ordered that is short',
    code: 'E8417',
    spoil: (p, s) =>
      onFirst(
        p.allocation.orders.packsWanted,
        (packs, i) => packs > 0 && at(s.products, at(p.allocation.orders.product, i)).kind === 'fertiliser',
        (i) => scale(p.allocation.orders.packsWanted, i, 10),
      ),
  },
  {
    name: 'an order of fertiliser for more land than its bags serve',
    code: 'E8417',
    spoil: (p, s) =>
      onFirst(
        p.allocation.orders.hectaresWanted,
        (_, i) => at(s.products, at(p.allocation.orders.product, i)).kind === 'fertiliser',
        (i) => scale(p.allocation.orders.hectaresWanted, i, 3),
      ),
  },
];
