import { INOCULATION_PRACTICE } from '../../engine/index.ts';
import { hasInoculant } from './carried-goods.ts';
import type { Block, Text } from './page.ts';
import { daysBetween, number, type PaperCase, shortNumber } from './paper-case.ts';
import type { VehicleTask } from './route-sheet.ts';

/** Water a head and hour in the heat, L: 250 mL every 15 to 20 minutes (from memory, to be confirmed). */
const WATER_L_PER_HOUR = 0.75;

/** What to do when it goes otherwise, the check of the evening before, the crew, and each stop. */
export function roadRules(c: PaperCase, task: VehicleTask, latestLeave: string): Block[] {
  const { road } = c.said;
  return [
    {
      kind: 'beside',
      shares: [1.2, 1],
      parts: [
        [
          {
            kind: 'section',
            title: road.lateTitle,
            blocks: [{ kind: 'pairs', items: whenOtherwise(c, task, latestLeave) }],
          },
        ],
        [
          {
            kind: 'section',
            title: road.eveningTitle,
            blocks: [{ kind: 'checks', columns: 1, items: evening(c, task) }],
          },
          {
            kind: 'section',
            title: road.atStopTitle,
            blocks: [{ kind: 'text', text: !hasInoculant(task.goods) ? road.atStopSeed : road.atStop }],
          },
          {
            kind: 'section',
            title: road.crewTitle,
            blocks: [{ kind: 'text', text: `${crewHeat(c, task)} ${road.crewRoad}` }],
          },
        ],
      ],
    },
  ];
}

function whenOtherwise(c: PaperCase, task: VehicleTask, latestLeave: string): [Text, Text][] {
  const { road } = c.said;
  const limits = task.goods.flatMap(({ product }) => (product.kind === 'inoculant' ? (product.maxStorageC ?? []) : []));
  const allowed = c.scenario.policy.hoursAboveStorage;
  const hours = allowed === null ? road.storageOpen : road.storageAllowed(shortNumber(c, allowed));
  const breach = number(c, INOCULATION_PRACTICE.damageCelsius.value);
  return [
    [road.notAway(latestLeave), !hasInoculant(task.goods) ? road.notAwaySeedDo : road.notAwayDo],
    [road.late, road.lateDo],
    ...(!hasInoculant(task.goods)
      ? []
      : ([
          ...(limits.length > 0
            ? [[road.boxAt(shortNumber(c, Math.min(...limits))), road.storageDo(hours)] as [Text, Text]]
            : []),
          [road.boxAt(breach), road.hotDo],
        ] as [Text, Text][])),
    [road.closed, road.closedDo],
    [road.sown, road.sownDo],
    ...(!hasInoculant(task.goods) ? [] : [[road.tooDry, road.tooDryDo] as [Text, Text]]),
    [road.roadShut, road.roadShutDo],
    [road.differs, road.differsDo],
  ];
}

function evening(c: PaperCase, { vehicle, load }: VehicleTask): string[] {
  const { evening: said } = c.said.road;
  const iceKg = vehicle.trips.reduce((sum, trip) => sum + trip.iceKg, 0);
  return [
    said.rain,
    said.receivers,
    ...(iceKg > 0 ? [said.ice(shortNumber(c, iceKg))] : []),
    ...(load === 'seed' ? [] : [said.box]),
    ...(load === 'inoculant' ? [said.seedThere] : []),
    said.fuel(number(c, vehicle.kilometres)),
    said.papers,
  ];
}

function crewHeat(c: PaperCase, { vehicle, date }: VehicleTask): string {
  const { season, scenario } = c.plan;
  const day = daysBetween(scenario.planningFrom, date);
  const days = season.workday.length;
  const hottest = season.stations.map((_, station) => season.tmaxC[station * days + day] ?? 0);
  const hours = (vehicle.returnMinute - vehicle.leaveMinute) / 60;
  return c.said.road.crewHeat(
    number(c, Math.max(...hottest)),
    number(c, Math.max(1, Math.ceil(hours * WATER_L_PER_HOUR))),
  );
}
