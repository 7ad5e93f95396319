import type { FigureInput, Plan, ReplayedPlan, Scenario } from '../../engine/index.ts';
import { seasonLabel } from '../views/coverage-seasons.ts';
import { PROBLEM_WORDING } from '../wording/english/problems.ts';
import { REPORT_WORDING as WORDS } from '../wording/english/report.ts';
import { escapeHtml, type Figure, figuresOf, list, paragraph, section, table } from './html.ts';
import { reportMap } from './report-map.ts';
import {
  grainSection,
  moneySection,
  nitrogenSection,
  peopleSection,
  seasonsSection,
  stepsSection,
} from './report-sections.ts';
import { REPORT_STYLE } from './report-style.ts';

export interface ReportParts {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly printed: ReplayedPlan;
  readonly zoneNames: readonly (string | null)[];
}

/** The report on a plan: one HTML file that needs nothing beside it, on a screen or on paper. */
export function renderReport({ plan, scenario, printed, zoneNames }: ReportParts): string {
  const show = figuresOf(plan, WORDS.none);
  const { asOf, planningFrom, planningTo, name, seasonYear } = plan.scenario;
  const title = escapeHtml(WORDS.title(name, seasonLabel(seasonYear, scenario)));
  const map = reportMap(plan, scenario);
  const body = [
    `<header><h1>${title}</h1>${paragraph(WORDS.subtitle(asOf, planningFrom, planningTo))}</header>`,
    `<p class="caution">${escapeHtml(WORDS.notYet)}</p>`,
    paragraph(WORDS.range),
    stepsSection(plan, scenario, show),
    nitrogenSection(plan, show),
    grainSection(plan, show),
    moneySection(plan, show),
    peopleSection(show),
    seasonsSection(plan, scenario, show, { printed, zoneNames }),
    map === '' ? '' : section(WORDS.map.title, map),
    methodSection(plan),
    againSection(plan, show),
  ];
  return `<!doctype html>
<html lang="${WORDS.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"><title>${title}</title><style>${REPORT_STYLE}</style></head>
<body>${body.join('\n')}</body></html>
`;
}

/** Every figure of the outcomes with its formula, and what is assumed or from memory behind it. */
function methodSection({ provenance, problems }: Plan): string {
  const words = WORDS.method;
  const figures = provenance.filter(({ figure }) => figure.startsWith('outcomes.headline'));
  const inputs = new Map<string, FigureInput>();
  for (const input of provenance.filter(({ figure }) => figure.startsWith('outcomes')).flatMap((one) => one.inputs))
    if (!input.from.startsWith('figure:')) inputs.set(`${input.from}|${input.name}`, input);
  const ofInput = ({ name, value, unit, source, status }: FigureInput) =>
    [name, value === undefined ? words.differs : `${value} ${unit === '1' ? '' : unit}`, status, source].map(
      escapeHtml,
    );
  const said = problems.map((problem) => {
    const { what, remedy } = PROBLEM_WORDING[problem.code];
    return `${problem.code}: ${what(problem)} ${remedy}`;
  });
  return `<div class="sources">${section(
    words.title,
    list(words.cautions),
    table(
      [words.figure, words.formula, words.status],
      figures.map(({ figure, formula, status }) =>
        [figure.replace('outcomes.headline.', ''), formula, status].map(escapeHtml),
      ),
      words.figures,
    ),
    table([words.input, words.value, words.status, words.source], [...inputs.values()].map(ofInput), words.inputs),
    `<h3>${words.problems}</h3>`,
    said.length > 0 ? list([...new Set(said)]) : paragraph(words.noProblems),
  )}</div>`;
}

function againSection(plan: Plan, show: Figure): string {
  const words = WORDS.again;
  const code = (text: string) => `<code>${escapeHtml(text)}</code>`;
  return section(
    words.title,
    paragraph(words.text),
    `<div class="sources">${table(
      ['', ''],
      [
        [words.scenario, code(plan.scenarioSha256)],
        [words.decisions, code(plan.decisionsSha256)],
        [words.seed, show('seed')],
        [words.iterations, show('iterations')],
        [words.engine, code(plan.engineVersion)],
      ],
    )}</div>`,
  );
}
