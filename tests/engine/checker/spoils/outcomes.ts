import { at, change, onFirst, type Spoil, scale, set } from './spoil.ts';

function inflateCentral(
  p: Parameters<Spoil['spoil']>[0],
  name: 'nitrogenKg' | 'programmeNitrogenKg' | 'inoculationAtMostKg' | 'reachedHa',
  factor: number,
  least: number,
): boolean {
  const { central } = p.outcomes.headline;
  const told = central[name] ?? 0;
  return told >= least && change(central, { [name]: told * factor });
}

export const OUTCOMES_SPOILS: readonly Spoil[] = [
  {
    name: 'hectares with seed inflated',
    code: 'E8951',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.seedHa,
        (ha) => ha > 0.1,
        (i) => scale(p.outcomes.crops.seedHa, i, 1.1),
      ),
  },
  {
    name: 'hectares inoculated inflated',
    code: 'E8951',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.inoculatedHa,
        (ha) => ha > 0.1,
        (i) => scale(p.outcomes.crops.inoculatedHa, i, 1.1),
      ),
  },
  {
    name: 'hectares reached inflated',
    code: 'E8951',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.reachedHa,
        (ha) => ha > 0.1,
        (i) => scale(p.outcomes.crops.reachedHa, i, 1.1),
      ),
  },
  {
    name: 'nitrogen inflated',
    code: 'E8952',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.nitrogenKg,
        (kg) => kg > 1,
        (i) => scale(p.outcomes.crops.nitrogenKg, i, 1.02),
      ),
  },
  {
    name: 'nitrogen by the coefficient of another region',
    code: 'E8952',
    // Soybean in Brazil takes 78 % of its nitrogen from the air, elsewhere 61 % (Peoples et al. 2021).
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.nitrogenKg,
        (kg) => kg > 1,
        (i) => scale(p.outcomes.crops.nitrogenKg, i, 78 / 61),
      ),
  },
  {
    name: 'headline nitrogen doubled',
    code: 'E8952',
    spoil: (p) => {
      const { nitrogenKg } = p.outcomes.headline;
      if (nitrogenKg.p50 < 1) return false;
      p.outcomes.headline.nitrogenKg = { ...nitrogenKg, p50: nitrogenKg.p50 * 2, p90: nitrogenKg.p90 * 2 };
      return true;
    },
  },
  {
    name: 'range inverted',
    code: 'E8953',
    spoil: (p) => {
      const { nitrogenKg } = p.outcomes.headline;
      p.outcomes.headline.nitrogenKg = { ...nitrogenKg, p10: nitrogenKg.p90 + 1, p90: nitrogenKg.p10 };
      return true;
    },
  },
  {
    name: 'headline that is not the sum of the zones',
    code: 'E8954',
    spoil: (p) => change(p.outcomes.headline, { plannedHa: p.outcomes.headline.plannedHa + 10 }),
  },
  {
    name: 'packs of a zone inflated',
    code: 'E8954',
    spoil: (p) =>
      onFirst(
        p.outcomes.zones.inoculantPacks,
        () => true,
        (i) => set(p.outcomes.zones.inoculantPacks, i, at(p.outcomes.zones.inoculantPacks, i) + 10),
      ),
  },
  {
    name: 'a community reached too many',
    code: 'E8954',
    spoil: (p) => change(p.outcomes.headline, { communitiesReached: p.outcomes.headline.communitiesReached + 1 }),
  },
  {
    name: 'a quarter of a range above its middle',
    code: 'E8953',
    spoil: (p) => {
      const { netNitrogenKg } = p.outcomes.headline;
      p.outcomes.headline.netNitrogenKg = { ...netNitrogenKg, p25: netNitrogenKg.p50 + 1 };
      return true;
    },
  },
  {
    name: 'central nitrogen inflated by a seventh of a percent: the checker allows a thousandth',
    code: 'E8952',
    spoil: (p) => inflateCentral(p, 'nitrogenKg', 1.0014, 300),
  },
  {
    name: 'central nitrogen owed to the programme inflated by a third of a percent',
    code: 'E8952',
    spoil: (p) => inflateCentral(p, 'programmeNitrogenKg', 1.0033, 50),
  },
  {
    name: 'nitrogen left after harvest told as all that is fixed',
    code: 'E8952',
    spoil: (p) => {
      const { central } = p.outcomes.headline;
      if ((central.nitrogenKg ?? 0) < 1) return false;
      return change(central, { netNitrogenKg: central.nitrogenKg });
    },
  },
  {
    name: 'the bound for land without rhizobia inflated',
    code: 'E8952',
    spoil: (p) => inflateCentral(p, 'inoculationAtMostKg', 1.2, 1),
  },
  {
    name: 'central hectares reached inflated',
    code: 'E8951',
    spoil: (p) => inflateCentral(p, 'reachedHa', 1.2, 1),
  },
  {
    name: 'all nitrogen priced instead of the residual benefit',
    code: 'E8955',
    spoil: (p) => {
      const { residualWorth, nitrogenKg } = p.outcomes.headline;
      if (!residualWorth) return false;
      p.outcomes.headline.residualWorth = { least: residualWorth.least, most: nitrogenKg.p50 * 10 };
      return true;
    },
  },
  {
    name: 'a part of the cost left out',
    code: 'E8955',
    spoil: (p) => {
      const { cost } = p.outcomes.headline;
      return (cost.vehicleDays ?? 0) > 10 && change(cost, { vehicleDays: 0 });
    },
  },
  {
    name: 'training priced that nobody gave a price for',
    code: 'E8955',
    spoil: (p) => p.outcomes.headline.cost.training === null && change(p.outcomes.headline.cost, { training: 500 }),
  },
  {
    name: 'a chance above one',
    code: 'E8953',
    spoil: (p) =>
      onFirst(
        p.outcomes.zones.inTimeChance,
        () => true,
        (i) => set(p.outcomes.zones.inTimeChance, i, 1.4),
      ),
  },
  {
    name: 'cost understated',
    code: 'E8955',
    spoil: (p) => {
      const { deliveryCost } = p.outcomes.headline;
      if (deliveryCost === null || deliveryCost < 10) return false;
      p.outcomes.headline.deliveryCost = deliveryCost / 2;
      p.delivery.cost = deliveryCost / 2;
      return true;
    },
  },
  {
    name: 'rhizobia per seed inflated',
    code: 'E8956',
    spoil: (p) =>
      onFirst(
        p.outcomes.crops.log10PerSeed,
        (log) => log !== null,
        (i) => set(p.outcomes.crops.log10PerSeed, i, (at(p.outcomes.crops.log10PerSeed, i) ?? 0) + 0.3),
      ),
  },
];
