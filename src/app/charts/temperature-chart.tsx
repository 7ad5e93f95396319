import { useId } from 'react';
import { localNumber } from '../../presentation/local-number.ts';
import { hourText } from '../../presentation/views/days-axis.ts';
import type { VehicleDay } from '../../presentation/views/days-fleet.ts';
import { type DayHeat, type HeatPoint, type TripHeat, valueAt } from '../../presentation/views/days-heat.ts';
import { useWords } from '../state/use-stores.ts';
import { HourSlider } from './hour-slider.tsx';
import './temperature-chart.css';
import { useWidth } from './use-width.ts';

interface TemperatureChartProps {
  readonly vehicle: VehicleDay;
  readonly heat: DayHeat;
  readonly hours: { readonly from: number; readonly to: number };
  readonly hour: number;
  readonly onHour: (minute: number) => void;
  /** Packs of the trip at an hour that is tried. */
  readonly tried: readonly HeatPoint[] | null;
}

/** Room around the plot, px: the flag of the hour above, °C to the left, names of lines to the right, hours below. */
const ROOM = { top: 22, right: 118, bottom: 20, left: 28 } as const;
const HEIGHT = 216;
const STOPS_HEIGHT = 9;
/** Between the axis and 0 °C: stops with their numbers. */
const STOPS_LANE = 24;
const WIDTH_AT_FIRST = 536;
const LIMIT_C = 40;
const WARM_C = 35;

/** Where a minute and a temperature lie on the drawing. */
interface Scale {
  readonly x: (minute: number) => number;
  readonly y: (celsius: number) => number;
  readonly right: number;
  readonly bottom: number;
}

/** Air, air at the box and packs through a vehicle's day, with the limits; the hour is moved on it. */
export function TemperatureChart({ vehicle, heat, hours, hour, onHour, tried }: TemperatureChartProps) {
  const words = useWords();
  const { element, width } = useWidth(WIDTH_AT_FIRST);
  const plotWidth = Math.max(120, width - ROOM.left - ROOM.right);
  const bottom = HEIGHT - ROOM.bottom;
  const scale: Scale = {
    x: (minute) => ROOM.left + ((minute - hours.from) / Math.max(1, hours.to - hours.from)) * plotWidth,
    y: (celsius) => bottom - STOPS_LANE - (celsius / heat.topC) * (bottom - STOPS_LANE - ROOM.top),
    right: ROOM.left + plotWidth,
    bottom,
  };
  return (
    <div className="hour-area" ref={element}>
      <HourSlider hours={hours} hour={hour} onHour={onHour} left={ROOM.left} width={plotWidth} height={bottom} />
      <svg width={width} height={HEIGHT} className="temperature-chart" aria-hidden="true">
        <Axes heat={heat} hours={hours} scale={scale} />
        <Limits heat={heat} scale={scale} hoursOver={vehicle.hoursAboveStorage} />
        {heat.trips.map((trip) => (
          <TripLines key={trip.trip} trip={trip} heat={heat} scale={scale} tone={vehicle.mark.tone} />
        ))}
        {tried && (
          <path
            d={pathOf(
              tried.filter(([minute]) => minute <= hours.to),
              scale,
            )}
            className="packs-tried"
          />
        )}
        <StopTicks vehicle={vehicle} scale={scale} />
        <LineNames heat={heat} scale={scale} tone={vehicle.mark.tone} />
        <Cursor heat={heat} hour={hour} scale={scale} tone={vehicle.mark.tone} />
        {heat.trips.length === 0 && (
          <text x={(ROOM.left + scale.right) / 2} y={scale.y(20)} className="chart-empty" textAnchor="middle">
            {words.days.nothingCool}
          </text>
        )}
      </svg>
    </div>
  );
}

function Axes({ heat, hours, scale }: Pick<TemperatureChartProps, 'heat' | 'hours'> & { readonly scale: Scale }) {
  const words = useWords();
  const degrees = Array.from({ length: Math.floor(heat.topC / 10) + 1 }, (_, i) => i * 10);
  const span = (hours.to - hours.from) / 60;
  const step = span > 9 ? 2 : 1;
  const ticks = Array.from({ length: Math.floor(span / step) + 1 }, (_, i) => hours.from + i * step * 60);
  return (
    <g className="chart-axes">
      <text x={0} y={ROOM.top - 8}>
        {words.days.degrees}
      </text>
      {degrees.map((celsius) => (
        <g key={celsius}>
          <line x1={ROOM.left} x2={scale.right} y1={scale.y(celsius)} y2={scale.y(celsius)} className="chart-grid" />
          <text x={ROOM.left - 6} y={scale.y(celsius) + 4} textAnchor="end">
            {localNumber(celsius, words)}
          </text>
        </g>
      ))}
      {ticks.map((minute) => (
        <g key={minute}>
          <line
            x1={scale.x(minute)}
            x2={scale.x(minute)}
            y1={scale.bottom}
            y2={scale.bottom + 4}
            className="chart-tick"
          />
          <text x={scale.x(minute)} y={scale.bottom + 17} textAnchor="middle">
            {hourText(minute)}
          </text>
        </g>
      ))}
      <line x1={ROOM.left} x2={scale.right} y1={scale.bottom} y2={scale.bottom} className="chart-tick" />
    </g>
  );
}

interface LimitsProps {
  readonly heat: DayHeat;
  readonly scale: Scale;
  readonly hoursOver: number | null;
}

function Limits({ heat, scale, hoursOver }: LimitsProps) {
  const words = useWords();
  const { days } = words;
  const limit = heat.storageLimitC;
  const line = (celsius: number, className: string) => (
    <line x1={ROOM.left} x2={scale.right} y1={scale.y(celsius)} y2={scale.y(celsius)} className={className} />
  );
  const isOver = (hoursOver ?? 0) > 0;
  return (
    <g className="chart-limits">
      {line(LIMIT_C, 'limit-hard')}
      <text x={ROOM.left + 4} y={scale.y(LIMIT_C) - 4} className="alarm-text">
        {days.limit40}
      </text>
      {line(WARM_C, 'limit-warm')}
      {limit !== null && line(limit, 'limit-storage')}
      {limit !== null && (
        <text x={ROOM.left + 4} y={scale.y(limit) - 4} className="alarm-text">
          {isOver
            ? days.storageOver(localNumber(limit, words), localNumber(hoursOver ?? 0, words, 1))
            : days.storageLimit(localNumber(limit, words))}
        </text>
      )}
    </g>
  );
}

const pathOf = (line: readonly HeatPoint[], { x, y }: Scale): string =>
  line.map(([minute, celsius], i) => `${i === 0 ? 'M' : 'L'}${x(minute).toFixed(1)} ${y(celsius).toFixed(1)}`).join('');

interface TripLinesProps {
  readonly trip: TripHeat;
  readonly heat: DayHeat;
  readonly scale: Scale;
  readonly tone: string;
}

function TripLines({ trip, heat, scale, tone }: TripLinesProps) {
  const words = useWords();
  const hatch = useId();
  const band = `${pathOf(trip.packs, scale)}${pathOf([...trip.hotBand].reverse(), scale).replace('M', 'L')}Z`;
  const limit = heat.storageLimitC ?? 0;
  return (
    <g>
      <path d={band} className="packs-band" fill={`var(--${tone})`} />
      {trip.above.length > 0 && (
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="5" className="above-hatch" />
        </pattern>
      )}
      {trip.above.map((stretch) => {
        const [first, last] = [stretch[0]?.[0] ?? 0, stretch.at(-1)?.[0] ?? 0];
        const area: HeatPoint[] = [[first, limit], ...stretch, [last, limit]];
        return <path key={first} d={`${pathOf(area, scale)}Z`} fill={`url(#${hatch})`} />;
      })}
      <path d={pathOf(trip.shade, scale)} className="air-shade" />
      <path d={pathOf(trip.boxAir, scale)} className="air-box" />
      <path d={pathOf(trip.packs, scale)} className="packs-line" stroke={`var(--${tone})`} />
      {trip.iceGoneMinute !== null && (
        <g>
          <line
            x1={scale.x(trip.iceGoneMinute)}
            x2={scale.x(trip.iceGoneMinute)}
            y1={scale.y(0)}
            y2={scale.y(0) - 22}
            className="chart-tick"
          />
          <text x={scale.x(trip.iceGoneMinute)} y={scale.y(0) - 26} textAnchor="middle">
            {words.days.iceGone(hourText(trip.iceGoneMinute))}
          </text>
        </g>
      )}
    </g>
  );
}

/** Stops as blocks on the axis, numbered as on the map where there is room. */
function StopTicks({ vehicle, scale }: { readonly vehicle: VehicleDay; readonly scale: Scale }) {
  const stops = vehicle.trips.flatMap((trip) => trip.stops);
  let lastNumberX = Number.NEGATIVE_INFINITY;
  return stops.map(({ row, number, arriveMinute, departMinute }) => {
    const [from, to] = [scale.x(arriveMinute), scale.x(departMinute)];
    const middle = (from + to) / 2;
    const hasRoom = middle - lastNumberX >= 14;
    if (hasRoom) lastNumberX = middle;
    return (
      <g key={row}>
        <rect
          x={from}
          y={scale.bottom - STOPS_HEIGHT}
          width={Math.max(2, to - from)}
          height={STOPS_HEIGHT}
          fill={`var(--${vehicle.mark.tone})`}
        />
        {hasRoom && (
          <text x={middle} y={scale.bottom - STOPS_HEIGHT - 3} textAnchor="middle" className="stop-number">
            {number}
          </text>
        )}
      </g>
    );
  });
}

const LINE_PIXELS = 15;

/** Names at the ends of the last trip's lines, kept apart. */
function LineNames({ heat, scale, tone }: { readonly heat: DayHeat; readonly scale: Scale; readonly tone: string }) {
  const { days } = useWords();
  const last = heat.trips.at(-1);
  if (!last) return null;
  const end = last.packs.at(-1)?.[0] ?? 0;
  const names = [
    { text: days.boxAir, celsius: last.boxAir.at(-1)?.[1] ?? 0, fill: 'var(--ink)' },
    { text: days.shade, celsius: last.shade.at(-1)?.[1] ?? 0, fill: 'var(--ink)' },
    { text: days.packsLine, celsius: last.hotBand.at(-1)?.[1] ?? 0, fill: `var(--${tone})` },
  ].sort((a, b) => b.celsius - a.celsius);
  let lowest = Number.NEGATIVE_INFINITY;
  return names.map(({ text, celsius, fill }) => {
    const y = Math.max(scale.y(celsius) + 4, lowest + LINE_PIXELS);
    lowest = y;
    return (
      <text key={text} x={Math.min(scale.x(end) + 6, scale.right + 6)} y={y} fill={fill} className="line-name">
        {text}
      </text>
    );
  });
}

interface CursorProps {
  readonly heat: DayHeat;
  readonly hour: number;
  readonly scale: Scale;
  readonly tone: string;
}

/** The hour as an upright with a flag, and what the packs are at then. */
function Cursor({ heat, hour, scale, tone }: CursorProps) {
  const words = useWords();
  const x = scale.x(hour);
  const celsius = heat.trips.map((trip) => valueAt(trip.packs, hour)).find((value) => value !== null) ?? null;
  return (
    <g>
      <line x1={x} x2={x} y1={ROOM.top - 2} y2={scale.bottom} className="hour-line" />
      <rect x={x - 23} y={1} width={46} height={19} className="hour-flag" />
      <text x={x} y={15} textAnchor="middle" className="hour-text">
        {hourText(hour)}
      </text>
      {celsius !== null && (
        <>
          <circle cx={x} cy={scale.y(celsius)} r={5} className="hour-dot" stroke={`var(--${tone})`} />
          <text x={x + 9} y={scale.y(celsius) - 8} className="hour-celsius">
            {`${localNumber(celsius, words, 1)} ${words.days.degrees}`}
          </text>
        </>
      )}
    </g>
  );
}
