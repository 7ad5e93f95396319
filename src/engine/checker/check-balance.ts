import type { Problem } from '../vocabulary/problems.ts';
import type { Product } from '../vocabulary/supply.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { finding } from './finding.ts';
import { TOLERANCE } from './tolerances.ts';

/** Grants = consignments = loads = stops and unserved: packs in whole numbers, kilograms and litres from the packs. */
export function checkBalance(c: CheckedCase): readonly Problem[] {
  return [...checkConsignments(c), ...checkLoadParts(c), ...checkHandling(c)];
}

/** Kilograms, cool litres and kilograms of inoculant of so many packs. */
export interface Weight {
  kg: number;
  coolLitres: number;
  inoculantKg: number;
  /** False where a label does not state its litres: then only the plan knows. */
  isLitresKnown: boolean;
}

export function weigh(c: CheckedCase, grants: readonly number[], packs: (i: number) => number): Weight {
  const sum: Weight = { kg: 0, coolLitres: 0, inoculantKg: 0, isLitresKnown: true };
  grants.forEach((grant, i) => {
    const product: Product | undefined = lotAndProduct(c, at(c.plan.allocation.grants.lot, grant))?.product;
    if (!product) return;
    const kg = (packs(i) * product.packG) / 1000;
    sum.kg += kg;
    if (product.kind !== 'inoculant') return;
    sum.inoculantKg += kg;
    if (product.litresPerPack === null) sum.isLitresKnown = false;
    else sum.coolLitres += packs(i) * product.litresPerPack;
  });
  return sum;
}

function compareWeight(
  code: 'E8422' | 'E8426',
  table: string,
  row: number,
  told: { readonly kg: number; readonly coolLitres: number; readonly inoculantKg: number },
  due: Weight,
): readonly Problem[] {
  const found: Problem[] = [];
  for (const name of ['kg', 'inoculantKg', 'coolLitres'] as const) {
    if (name === 'coolLitres' && !due.isLitresKnown) continue;
    if (Math.abs(told[name] - due[name]) > TOLERANCE.kilograms * 2 + TOLERANCE.relative * due[name])
      found.push(finding(code, `${table}.${name}`, row, told[name], due[name]));
  }
  return found;
}

function checkConsignments(c: CheckedCase): readonly Problem[] {
  const { grants, consignments } = c.plan.allocation;
  const found: Problem[] = [];
  const sent = new Array<number>(grants.lot.length).fill(0);
  consignments.grants.forEach((rows, row) => {
    const [community, depot, group] = [
      at(consignments.community, row),
      at(consignments.depot, row),
      at(consignments.group, row),
    ];
    for (const grant of rows) {
      sent[grant] = at(sent, grant) + 1;
      if (at(grants.community, grant) !== community)
        found.push(finding('E8422', 'allocation.consignments.community', row, community, at(grants.community, grant)));
      const held = at(c.depotOfLot, at(grants.lot, grant));
      if (held !== depot) found.push(finding('E8422', 'allocation.consignments.depot', row, depot, held));
      const kind = groupOf(lotAndProduct(c, at(grants.lot, grant))?.product);
      if (group !== kind && (group !== 'both' || kind === 'fertiliser'))
        found.push(finding('E8422', 'allocation.consignments.group', row, group, kind));
    }
    if (group === 'both' && c.scenario.policy.carry === 'apart')
      found.push(finding('E8422', 'allocation.consignments.group', row, group, 'carried apart'));
    const place = at(c.plan.places.communityPlace, community);
    if (at(consignments.place, row) !== place)
      found.push(finding('E8422', 'allocation.consignments.place', row, at(consignments.place, row), place));
    const weight = weigh(c, rows, (i) => at(grants.packs, at(rows, i)));
    const told = {
      kg: at(consignments.kg, row),
      coolLitres: at(consignments.coolLitres, row),
      inoculantKg: at(consignments.inoculantKg, row),
    };
    found.push(...compareWeight('E8422', 'allocation.consignments', row, told, weight));
  });
  sent.forEach((times, grant) => {
    if (times !== 1)
      found.push(
        finding('E8421', 'allocation.grants', grant, times * at(grants.packs, grant), at(grants.packs, grant)),
      );
  });
  return found;
}

/** Fertiliser is sent by itself, other goods as the policy says. */
function groupOf(product: Product | undefined): 'dry' | 'inoculant' | 'fertiliser' {
  return product?.kind === 'inoculant' || product?.kind === 'fertiliser' ? product.kind : 'dry';
}

function checkLoadParts(c: CheckedCase): readonly Problem[] {
  const { grants, consignments } = c.plan.allocation;
  const { loads } = c.plan.delivery;
  const found: Problem[] = [];
  const loaded = new Array<number>(grants.lot.length).fill(0);
  loads.grants.forEach((rows, load) => {
    const packs = at(loads.packs, load);
    const consigned = at(consignments.grants, at(loads.consignment, load));
    rows.forEach((grant, i) => {
      loaded[grant] = at(loaded, grant) + at(packs, i);
      if (!consigned.includes(grant))
        found.push(finding('E8426', 'delivery.loads.grants', load, grant, `one of ${consigned.join(', ')}`));
    });
    const told = {
      kg: at(loads.kg, load),
      coolLitres: at(loads.coolLitres, load),
      inoculantKg: at(loads.inoculantKg, load),
    };
    found.push(
      ...compareWeight(
        'E8426',
        'delivery.loads',
        load,
        told,
        weigh(c, rows, (i) => at(packs, i)),
      ),
    );
  });
  loaded.forEach((packs, grant) => {
    if (packs !== at(grants.packs, grant))
      found.push(finding('E8423', 'delivery.loads.packs', grant, packs, at(grants.packs, grant)));
  });
  return found;
}

/** Every load at exactly one stop, at its own place, or once among the unserved. */
function checkHandling(c: CheckedCase): readonly Problem[] {
  const { loads, stops, unserved } = c.plan.delivery;
  const found: Problem[] = [];
  const times = new Array<number>(loads.consignment.length).fill(0);
  stops.loads.forEach((rows, stop) => {
    if (rows.length === 0) found.push(finding('E8424', 'delivery.stops.loads', stop, 0, 'at least 1'));
    for (const load of rows) {
      times[load] = at(times, load) + 1;
      const place = at(c.plan.allocation.consignments.place, at(loads.consignment, load));
      if (at(stops.place, stop) !== place)
        found.push(finding('E8425', 'delivery.stops.place', stop, at(stops.place, stop), place));
    }
  });
  for (const load of unserved.load) times[load] = at(times, load) + 1;
  times.forEach((n, load) => {
    if (n !== 1) found.push(finding('E8424', 'delivery.loads', load, n, 1));
  });
  return found;
}
