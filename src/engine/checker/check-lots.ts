import type { Problem } from '../vocabulary/problems.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { finding } from './finding.ts';
import { packsGone } from './own-handed.ts';
import type { OwnAir } from './own-heat.ts';
import { countOnFirstDay } from './own-pack-life.ts';
import { ownHold, reasonsAgainst } from './own-stock.ts';
import { LOT_REASON_LEAST_CHANCE, TOLERANCE } from './tolerances.ts';

/** Verdicts on lots, the reserve, packs held, and labels against crops. */
export function checkLots(c: CheckedCase, air: OwnAir): readonly Problem[] {
  const { grants, lots } = c.plan.allocation;
  const found: Problem[] = [];
  const given = new Array<number>(c.scenario.lots.length).fill(0);
  grants.lot.forEach((lot, grant) => {
    given[lot] = at(given, lot) + at(grants.packs, grant);
    const product = lotAndProduct(c, lot)?.product;
    const crop = at(c.scenario.crops, at(grants.crop, grant));
    if (!product?.crops.includes(crop))
      found.push(finding('E8403', 'allocation.grants.lot', grant, product?.id ?? 'an unknown product', crop));
    const kg = product ? (at(grants.packs, grant) * product.packG) / 1000 : 0;
    if (Math.abs(at(grants.kg, grant) - kg) > TOLERANCE.kilograms + TOLERANCE.relative * kg)
      found.push(finding('E8406', 'allocation.grants.kg', grant, at(grants.kg, grant), kg));
    if (at(grants.packs, grant) === 0) found.push(finding('E8401', 'allocation.grants.packs', grant, 0, 'at least 1'));
  });
  c.scenario.lots.forEach((lot, l) => {
    const count = countOnFirstDay(c, air, l);
    const { reasons, chance } = reasonsAgainst(c, l, count);
    const toldCount = at(lots.countPerG, l) ?? Number.NaN;
    if (
      Number.isNaN(count) !== Number.isNaN(toldCount) ||
      Math.abs(toldCount - count) > 1 + TOLERANCE.countRelative * count
    )
      found.push(finding('E8405', 'allocation.lots.countPerG', l, toldCount, count));
    const told = at(lots.reasons, l);
    const [reserved, offered] = [at(lots.packsReserved, l), at(lots.packsOffered, l)];
    // A chance or a count that rounding moves over its limit may be told either way.
    const least = lotAndProduct(c, l)?.product.minCountPerG ?? 0;
    const isClose =
      Math.abs(chance - LOT_REASON_LEAST_CHANCE) < TOLERANCE.share ||
      Math.abs(count - least) < TOLERANCE.countRelative * least;
    const differs = reasons.length !== told.length || reasons.some((reason) => !told.includes(reason));
    if (differs && !isClose)
      found.push(
        finding(
          'E8405',
          'allocation.lots.reasons',
          l,
          told.join(' ') || 'may be given',
          reasons.join(' ') || 'may be given',
        ),
      );
    const isGivable = reasons.length === 0;
    const present = lot.packs - packsGone(c, l);
    const onHold = Math.min(present, ownHold(c, l).packs);
    const there = present - onHold;
    const held = reasons.includes('on-hold') ? present : isGivable ? onHold : 0;
    if (at(lots.packsHeld, l) !== held && !isClose)
      found.push(finding('E8405', 'allocation.lots.packsHeld', l, at(lots.packsHeld, l), held));
    const buffer = Math.floor((lot.packs * c.scenario.policy.reservePercent) / 100 + 1e-9);
    const reserve = isGivable ? Math.min(there, buffer) : 0;
    if (isGivable && reserved < reserve)
      found.push(finding('E8404', 'allocation.lots.packsReserved', l, reserved, reserve));
    if (isGivable && (offered + reserved !== there || reserved > reserve + 1))
      found.push(finding('E8405', 'allocation.lots.packsOffered', l, offered, there - reserve));
    if (!isGivable && offered + reserved > 0 && !isClose)
      found.push(finding('E8405', 'allocation.lots.packsOffered', l, offered, 0));
    if (!isGivable && given[l] !== 0 && !isClose)
      found.push(finding('E8402', 'allocation.grants.lot', l, `${lot.id} (${reasons.join(' ')})`));
    if (at(given, l) > offered || at(given, l) > there - reserve)
      found.push(finding('E8401', 'allocation.grants.packs', l, at(given, l), Math.min(offered, there - reserve)));
  });
  return found;
}
