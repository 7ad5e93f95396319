import type { MultiPolygon, Position, Scenario } from '../../../engine/index.ts';
import { communityShares } from '../../../presentation/views/coverage-zones.ts';
import { asOfText, seasonText } from '../../../presentation/views/frame-view.ts';
import { districtBounds, zoneLabels } from '../../../presentation/views/map-view.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { useIsPrinting } from './use-is-printing.ts';

/** What a printed page needs and the screen shows in its header: whose season, as of when, which plan. */
export function PrintHead() {
  const words = useWords();
  const { plan, scenario } = useSeason();
  if (!useIsPrinting() || !plan || !scenario) return null;
  const text = words.coverage.print;
  return (
    <p className="print-head">
      <b>{text.title(scenario.name, seasonText(scenario))}</b>{' '}
      {text.made(asOfText(scenario, words), plan.scenarioSha256.slice(0, 12))}
    </p>
  );
}

const CLASSES = [
  { name: 'all', least: 0.945 },
  { name: 'much', least: 0.695 },
  { name: 'some', least: Number.MIN_VALUE },
  { name: 'none', least: Number.NEGATIVE_INFINITY },
] as const;

const classOf = (share: number | null) =>
  share === null ? 'notPlanned' : (CLASSES.find(({ least }) => share >= least)?.name ?? 'none');

const WIDTH = 640;
const PRINT_CLASSES = ['all', 'much', 'some', 'none', 'notPlanned'] as const;

/** The map on paper: four hatches in one ink, because the screen's map is a picture that printers may leave out. */
export function PrintMap() {
  const words = useWords().coverage.print;
  const { plan, scenario } = useSeason();
  if (!useIsPrinting() || !plan || !scenario) return null;
  const frame = paperFrame(scenario);
  if (frame === null) return null;
  const shares = communityShares(plan);
  return (
    <figure className="print-map">
      <figcaption>{words.mapTitle}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${frame.height}`} role="img" aria-label={words.mapTitle}>
        <Hatches />
        {scenario.communities.map(({ id, geometry }, i) => {
          const name = classOf(shares[i] ?? null);
          if (geometry.kind === 'area')
            return <path key={id} className={`paper-${name}`} d={frame.path(geometry.polygons)} />;
          const [x, y] = frame.place(geometry.position);
          return <circle key={id} className={`paper-${name}`} cx={x} cy={y} r="5" />;
        })}
        {scenario.zones.map(({ id, geometry }) =>
          geometry.kind === 'area' ? <path key={id} className="paper-zone" d={frame.path(geometry.polygons)} /> : null,
        )}
        {zoneLabels(scenario, () => null).map(({ position, text }) => {
          const [x, y] = frame.place(position);
          return (
            <text key={text} className="paper-label" x={x} y={y} textAnchor="middle">
              {text}
            </text>
          );
        })}
      </svg>
      <ul className="swatches">
        {PRINT_CLASSES.map((name) => (
          <li key={name}>
            <svg width="22" height="12" aria-hidden="true">
              <rect className={`paper-${name}`} width="22" height="12" />
            </svg>
            {words.classes[name]}
          </li>
        ))}
      </ul>
    </figure>
  );
}

function Hatches() {
  return (
    <defs>
      <pattern id="paper-much" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V6" stroke="#000" strokeWidth="1" />
      </pattern>
      <pattern id="paper-some" width="3" height="3" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V3" stroke="#000" strokeWidth="1.6" />
      </pattern>
      <pattern id="paper-none" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V6M0 0H6" stroke="#000" strokeWidth="1.4" />
      </pattern>
    </defs>
  );
}

/** Longitude and latitude on paper: true to scale along the district's middle parallel. */
function paperFrame(scenario: Scenario) {
  const bounds = districtBounds(scenario);
  if (bounds === null) return null;
  const [west, south, east, north] = bounds;
  const squeeze = Math.cos((((south + north) / 2) * Math.PI) / 180);
  const scale = WIDTH / Math.max((east - west) * squeeze, 1e-9);
  const place = ([lon, lat]: Position): readonly [number, number] => [
    (lon - west) * squeeze * scale,
    (north - lat) * scale,
  ];
  const path = (polygons: MultiPolygon) =>
    polygons
      .flat()
      .map(
        (ring) =>
          `M${ring
            .map((at) =>
              place(at)
                .map((p) => p.toFixed(1))
                .join(' '),
            )
            .join('L')}Z`,
      )
      .join('');
  return { height: Math.ceil((north - south) * scale) || 1, place, path };
}
