import { useState } from 'react';
import { localNumber } from '../../../presentation/local-number.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import { type DayHeat, valueAt } from '../../../presentation/views/days-heat.ts';
import { packsLine } from '../../../presentation/views/days-trip.ts';
import { TemperatureChart } from '../../charts/temperature-chart.tsx';
import { useView, useWords } from '../../state/use-stores.ts';
import { useChosenVehicle } from './chosen-vehicle.ts';
import { heatOf, useDayShown, useShownVehicle } from './day-shown.ts';
import { LeaveStepper, useTripAtHour } from './leave-stepper.tsx';

/** More vehicles than this are chosen from a list. */
const MOST_LETTERS = 8;

/** The chosen vehicle's temperatures; other vehicles of the day by their letters. */
export function VehicleChart() {
  const words = useWords();
  const { days } = words;
  const shown = useDayShown();
  const vehicle = useShownVehicle(shown);
  const chooseHour = useView((view) => view.chooseHour);
  const { choose } = useChosenVehicle();
  const trip =
    vehicle?.trips.find(({ stops }) => stops.some(({ packC }) => packC !== null)) ?? vehicle?.trips[0] ?? null;
  const trial = `${shown?.day} ${vehicle?.id} ${trip?.row}`;
  const [tried, setTried] = useState<{ readonly of: string; readonly minute: number | null }>({
    of: trial,
    minute: null,
  });
  const minute = tried.of === trial ? tried.minute : null;
  const answer = useTripAtHour(shown, trip, minute);
  if (shown === null || vehicle === null) return null;
  const heat = heatOf(shown.plan, vehicle);
  const last = vehicle.trips.flatMap((trip) => trip.stops).findLast(({ packC }) => packC !== null);
  return (
    <>
      <header className="heat-head">
        <h2>{days.chart(vehicle.mark.letter, vehicle.id)}</h2>
        {shown.vehicles.length > MOST_LETTERS ? (
          <select
            className="quiet"
            aria-label={days.chooseVehicle}
            value={vehicle.id}
            onChange={(event) => choose(event.target.value)}
          >
            {shown.vehicles.map(({ id, mark }) => (
              <option key={id} value={id}>
                {days.chart(mark.letter, id)}
              </option>
            ))}
          </select>
        ) : (
          <fieldset className="letters" aria-label={days.chooseVehicle}>
            {shown.vehicles.map(({ id, mark }) => (
              <button
                key={id}
                type="button"
                className="letter"
                aria-pressed={id === vehicle.id}
                aria-label={days.chart(mark.letter, id)}
                onClick={() => choose(id)}
              >
                {mark.letter}
              </button>
            ))}
          </fieldset>
        )}
        {last && last.packC !== null && (
          <p className="note">
            {days.lastHandOver}{' '}
            <b>
              {days.lastHandOverC(
                localNumber(last.packC, words, 1),
                localNumber(last.hotBandMaxC ?? last.packC, words, 1),
              )}
            </b>
          </p>
        )}
      </header>
      {trip && (
        <LeaveStepper
          shown={shown}
          trip={trip}
          tried={minute}
          onTry={(to) => setTried({ of: trial, minute: to })}
          answer={answer}
        />
      )}
      <TemperatureChart
        vehicle={vehicle}
        heat={heat}
        hours={shown.hours}
        hour={shown.hour}
        onHour={chooseHour}
        tried={answer && packsLine(answer)}
      />
      {heat.trips.length > 0 && <HeatTable heat={heat} />}
    </>
  );
}

const ROW_MINUTES = 30;

/** The same every half hour, for those who do not see the chart. */
function HeatTable({ heat }: { readonly heat: DayHeat }) {
  const words = useWords();
  const { days } = words;
  const rows = heat.trips.flatMap((trip) => {
    const [from, to] = [trip.packs[0]?.[0] ?? 0, trip.packs.at(-1)?.[0] ?? 0];
    const first = Math.ceil(from / ROW_MINUTES) * ROW_MINUTES;
    const count = Math.max(0, Math.floor((to - first) / ROW_MINUTES) + 1);
    const minutes = [from, ...Array.from({ length: count }, (_, i) => first + i * ROW_MINUTES), to];
    return [...new Set(minutes)].map((minute) => ({
      minute,
      values: [trip.shade, trip.boxAir, trip.packs, trip.hotBand].map((line) => valueAt(line, minute)),
    }));
  });
  const heads = [days.shade, days.boxAir, days.packsHead, days.hotBandHead];
  return (
    <details className="heat-table">
      <summary>{days.chartTable}</summary>
      <table className="ruled" aria-label={days.chartTable}>
        <thead>
          <tr>
            <th scope="col">{days.hour}</th>
            {heads.map((head) => (
              <th key={head} scope="col" className="number">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ minute, values }) => (
            <tr key={minute}>
              <th scope="row">{hourText(minute)}</th>
              {values.map((value, column) => (
                <td key={heads[column]} className="number">
                  {value === null ? days.none : localNumber(value, words, 1)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
