import { lazy, Suspense, useState } from 'react';
import type { Decision } from '../../../engine/index.ts';
import { localNumber } from '../../../presentation/local-number.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import type { DayStop, DayTrip, VehicleDay } from '../../../presentation/views/days-fleet.ts';
import type { MoveTarget } from '../../../presentation/views/days-move.ts';
import { closeWay, isHeld, type StopGoods, stopGoods } from '../../../presentation/views/days-stops.ts';
import { dateText } from '../../../presentation/views/frame-view.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import type { DayShown } from './day-shown.ts';
import { VehicleMark } from './vehicle-mark.tsx';

const MoveHint = lazy(async () => ({ default: (await import('./move-hint.tsx')).MoveHint }));
const MovesTo = lazy(async () => ({ default: (await import('./moves-to.tsx')).MovesTo }));
const MoveStop = lazy(async () => ({ default: (await import('./move-stop.tsx')).MoveStop }));
const StopGrip = lazy(async () => ({ default: (await import('./stop-grip.tsx')).StopGrip }));

/** The chosen vehicle's day, stop by stop: what map and chart draw, as a table. */
export function StopTable({ shown, vehicle }: { readonly shown: DayShown; readonly vehicle: VehicleDay }) {
  const words = useWords();
  const { days } = words;
  const heads = [days.stop, days.place, days.goods];
  const numbers = [days.arrives, days.departs, days.packsC];
  return (
    <section className="stops">
      <h2>
        <VehicleMark mark={vehicle.mark} /> {days.stopsOf(vehicle.mark.letter, vehicle.id)}
      </h2>
      <Suspense>
        <MoveHint />
      </Suspense>
      <table className="ruled stop-table" aria-label={days.stopsOf(vehicle.mark.letter, vehicle.id)}>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            {numbers.map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        {vehicle.trips.map((trip) => (
          <TripRows key={trip.row} shown={shown} vehicle={vehicle} trip={trip} />
        ))}
      </table>
    </section>
  );
}

interface TripRowsProps {
  readonly shown: DayShown;
  readonly vehicle: VehicleDay;
  readonly trip: DayTrip;
}

function TripRows({ shown, vehicle, trip }: TripRowsProps) {
  const words = useWords();
  const { days } = words;
  const ice = trip.iceKg > 0 ? days.withIce(localNumber(trip.iceKg, words, 1)) : days.withoutIce;
  const hasInoculant = trip.stops.some(({ packC }) => packC !== null);
  return (
    <tbody>
      <tr className="trip-head">
        <th colSpan={7} scope="rowgroup">
          {days.tripHead(localNumber(trip.number, words), hourText(trip.leaveMinute), hourText(trip.returnMinute))}
          {hasInoculant && `, ${ice}`}
        </th>
      </tr>
      {trip.stops.map((stop) => (
        <StopRow key={stop.row} shown={shown} vehicle={vehicle} stop={stop} />
      ))}
    </tbody>
  );
}

interface StopRowProps {
  readonly shown: DayShown;
  readonly vehicle: VehicleDay;
  readonly stop: DayStop;
}

function StopRow({ shown, vehicle, stop }: StopRowProps) {
  const words = useWords();
  const { days } = words;
  const { plan, scenario, day } = shown;
  const goods = stopGoods(plan, scenario, stop, vehicle.id, day);
  const date = dateText(day, words, false);
  // Where it is to be moved; null: not chosen yet.
  const [moving, setMoving] = useState<{ readonly to: MoveTarget | null } | null>(null);
  const number = localNumber(stop.number, words);
  const others = goods.communities.filter((name) => name !== goods.place).join(', ');
  const row = (
    <tr>
      <td className="number">
        {goods.locks.length === 0 ? (
          number
        ) : (
          <Suspense fallback={number}>
            <StopGrip {...{ shown, vehicle, stop }} place={goods.place} onMove={(to) => setMoving({ to })} />
          </Suspense>
        )}
      </td>
      <th scope="row">
        {goods.place} {others !== '' && <span className="soft">{`${days.for} ${others}`}</span>}
        <Suspense>
          <MovesTo locks={goods.locks} />
        </Suspense>
      </th>
      <td className="goods">{goodsText(goods, words)}</td>
      <td className="number">{hourText(stop.arriveMinute)}</td>
      <td className="number departs">
        {hourText(stop.departMinute)}
        {stop.restMinutes > 0 && <span className="soft rest">{days.rests(localNumber(stop.restMinutes, words))}</span>}
      </td>
      <td className="number packs-c">
        {stop.packC === null ? (
          <span className="soft" title={days.noneSaid}>
            {days.none}
          </span>
        ) : (
          <Figure path="delivery.stops.packC" title={days.figureTitle(days.packsC, goods.place, date)}>
            {localNumber(stop.packC, words, 1)}
          </Figure>
        )}
      </td>
      <td className="number hold">
        {goods.locks.length > 0 && (
          <>
            <HoldButton locks={goods.locks} title={days.holdTitle(goods.place, vehicle.id, date)} />
            <button
              type="button"
              className="link decide"
              aria-expanded={moving !== null}
              aria-label={days.moveTitle(goods.place)}
              onClick={() => setMoving(moving === null ? { to: null } : null)}
            >
              {days.move}
            </button>
          </>
        )}
        <CloseButton closure={closeWay(plan, scenario, stop, day)} title={days.closeTitle(goods.place, date)} />
      </td>
    </tr>
  );
  if (moving === null) return row;
  return (
    <>
      {row}
      <tr>
        <td />
        <td colSpan={6}>
          <Suspense>
            <MoveStop
              key={`${moving.to?.vehicleId} ${moving.to?.date}`}
              {...{ shown, vehicle, stop }}
              to={moving.to}
              locks={goods.locks}
              onLeave={() => setMoving(null)}
            />
          </Suspense>
        </td>
      </tr>
    </>
  );
}

/** Holds the hand-over on its vehicle and day when the season is planned again. */
function HoldButton({ locks, title }: { readonly locks: readonly Decision[]; readonly title: string }) {
  const { days } = useWords();
  const decisions = useSeason((season) => season.decisions);
  const decide = useSeason((season) => season.decide);
  if (isHeld(decisions, locks)) return <span title={days.heldNote}>{days.held}</span>;
  return (
    <button type="button" className="link decide" title={title} aria-label={title} onClick={() => decide(...locks)}>
      {days.hold}
    </button>
  );
}

/** The road to the stop is closed from that day on: a decision, as any. */
function CloseButton({ closure, title }: { readonly closure: Decision | null; readonly title: string }) {
  const { days } = useWords();
  const decisions = useSeason((season) => season.decisions);
  const decide = useSeason((season) => season.decide);
  if (closure === null) return null;
  if (decisions.some((one) => JSON.stringify(one) === JSON.stringify(closure)))
    return <span title={days.closedNote}> {days.isClosed}</span>;
  return (
    <button type="button" className="link decide" title={title} aria-label={title} onClick={() => decide(closure)}>
      {days.close}
    </button>
  );
}

function goodsText({ seedKg, inoculantPacks, fertiliserKg }: StopGoods, words: Words): string {
  const { days } = words;
  const goods = [
    ...(seedKg > 0 ? [days.seedKg(localNumber(seedKg, words))] : []),
    ...(inoculantPacks > 0 ? [days.packs(localNumber(inoculantPacks, words), inoculantPacks === 1)] : []),
    ...(fertiliserKg > 0 ? [days.fertiliserKg(localNumber(fertiliserKg, words))] : []),
  ];
  return goods.length === 0 ? days.otherGoods : goods.join(', ');
}
