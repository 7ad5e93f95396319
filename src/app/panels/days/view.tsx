import { lazy, Suspense } from 'react';
import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import { daysHeadline } from '../../../presentation/views/days-view.ts';
import { saveTable } from '../../state/save-tables.ts';
import { useWords } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';
import { Figure } from '../figure.tsx';
import { PaperLink } from '../paper-link.tsx';
import { DayCautions } from './cautions.tsx';
import { dayOnMap, useDayShown, useShownVehicle } from './day-shown.ts';
import './days.css';
import { MapLegend } from './map-legend.tsx';
import { FertiliserLeft, NotServedLines } from './not-served.tsx';
import { SeasonAndCalendar } from './season-and-calendar.tsx';
import { StopTable } from './stop-table.tsx';
import { useWorth } from './use-worth.ts';
import { VehicleChart } from './vehicle-chart.tsx';
import { VehicleTable } from './vehicle-table.tsx';

const HeldZones = lazy(async () => ({ default: (await import('./held-zones.tsx')).HeldZones }));
const ReplanDays = lazy(async () => ({ default: (await import('./replan-days.tsx')).ReplanDays }));
const ZoneWorth = lazy(async () => ({ default: (await import('./zone-worth.tsx')).ZoneWorth }));

function Answer() {
  const words = useWords();
  const { days } = words;
  const shown = useDayShown();
  if (shown === null) return <NotPlanned />;
  const told = daysHeadline(shown.plan, shown.notServed);
  if (told.vehicleDays === 0) return <h1>{days.noDeliveries}</h1>;
  const count = (value: number) => localNumber(value, words);
  return (
    <h1>
      {days.answer(count(told.vehicleDays), told.vehicleDays === 1, count(told.days), told.days === 1)}{' '}
      <Figure path="outcomes.headline.reachedHa" title={days.reachedTitle}>
        {withUnit(count(told.reachedHa), days.ha)}
      </Figure>{' '}
      {days.aliveAndInTime}{' '}
      {told.notServed === 0 ? days.allServed : days.cannotBeServed(count(told.notServed), told.notServed === 1)}
    </h1>
  );
}

function Panel() {
  const { days, frame, papers } = useWords();
  const shown = useDayShown();
  const vehicle = useShownVehicle(shown);
  const worth = useWorth();
  if (shown === null) return null;
  return (
    <>
      <SeasonAndCalendar shown={shown} worth={worth} />
      <Suspense>
        <ReplanDays />
      </Suspense>
      <VehicleTable shown={shown} />
      <NotServedLines left={shown.notServed} />
      <FertiliserLeft />
      <Suspense>
        <ZoneWorth shown={shown} worth={worth} />
        <HeldZones shown={shown} worth={worth} />
      </Suspense>
      {vehicle && <StopTable shown={shown} vehicle={vehicle} />}
      <DayCautions />
      <footer className="note days-foot">
        <p>{days.decisionsNote}</p>
        <button
          type="button"
          className="link"
          onClick={() => void saveTable('deliveries.csv', shown.plan, shown.scenario)}
        >
          {days.save}
        </button>{' '}
        <PaperLink paper="route" place={{ day: shown.day }}>
          {papers.ofDay}
        </PaperLink>{' '}
        <PaperLink paper="" place={{ view: 'records' }}>
          {frame.views.records}
        </PaperLink>
      </footer>
    </>
  );
}

export const DAYS: ViewParts = { Answer, Panel, Chart: VehicleChart, Legend: MapLegend, picture: dayOnMap };
