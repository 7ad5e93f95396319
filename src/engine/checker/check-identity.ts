import { isoDate } from '../vocabulary/calendar.ts';
import type { Decisions } from '../vocabulary/decisions.ts';
import type { Plan } from '../vocabulary/plan.ts';
import type { Problem } from '../vocabulary/problems.ts';
import type { Handover, Scenario } from '../vocabulary/scenario.ts';
import { finding } from './finding.ts';

/** Is this the plan of this scenario and of these decisions? Indexes mean nothing otherwise. */
export function checkIdentity(scenario: Scenario, decisions: Decisions, plan: Plan): readonly Problem[] {
  const found: Problem[] = [];
  if (plan.scenarioSha256 !== scenario.sha256)
    found.push(finding('E8011', 'scenarioSha256', null, plan.scenarioSha256, scenario.sha256));
  if (plan.decisionsSha256 !== decisions.sha256)
    found.push(finding('E8012', 'decisionsSha256', null, plan.decisionsSha256, decisions.sha256));
  const idsOf = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id);
  const lists: Readonly<Record<string, readonly [readonly string[], readonly string[]]>> = {
    crops: [plan.ids.crops, scenario.crops],
    zones: [plan.ids.zones, idsOf(scenario.zones)],
    communities: [plan.ids.communities, idsOf(scenario.communities)],
    depots: [plan.ids.depots, idsOf(scenario.depots)],
    products: [plan.ids.products, idsOf(scenario.products)],
    lots: [plan.ids.lots, idsOf(scenario.lots)],
    vehicles: [plan.ids.vehicles, idsOf(scenario.vehicles)],
  };
  for (const [name, [told, due]] of Object.entries(lists))
    if (told.length !== due.length || told.some((id, i) => id !== due[i]))
      found.push(finding('E8013', `ids.${name}`, null));
  const facts: Readonly<Record<string, readonly [string | number, string | number]>> = {
    name: [plan.scenario.name, scenario.name],
    seasonYear: [plan.scenario.seasonYear, scenario.seasonYear],
    asOf: [plan.scenario.asOf, isoDate(scenario.asOf)],
    currency: [plan.scenario.currency, scenario.currency],
    planningFrom: [plan.scenario.planningFrom, isoDate(scenario.planning.from)],
    planningTo: [plan.scenario.planningTo, isoDate(scenario.planning.to)],
  };
  const signed = ({ date, communityId, lotId, packs, returnedPacks }: Handover) =>
    [isoDate(date), communityId, lotId, packs, returnedPacks].join(' ');
  const { handovers: told, ids } = plan;
  const toldRows = told.date.map((date, i) =>
    [
      date,
      ids.communities[told.community[i] ?? -1],
      ids.lots[told.lot[i] ?? -1],
      told.packs[i],
      told.returnedPacks[i],
    ].join(' '),
  );
  if (toldRows.join() !== scenario.handovers.map(signed).join())
    found.push(finding('E8014', 'handovers', null, toldRows.length, scenario.handovers.length));
  for (const [name, [told, due]] of Object.entries(facts))
    if (told !== due) found.push(finding('E8014', `scenario.${name}`, null, told, due));
  return found;
}
