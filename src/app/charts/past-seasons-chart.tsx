import type { Amounts } from '../../presentation/views/coverage-amounts.ts';
import { type CoverageSeasons, type PastSeason, scaleSteps } from '../../presentation/views/coverage-seasons.ts';
import { useWords } from '../state/use-stores.ts';
import { SeasonMark } from './season-mark.tsx';
import { useWidth } from './use-width.ts';

export type SeasonOrder = 'year' | 'hectares';

const HEIGHT = 196;
const TOP = 8;
const BOTTOM = 22;
const LEFT = 46;
const RIGHT = 62;
/** Least distance between the middles of two labels, px. */
const LABEL_GAP = 52;
const LINE_GAP = 14;

interface PastSeasonsProps {
  readonly view: CoverageSeasons;
  readonly order: SeasonOrder;
  readonly amounts: Amounts;
}

/** One mark a season, hanging from what was supplied; its shape says what cost most. */
export function PastSeasonsChart({ view, order, amounts: { amount, hectares } }: PastSeasonsProps) {
  const words = useWords().coverage.seasons;
  const { element, width } = useWidth(536);
  const { step, to } = scaleSteps(Math.max(view.plannedHa, view.suppliedHa));
  const y = (ha: number) => TOP + (1 - ha / to) * (HEIGHT - TOP - BOTTOM);
  const right = width - RIGHT;
  const placed = placeSeasons(view.seasons, order, LEFT + 12, right - 8);
  const ticks = Array.from({ length: Math.round(to / step) + 1 }, (_, i) => i * step);
  const first = view.seasons.reduce((a, b) => (b.ha < a.ha ? b : a));
  const last = view.seasons.reduce((a, b) => (b.ha > a.ha ? b : a));
  return (
    <div ref={element}>
      <svg
        className="past-seasons"
        width={width}
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={words.summary(hectares(first.ha), hectares(last.ha), hectares(view.middleHa))}
      >
        {ticks.map((ha) => (
          <g key={ha}>
            <line className={ha === 0 ? 'chart-axis' : 'chart-grid'} x1={LEFT} x2={right} y1={y(ha)} y2={y(ha)} />
            <text className="chart-note" x={LEFT - 6} y={y(ha) + 4} textAnchor="end">
              {amount(ha)}
            </text>
          </g>
        ))}
        <Levels view={view} y={y} right={right} />
        {placed.map(({ season, x }) => (
          <g key={season.year}>
            <title>{words.mark(season.label, hectares(season.ha), words.costs[season.cost])}</title>
            <line className="season-hang" x1={x} x2={x} y1={y(view.suppliedHa)} y2={y(season.ha)} />
            <SeasonMark cost={season.cost} x={x} y={y(season.ha)} />
          </g>
        ))}
        {order === 'year' &&
          yearLabels(placed).map(({ season, x }) => (
            <g key={season.year}>
              <line className="chart-axis" x1={x} x2={x} y1={y(0)} y2={y(0) + 4} />
              <text className="chart-note" x={x} y={HEIGHT - 4} textAnchor="middle">
                {season.label}
              </text>
            </g>
          ))}
        <WorstSeason view={view} placed={placed} y={y} width={width} hectares={hectares} />
      </svg>
    </div>
  );
}

interface Placed {
  readonly season: PastSeason;
  readonly x: number;
}

type Scale = (ha: number) => number;

/** By year along the calendar, so that years left out leave a gap; or from the most hectares to the fewest. */
function placeSeasons(seasons: readonly PastSeason[], order: SeasonOrder, from: number, to: number): Placed[] {
  const sorted = order === 'year' ? seasons : [...seasons].sort((a, b) => b.ha - a.ha || a.year - b.year);
  const start = seasons[0]?.year ?? 0;
  const span = order === 'year' ? (seasons.at(-1)?.year ?? start) - start : seasons.length - 1;
  return sorted.map((season, rank) => {
    const part = span === 0 ? 0.5 : (order === 'year' ? season.year - start : rank) / span;
    return { season, x: Math.round((from + part * (to - from)) * 2) / 2 };
  });
}

/** Every fifth year, or as many as find room; where none of those is a season, each season that finds room. */
function yearLabels(placed: readonly Placed[]): Placed[] {
  const fifths = placed.filter(({ season }) => season.year % 5 === 0);
  const labels: Placed[] = [];
  for (const one of fifths.length > 1 ? fifths : placed)
    if (one.x - (labels.at(-1)?.x ?? Number.NEGATIVE_INFINITY) >= LABEL_GAP) labels.push(one);
  return labels;
}

/** What is planned, supplied and given in the middle season, named at the right. */
function Levels({ view, y, right }: { readonly view: CoverageSeasons; readonly y: Scale; readonly right: number }) {
  const words = useWords().coverage.seasons;
  const levels = [
    { ha: view.plannedHa, line: 'range-planned', name: words.planned },
    { ha: view.suppliedHa, line: 'season-supplied', name: words.supplied },
    { ha: view.middleHa, line: 'season-middle', name: words.middle },
  ];
  let above = Number.NEGATIVE_INFINITY;
  return levels.map(({ ha, line, name }) => {
    above = Math.max(y(ha) + 4, above + LINE_GAP);
    return (
      <g key={name}>
        <line className={line} x1={LEFT} x2={right} y1={y(ha)} y2={y(ha)} />
        <text className="chart-note" x={right + 6} y={above}>
          {name}
        </text>
      </g>
    );
  });
}

interface WorstProps {
  readonly view: CoverageSeasons;
  readonly placed: readonly Placed[];
  readonly y: Scale;
  readonly width: number;
  readonly hectares: Amounts['hectares'];
}

/** Width of a letter on the whole, px at 12 px type. */
const LETTER = 6.1;

/** The worst season by name, below its mark, as far left as it must stand to find room. */
function WorstSeason({ view: { worst }, placed, y, width, hectares }: WorstProps) {
  const words = useWords().coverage.seasons;
  const at = placed.find(({ season }) => season === worst);
  if (!worst || !at) return null;
  const room = width - LEFT - 8;
  const lines = [
    words.worstAt(worst.label, hectares(worst.ha)),
    ...wrapWords(words.worst[worst.cost](hectares(worst.costHa)), Math.floor(room / LETTER)),
  ];
  const longest = Math.max(...lines.map((line) => line.length)) * LETTER;
  const x = Math.max(LEFT + 6, Math.min(at.x - 6, width - longest));
  const top = Math.min(y(worst.ha) + 24, y(0) - 8 - 16 * (lines.length - 1));
  return (
    <text className="chart-callout">
      {lines.map((line, i) => (
        <tspan key={line} className={i === 0 ? 'strong-text' : undefined} x={x} y={top + 16 * i}>
          {line}
        </tspan>
      ))}
    </text>
  );
}

function wrapWords(text: string, most: number): string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1) ?? '';
    if (line !== '' && line.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines;
}
