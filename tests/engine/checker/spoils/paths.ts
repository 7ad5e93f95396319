import { parseIsoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import { at, change, dateWith, decide, moveTrip, onFirst, type PlanDraft, type Spoil, set, where } from './spoil.ts';

type LegDraft = PlanDraft['delivery']['legs'][number];
const onLeg = (p: PlanDraft, is: (leg: LegDraft) => boolean, spoil: (leg: LegDraft) => unknown): boolean =>
  onFirst(p.delivery.legs, is, (i) => spoil(at(p.delivery.legs, i)));
const hasPieces = ({ pieces }: LegDraft) => pieces.length > 0;

/** Drives the first leg along the whole of another road. */
const alongRoad = (p: PlanDraft, s: Scenario, road: number): boolean =>
  road >= 0 &&
  onLeg(p, hasPieces, (leg) => change(leg, { pieces: [[road, 0, at(s.roads, road).positions.length - 1]] }));

export const PATHS_SPOILS: readonly Spoil[] = [
  {
    name: 'a path with a gap',
    code: 'E8801',
    spoil: (p, s) =>
      onLeg(p, hasPieces, (leg) => {
        const [road, , to] = at(leg.pieces, leg.pieces.length - 1);
        const end = at(at(s.roads, road).positions, Math.round(to));
        const isFar = (other: number) => Math.abs(at(at(s.roads, other).positions, 0)[0] - end[0]) > 0.01;
        const far = where(s.roads, (_, other) => isFar(other));
        leg.pieces.push([far, 0, 1]);
      }),
  },
  {
    name: 'a piece outside its road',
    code: 'E8801',
    spoil: (p) => onLeg(p, hasPieces, (leg) => set(at(leg.pieces, 0), 2, 1e6)),
  },
  { name: 'no path at all', code: 'E8801', spoil: (p) => onLeg(p, hasPieces, (leg) => change(leg, { pieces: [] })) },
  {
    name: 'against a one-way road',
    code: 'E8802',
    spoil: (p, s) => {
      const road = where(s.roads, ({ oneway }) => oneway !== 'no');
      if (road < 0) return false;
      const end = at(s.roads, road).positions.length - 1;
      const [from, to] = at(s.roads, road).oneway === 'forward' ? [end, 0] : [0, end];
      return onLeg(p, hasPieces, (leg) => change(leg, { pieces: [[road, from, to]] }));
    },
  },
  {
    name: 'along a road closed by the file',
    code: 'E8803',
    spoil: (p, s) => {
      const used = parseIsoDate(at(p.delivery.trips.date, 0)) ?? 0;
      return alongRoad(
        p,
        s,
        where(
          s.roads,
          ({ closedFrom, closedTo }) => closedFrom !== null && closedFrom <= used && (closedTo ?? used) >= used,
        ),
      );
    },
  },
  {
    name: 'along a road closed by a decision',
    code: 'E8803',
    spoil: (p, s, d) => {
      const leg = p.delivery.legs.find(hasPieces);
      if (!leg) return false;
      const [road, from, to] = at(leg.pieces, 0);
      const positions = at(s.roads, road).positions;
      const vertex = Math.min(positions.length - 2, Math.floor(Math.min(from, to)));
      const [a, b] = [at(positions, vertex), at(positions, vertex + 1)];
      const along = Math.min(from, to) - vertex < 1 ? 0.5 : 0;
      const [lon, lat] = [a[0] + along * (b[0] - a[0]), a[1] + along * (b[1] - a[1])];
      return {
        decisions: decide(d, {
          kind: 'road-closed',
          lon,
          lat,
          from: p.scenario.planningFrom,
          to: p.scenario.planningTo,
        }),
      };
    },
  },
  {
    name: 'along a road class the vehicle may not use',
    code: 'E8804',
    spoil: (p, s) => {
      const vehicle = at(s.vehicles, at(p.delivery.trips.vehicle, at(p.delivery.stops.trip, 0)));
      return alongRoad(
        p,
        s,
        where(s.roads, ({ roadClass }) => !vehicle.roadsAllowed.includes(roadClass)),
      );
    },
  },
  {
    name: 'kilometres halved',
    code: 'E8805',
    spoil: (p) =>
      onLeg(
        p,
        ({ kilometres }) => kilometres > 1,
        (leg) => change(leg, { kilometres: leg.kilometres / 2 }),
      ),
  },
  {
    name: 'faster than the roads allow',
    code: 'E8806',
    spoil: (p) =>
      onLeg(
        p,
        ({ minutes }) => minutes > 2,
        (leg) => change(leg, { minutes: leg.minutes * 0.9 }),
      ),
  },
  {
    name: 'a leg of dry days on a wet day',
    code: 'E8806',
    spoil: (p, s) => {
      const date = dateWith(s, (offset) => at(p.season.roadState, offset) > 0);
      if (date === null) return false;
      moveTrip(p, 0, date);
      return true;
    },
  },
  {
    name: 'a place far from its path',
    code: 'E8807',
    spoil: (p) =>
      onLeg(
        p,
        (leg) => hasPieces(leg) && leg.kilometres > 8,
        (leg) => {
          const [road, from] = at(leg.pieces, 0);
          leg.pieces = [[road, from, from]];
        },
      ),
  },
  {
    name: 'a leg from another place',
    code: 'E8808',
    spoil: (p) =>
      p.delivery.legs.length > 1 &&
      onFirst(
        p.delivery.stops.leg,
        () => true,
        (i) => set(p.delivery.stops.leg, i, (at(p.delivery.stops.leg, i) + 1) % p.delivery.legs.length),
      ),
  },
];
