import { at, change, kindOf, onFirst, type PlanDraft, type Spoil, set, where } from './spoil.ts';

const scarceProof = (p: PlanDraft) => where(p.allocation.proofs, ({ leastShare }) => leastShare < 0.99);

/** Spoils the first proof of a shortage. */
const onProof = (p: PlanDraft, spoil: (proof: PlanDraft['allocation']['proofs'][number]) => unknown): boolean => {
  const i = scarceProof(p);
  if (i < 0) return false;
  spoil(at(p.allocation.proofs, i));
  return true;
};

export const FAIRNESS_SPOILS: readonly Spoil[] = [
  {
    name: 'a proof left out',
    code: 'E8501',
    spoil: (p) => scarceProof(p) >= 0 && p.allocation.proofs.splice(scarceProof(p), 1).length > 0,
  },
  {
    name: 'a proof about less stock',
    code: 'E8501',
    spoil: (p) => onProof(p, (proof) => change(proof, { offeredKg: proof.offeredKg.map((kg) => kg / 2) })),
  },
  {
    name: 'a proof about less need',
    code: 'E8501',
    spoil: (p) => onProof(p, (proof) => change(proof, { needKg: proof.needKg.map((kg) => kg / 2) })),
  },
  {
    name: 'rounding said to be large',
    code: 'E8501',
    spoil: (p) => onProof(p, (proof) => change(proof, { roundingKg: 1e6 })),
  },
  {
    name: 'prices too small',
    code: 'E8502',
    spoil: (p) =>
      onProof(p, (proof) => change(proof, { communityPrices: proof.communityPrices.map((price) => price / 2) })),
  },
  {
    name: 'lots too cheap',
    code: 'E8502',
    spoil: (p) => onProof(p, (proof) => change(proof, { lotPrices: proof.lotPrices.map((price) => price / 2) })),
  },
  {
    name: 'a bound that the prices do not give',
    code: 'E8503',
    spoil: (p) => onProof(p, (proof) => change(proof, { bound: proof.bound + 0.05 })),
  },
  {
    name: 'a least share below the bound',
    code: 'E8503',
    spoil: (p) => onProof(p, (proof) => change(proof, { leastShare: proof.leastShare - 0.05 })),
  },
  {
    name: 'one community starved',
    code: 'E8504',
    spoil: (p, s) => {
      const { grants } = p.allocation;
      return onFirst(
        grants.lot,
        (lot, i) => kindOf(s, lot) === 'seed' && at(grants.packs, i) > 4,
        (i) => set(grants.packs, i, 1),
      );
    },
  },
];
