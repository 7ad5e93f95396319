import type { ReactNode } from 'react';
import { localNumber } from '../../../presentation/local-number.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import type { VehicleDay } from '../../../presentation/views/days-fleet.ts';
import { isAway } from '../../../presentation/views/days-stops.ts';
import { dateText } from '../../../presentation/views/frame-view.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { type CellProps, useGridKeys } from '../grid-keys.ts';
import { useChosenVehicle } from './chosen-vehicle.ts';
import { type DayShown, useShownVehicle } from './day-shown.ts';
import { VehicleMark } from './vehicle-mark.tsx';

/** The vehicles of the day: choosing one shows its temperatures and its stops. */
export function VehicleTable({ shown }: { readonly shown: DayShown }) {
  const words = useWords();
  const { days } = words;
  const { vehicles, day } = shown;
  const { gridProps, cellProps } = useGridKeys(vehicles.length, 10);
  const date = dateText(day, words, false);
  if (vehicles.length === 0) return <p className="no-vehicles">{days.noVehicles}</p>;
  const heads = [days.leaves, days.stops, days.km, days.kg, days.cool, days.hottest, days.aboveLimit, days.back];
  return (
    <div className="scrolls">
      <table className="ruled vehicles" aria-label={days.vehicles(date)} {...gridProps}>
        <thead>
          <tr>
            <th scope="col">{date}</th>
            <th scope="col">{days.zones}</th>
            {heads.map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {vehicles.map((vehicle, row) => (
            <VehicleRow
              key={vehicle.id}
              shown={shown}
              vehicle={vehicle}
              cellProps={(column) => cellProps(row, column)}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface VehicleRowProps {
  readonly shown: DayShown;
  readonly vehicle: VehicleDay;
  readonly cellProps: (column: number) => CellProps;
}

function VehicleRow({ shown, vehicle, cellProps }: VehicleRowProps) {
  const words = useWords();
  const { days } = words;
  const { choose } = useChosenVehicle();
  const isShown = useShownVehicle(shown)?.id === vehicle.id;
  const date = dateText(shown.day, words, false);
  const figure = (column: number, path: string, what: string, text: string) => (
    <Figure path={path} title={days.figureTitle(what, vehicle.id, date)} cell={cellProps(column)}>
      {text}
    </Figure>
  );
  const number = (value: number, decimals = 0) => localNumber(value, words, decimals);
  const zones = vehicle.zones.join(', ');
  return (
    <tr aria-selected={isShown} data-vehicle={vehicle.id}>
      <th scope="row">
        <button
          type="button"
          className="row-name vehicle-name"
          title={aboutVehicle(shown, vehicle, words)}
          {...cellProps(0)}
          onClick={() => choose(vehicle.id)}
        >
          <VehicleMark mark={vehicle.mark} /> <span>{vehicle.id}</span>
        </button>
      </th>
      <td className="vehicle-zones" title={zones}>
        {zones}
      </td>
      <td className="number">{figure(1, 'delivery.trips.leaveMinute', days.leaves, hourText(vehicle.leaveMinute))}</td>
      <td className="number" title={vehicle.trips.length > 1 ? days.trips(number(vehicle.trips.length)) : undefined}>
        {number(vehicle.stopCount)}
      </td>
      <td className="number">{figure(2, 'delivery.trips.kilometres', days.km, number(vehicle.kilometres))}</td>
      <td className="number">{figure(3, 'delivery.trips.loadKg', days.kg, number(vehicle.loadKg))}</td>
      <td className="number">
        {vehicle.coolCapacityLitres > 0 ? (
          <Of whole={days.ofCapacity('', number(vehicle.coolCapacityLitres))}>
            {figure(4, 'delivery.trips.coolLitres', days.cool, number(vehicle.coolLitres))}
          </Of>
        ) : (
          <span className="soft">{days.noBox}</span>
        )}
      </td>
      <td className="number" title={days.hottestTitle}>
        {vehicle.packMaxC === null ? (
          <NoInoculant />
        ) : (
          <Of whole={days.hotBand(number(vehicle.hotBandMaxC ?? vehicle.packMaxC, 1))}>
            {figure(5, 'delivery.stops.packMaxC', days.hottest, number(vehicle.packMaxC, 1))}
          </Of>
        )}
      </td>
      <td className={`number ${(vehicle.hoursAboveStorage ?? 0) > 0 ? 'alarm' : ''}`} title={days.aboveLimitTitle}>
        {vehicle.hoursAboveStorage === null ? (
          <NoInoculant />
        ) : (
          figure(6, 'delivery.stops.hoursAboveStorage', days.aboveLimit, number(vehicle.hoursAboveStorage, 1))
        )}
      </td>
      <td className="number">{figure(7, 'delivery.trips.returnMinute', days.back, hourText(vehicle.returnMinute))}</td>
      <td className="number">
        <AwayButton vehicleId={vehicle.id} day={shown.day} cell={cellProps(8)} />
      </td>
    </tr>
  );
}

/** A figure and, softer, what it is measured against. */
function Of({ whole, children }: { readonly whole: string; readonly children: ReactNode }) {
  return (
    <>
      {children} <span className="soft">{whole}</span>
    </>
  );
}

function NoInoculant() {
  const { days } = useWords();
  return (
    <span className="soft">
      <span aria-hidden="true">{days.none}</span>
      <span className="unseen">{days.noneSaid}</span>
    </span>
  );
}

/** Takes the vehicle away for the day, to be planned without it. */
function AwayButton({ vehicleId, day, cell }: { vehicleId: string; day: string; cell: CellProps }) {
  const words = useWords();
  const { days } = words;
  const decisions = useSeason((season) => season.decisions);
  const decide = useSeason((season) => season.decide);
  if (isAway(decisions, vehicleId, day)) return <span title={days.awayNote}>{days.isAway}</span>;
  return (
    <button
      type="button"
      className="link decide"
      title={days.awayTitle(vehicleId, dateText(day, words, false))}
      aria-label={days.awayTitle(vehicleId, dateText(day, words, false))}
      {...cell}
      onClick={() => decide({ kind: 'vehicle-away', vehicleId, from: day, to: day })}
    >
      {days.away}
    </button>
  );
}

function aboutVehicle({ scenario }: DayShown, { vehicle }: VehicleDay, words: ReturnType<typeof useWords>): string {
  const told = scenario.vehicles[vehicle];
  if (!told) return '';
  const depot = scenario.depots.find(({ id }) => id === told.depotId)?.name ?? told.depotId;
  return words.days.aboutVehicle(told.kind, words.days.carriages[told.carriage], depot);
}
