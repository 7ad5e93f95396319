import type { MultiPolygon, Plan, Position, Scenario } from '../../engine/index.ts';
import { communityShares } from '../views/coverage-zones.ts';
import { districtBounds, zoneLabels } from '../views/map-view.ts';
import { REPORT_WORDING } from '../wording/english/report.ts';
import { escapeHtml } from './html.ts';

const WORDS = REPORT_WORDING.map;
const WIDTH = 640;

const CLASSES = [
  { name: 'all', least: 0.945, fill: '#fff' },
  { name: 'much', least: 0.695, fill: 'url(#some-lines)' },
  { name: 'some', least: Number.MIN_VALUE, fill: 'url(#many-lines)' },
  { name: 'none', least: Number.NEGATIVE_INFINITY, fill: '#16241d' },
] as const;
const NOT_PLANNED = { name: 'notPlanned', fill: '#d9d1be' } as const;

const classOf = (share: number | null | undefined) =>
  share == null ? NOT_PLANNED : (CLASSES.find(({ least }) => share >= least) ?? NOT_PLANNED);

/** Communities hatched by the share of their land expected in time: one ink, so that it prints. Empty where nothing has a place. */
export function reportMap(plan: Plan, scenario: Scenario): string {
  const frame = paperFrame(scenario);
  if (frame === null) return '';
  const shares = communityShares(plan);
  const communities = scenario.communities.map(({ geometry, name }, i) => {
    const { fill } = classOf(shares[i]);
    const look = `fill="${fill}" stroke="#4c5a51" stroke-width="0.6"`;
    const title = `<title>${escapeHtml(name)}</title>`;
    if (geometry.kind === 'area') return `<path ${look} d="${frame.path(geometry.polygons)}">${title}</path>`;
    const [x, y] = frame.place(geometry.position);
    return `<circle ${look} cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="4">${title}</circle>`;
  });
  const zones = scenario.zones.map(({ geometry }) =>
    geometry.kind === 'area'
      ? `<path fill="none" stroke="#16241d" stroke-width="1.6" d="${frame.path(geometry.polygons)}"/>`
      : '',
  );
  const labels = zoneLabels(scenario, () => null).map(({ position, text }) => {
    const [x, y] = frame.place(position);
    return `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="middle" font-size="11" font-weight="700" paint-order="stroke" stroke="#fff" stroke-width="3">${escapeHtml(text)}</text>`;
  });
  const key = [...CLASSES, NOT_PLANNED].map(
    ({ name, fill }) =>
      `<li><svg width="22" height="12" aria-hidden="true"><rect width="21" height="11" x="0.5" y="0.5" fill="${fill}" stroke="#16241d"/></svg> ${WORDS.classes[name]}</li>`,
  );
  return `<figure><svg viewBox="0 0 ${WIDTH} ${frame.height}" width="${WIDTH}" role="img" aria-label="${escapeHtml(WORDS.title)}"><defs>${hatch('some-lines', 6)}${hatch('many-lines', 3)}</defs>${communities.join('')}${zones.join('')}${labels.join('')}</svg><ul class="key">${key.join('')}</ul></figure>`;
}

const hatch = (id: string, step: number) =>
  `<pattern id="${id}" width="${step}" height="${step}" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V${step}" stroke="#16241d" stroke-width="1.4"/></pattern>`;

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
  const ringPath = (ring: readonly Position[]) =>
    `M${ring
      .map((at) =>
        place(at)
          .map((p) => p.toFixed(1))
          .join(' '),
      )
      .join('L')}Z`;
  const path = (polygons: MultiPolygon) => polygons.flat().map(ringPath).join('');
  return { height: Math.ceil((north - south) * scale) || 1, place, path };
}
