import { type Decision, dayNumber, isoDate, type Plan, parseIsoDate, type Scenario } from '../../src/engine/index.ts';
import { RandomStream } from '../../src/engine/numerics/random-stream.ts';

/** One line of handovers.csv as a person enters it in the evening. */
export interface Line {
  readonly date: string;
  readonly community_id: string;
  readonly vehicle_id: string;
  readonly lot_id: string;
  readonly packs: number;
  readonly box_c: number | '';
  readonly returned_packs: number;
  readonly reason: string;
}

export interface Evening {
  readonly lines: readonly Line[];
  readonly decisions: readonly Decision[];
  /** What went wrong, for the record. */
  readonly surprises: readonly string[];
}

type Surprise = 'vehicle down' | 'hot box' | 'already sown' | 'lot fails' | 'road closed';
const SURPRISES: readonly Surprise[] = ['vehicle down', 'hot box', 'already sown', 'lot fails', 'road closed'];

/** One stop of a day: who was to be given what by which vehicle. */
interface Visit {
  readonly vehicleId: string;
  readonly communityId: string;
  readonly goods: { readonly lotId: string; readonly packs: number; readonly isLiving: boolean }[];
}

/**
 * The people who live a season: each evening they enter what happened on the day's trips, with surprises from a seeded list. They
 * know the plan as it is printed, and the world: the rain that falls, what breaks down.
 */
export class SeasonAtWork {
  private readonly random: RandomStream;
  private readonly waiting: Surprise[];
  private readonly firstRain: number;

  /** @param lateDays days without any rain from the first on: the rains are late */
  constructor(seed: number, from: number, lateDays: number) {
    this.random = new RandomStream(seed);
    this.waiting = [...SURPRISES, ...SURPRISES.filter(() => this.random.next() < 0.5)];
    for (let i = this.waiting.length - 1; i > 0; i--) {
      const j = this.random.below(i + 1);
      [this.waiting[i], this.waiting[j]] = [this.waiting[j] as Surprise, this.waiting[i] as Surprise];
    }
    this.firstRain = from + lateDays;
  }

  /** What is entered on the evening of a day, by the plan that held in its morning. */
  live(date: string, plan: Plan, scenario: Scenario): Evening {
    const visits = visitsOf(date, plan, scenario);
    const decisions: Decision[] = this.measureRain(date, scenario);
    const surprises: string[] = [];
    const day = { missed: new Set<Visit>(), hot: new Set<Visit>(), sown: new Set<Visit>() };
    if (visits.length > 0 && this.random.next() < 0.75) {
      const surprise = this.waiting.shift();
      if (surprise) {
        surprises.push(surprise);
        decisions.push(...this.meet(surprise, date, visits, day, plan, scenario));
      }
    }
    const lines = visits.filter((visit) => !day.missed.has(visit)).flatMap((visit) => linesOf(visit, date, day));
    return { lines, decisions: [...decisions, { kind: 'day-closed', date }], surprises };
  }

  private pick<T>(list: readonly T[]): T | undefined {
    return list.length === 0 ? undefined : list[this.random.below(list.length)];
  }

  private measureRain(date: string, scenario: Scenario): Decision[] {
    const mm = (parseIsoDate(date) ?? 0) < this.firstRain ? 0 : this.pick([0, 0, 4, 12, 28]);
    return scenario.weather.map(({ id }) => ({ kind: 'rain', stationId: id, date, mm: mm ?? 0 }));
  }

  private meet(
    surprise: Surprise,
    date: string,
    visits: readonly Visit[],
    day: { readonly missed: Set<Visit>; readonly hot: Set<Visit>; readonly sown: Set<Visit> },
    plan: Plan,
    scenario: Scenario,
  ): Decision[] {
    const to = isoDate(dayNumber((parseIsoDate(date) ?? 0) + 2));
    if (surprise === 'vehicle down') {
      const vehicleId = this.pick(visits)?.vehicleId ?? '';
      for (const visit of visits) if (visit.vehicleId === vehicleId) day.missed.add(visit);
      return [{ kind: 'vehicle-away', vehicleId, from: date, to, because: 'broken down' }];
    }
    if (surprise === 'hot box') {
      const visit = this.pick(visits.filter(({ goods }) => goods.some(({ isLiving }) => isLiving)));
      if (visit) day.hot.add(visit);
      return [];
    }
    if (surprise === 'already sown') {
      const visit = this.pick(visits);
      if (!visit) return [];
      for (const other of visits) if (other.communityId === visit.communityId) day.sown.add(other);
      return scenario.crops.flatMap((crop) =>
        (['seed', 'inoculant'] as const).map(
          (commodity): Decision => ({
            kind: 'forbid',
            communityId: visit.communityId,
            crop,
            commodity,
            because: 'already sown',
          }),
        ),
      );
    }
    if (surprise === 'lot fails') {
      const offered = plan.ids.lots.filter(
        (id, l) => (plan.allocation.lots.packsOffered[l] ?? 0) > 50 && isLivingLot(scenario, id),
      );
      const lotId = this.pick(offered);
      return lotId === undefined ? [] : [{ kind: 'hold', lotId, because: 'failed its test' }];
    }
    const leg = this.pick(plan.delivery.legs.filter(({ pieces }) => pieces.length > 0));
    const [lon = 0, lat = 0] = scenario.roads[leg?.pieces[0]?.[0] ?? 0]?.positions[0] ?? [];
    return [{ kind: 'road-closed', lon, lat, from: date, to, because: 'bridge under water' }];
  }
}

const isLivingLot = ({ lots, products }: Scenario, lotId: string): boolean =>
  products.find(({ id }) => id === lots.find((lot) => lot.id === lotId)?.productId)?.kind === 'inoculant';

/** Most packs of a stop that come back from a hot box. */
const HOT_PACKS = 12;

function linesOf(
  visit: Visit,
  date: string,
  day: { readonly hot: ReadonlySet<Visit>; readonly sown: ReadonlySet<Visit> },
): Line[] {
  return visit.goods.map(({ lotId, packs, isLiving }): Line => {
    const line = { date, community_id: visit.communityId, vehicle_id: visit.vehicleId, lot_id: lotId, packs };
    if (day.sown.has(visit)) return { ...line, box_c: '', returned_packs: packs, reason: 'already sown' };
    if (!day.hot.has(visit) || !isLiving) return { ...line, box_c: isLiving ? 14 : '', returned_packs: 0, reason: '' };
    return {
      ...line,
      packs: Math.min(packs, HOT_PACKS),
      box_c: 42,
      returned_packs: Math.min(packs, HOT_PACKS),
      reason: 'box was hot',
    };
  });
}

/** Goods of one community with one vehicle on a day, by lot. */
function visitsOf(date: string, { ids, allocation, delivery }: Plan, scenario: Scenario): Visit[] {
  const { trips, stops, loads } = delivery;
  const visits = new Map<string, Visit>();
  stops.loads.forEach((aboard, stop) => {
    const trip = stops.trip[stop] ?? -1;
    if (trips.date[trip] !== date) return;
    const vehicleId = ids.vehicles[trips.vehicle[trip] ?? -1] ?? '';
    for (const load of aboard) {
      const consignment = loads.consignment[load] ?? -1;
      const communityId = ids.communities[allocation.consignments.community[consignment] ?? -1] ?? '';
      const key = `${vehicleId} ${communityId}`;
      const visit = visits.get(key) ?? { vehicleId, communityId, goods: [] };
      visits.set(key, visit);
      (loads.grants[load] ?? []).forEach((grant, i) => {
        const lotId = ids.lots[allocation.grants.lot[grant] ?? -1] ?? '';
        const packs = loads.packs[load]?.[i] ?? 0;
        const at = visit.goods.findIndex((one) => one.lotId === lotId);
        const known = visit.goods[at];
        if (known) visit.goods[at] = { ...known, packs: known.packs + packs };
        else visit.goods.push({ lotId, packs, isLiving: isLivingLot(scenario, lotId) });
      });
    }
  });
  return [...visits.values()];
}
