import { communityTask } from './community-task.ts';
import { distributionList } from './distribution-list.ts';
import { handoverSheet } from './handover-sheet.ts';
import { holdNote } from './hold-note.ts';
import type { Page } from './page.ts';
import { daysOfPlan, type PaperCase, vehicleDays } from './paper-case.ts';
import { pickList } from './pick-list.ts';
import { routeSheet, type VehicleTask, vehicleTask } from './route-sheet.ts';
import { stockCards } from './stock-card.ts';
import { wallCalendars } from './wall-calendar.ts';
import { waybill } from './waybill.ts';

/** Papers of one day, in the order in which the day needs them. */
export const DAY_PAPERS = ['pick', 'route', 'waybill', 'handover', 'list', 'hold'] as const;
/** Papers of the whole season. */
export const SEASON_PAPERS = ['card', 'wall'] as const;
export const PAPERS = [...DAY_PAPERS, ...SEASON_PAPERS] as const;
export type PaperName = (typeof PAPERS)[number];

export const isPaperName = (name: string | null): name is PaperName => PAPERS.some((one) => one === name);
export const isOfDay = (name: PaperName): boolean => DAY_PAPERS.some((one) => one === name);

/** All papers of one kind; those of a day for the day asked for. */
export function papersOf(c: PaperCase, name: PaperName, date: string): Page[] {
  switch (name) {
    case 'card':
      return c.scenario.depots.map((depot) => stockCards(c, depot));
    case 'wall':
      return wallCalendars(c);
    case 'pick':
      return pickLists(c, date);
    case 'route':
      return tasksOf(c, date).map((task) => routeSheet(c, task));
    case 'waybill':
      return tasksOf(c, date).map((task) => waybill(c, task));
    case 'hold':
      return tasksOf(c, date).map((task) => holdNote(c, task));
    case 'handover':
    case 'list':
      return communitiesOf(c, date).flatMap((id) => communityPapers(c, name, id));
  }
}

/** The handover sheet or the distribution list of one community; none where it is not known. */
export function communityPapers(c: PaperCase, name: 'handover' | 'list', communityId: string): Page[] {
  const task = communityTask(c, communityId);
  if (task === null) return [];
  return [name === 'handover' ? handoverSheet(c, task) : distributionList(c, task)];
}

const tasksOf = (c: PaperCase, date: string): VehicleTask[] =>
  vehicleDays(c, date).flatMap((vehicle) => vehicleTask(c, vehicle, date) ?? []);

function pickLists(c: PaperCase, date: string): Page[] {
  const tasks = tasksOf(c, date);
  return c.scenario.depots.flatMap((depot) => {
    const own = tasks.filter((task) => task.depot.id === depot.id);
    return own.length === 0 ? [] : [pickList(c, depot, date, own)];
  });
}

/** Communities that a vehicle comes to on a day, in the order of vehicles and stops. */
export function communitiesOf(c: PaperCase, date: string): string[] {
  return [...new Set(tasksOf(c, date).flatMap(({ goods }) => goods.map(({ communityId }) => communityId)))];
}

/** Communities that anything is brought to on any day. */
export const communitiesServed = (c: PaperCase): string[] =>
  [...new Set(daysOfPlan(c).flatMap((date) => communitiesOf(c, date)))].sort();
