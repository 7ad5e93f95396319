import type { CostParts, Plan, Range, ReplayedPlan, Scenario } from '../../engine/index.ts';
import { worstSeasons } from '../../engine/index.ts';
import { explainSeason } from '../explain-season.ts';
import { grouped } from '../grouped-figure.ts';
import { seasonLabel } from '../views/coverage-seasons.ts';
import { REPLAY_WORDING } from '../wording/english/replay.ts';
import { REPORT_WORDING as WORDS } from '../wording/english/report.ts';
import { escapeHtml, type Figure, list, paragraph, section, table } from './html.ts';

const HEADLINE = 'outcomes.headline';

/** A row of a table of ranges: name, low, middle, high. */
const rangeRow = (show: Figure, name: string, path: string, decimals = 0): string[] => [
  escapeHtml(name),
  ...(['p10', 'p50', 'p90'] as const).map((end) => show(`${path}.${end}`, decimals)),
];
const RANGE_HEAD = Object.values(WORDS.head);

/** From plan to field: the district and its zones. What is not signed for is said to be nothing yet. */
export function stepsSection(plan: Plan, scenario: Scenario, show: Figure): string {
  const words = WORDS.steps;
  const { zones } = plan.outcomes;
  const isSigned = scenario.handovers.length > 0;
  const signed = (path: string, otherwise: string) => (isSigned ? show(path, 1) : escapeHtml(otherwise));
  const between = (path: string) =>
    `<span class="one-line">${show(`${path}.p10`, 1)} ${WORDS.to} ${show(`${path}.p90`, 1)}</span>`;
  const head = ['zone', 'planned', 'expected', 'range', 'signedFor', 'sown', 'chance', 'nitrogen'] as const;
  const all = [
    `<b>${words.all}</b>`,
    show(`${HEADLINE}.plannedHa`, 1),
    show(`${HEADLINE}.reachedHa.p50`, 1),
    between(`${HEADLINE}.reachedHa`),
    signed(`${HEADLINE}.signedForHa`, WORDS.nothingYet),
    signed(`${HEADLINE}.sownHa`, WORDS.nothingYet),
    WORDS.none,
    show(`${HEADLINE}.nitrogenKg.p50`),
  ];
  const rows = zones.zone.map((zone, row) => {
    const at = (column: string) => `outcomes.zones.${column}.${row}`;
    return [
      escapeHtml(scenario.zones[zone]?.name ?? words.outside),
      show(at('plannedHa'), 1),
      show(`${at('reachedRange')}.p50`, 1),
      between(at('reachedRange')),
      signed(at('signedForHa'), WORDS.none),
      signed(at('sownHa'), WORDS.none),
      show(at('inTimeChance'), 2),
      show(`${at('nitrogenKg')}.p50`),
    ];
  });
  return section(
    words.title,
    table(
      head.map((name) => escapeHtml(words[name])),
      [all, ...rows],
    ),
    paragraph(words.note),
  );
}

export function nitrogenSection({ outcomes: { headline } }: Plan, show: Figure): string {
  const words = WORDS.nitrogen;
  const rows = [
    rangeRow(show, words.all, `${HEADLINE}.nitrogenKg`),
    rangeRow(show, words.inoculation, `${HEADLINE}.inoculationNitrogenKg`),
    ...(headline.fertilisedHa > 0 ? [rangeRow(show, words.phosphorus, `${HEADLINE}.phosphorusNitrogenKg`)] : []),
    rangeRow(show, words.atMost, `${HEADLINE}.inoculationAtMostKg`),
    rangeRow(show, words.net, `${HEADLINE}.netNitrogenKg`),
  ];
  const apart = [
    [escapeHtml(words.earlier), show(`${HEADLINE}.central.earlierNitrogenKg`)],
    [escapeHtml(words.residue), show(`${HEADLINE}.central.residueNitrogenKg`)],
  ];
  const path = `${HEADLINE}.programmeNitrogenKg`;
  return section(
    words.title,
    `<p class="big">${show(`${path}.p50`)} kg (${show(`${path}.p10`)} ${WORDS.to} ${show(`${path}.p90`)})</p>`,
    paragraph(words.programme),
    table(RANGE_HEAD, rows),
    table([words.central, ''], apart),
    list(words.cautions),
  );
}

export function grainSection({ outcomes: { headline } }: Plan, show: Figure): string {
  const words = WORDS.grain;
  const rows = [
    rangeRow(show, words.all, `${HEADLINE}.grainT`, 1),
    rangeRow(show, words.programme, `${HEADLINE}.programmeGrainT`, 1),
    rangeRow(show, words.inoculation, `${HEADLINE}.inoculationGrainT`, 1),
    ...(headline.fertilisedHa > 0 ? [rangeRow(show, words.phosphorus, `${HEADLINE}.phosphorusGrainT`, 1)] : []),
  ];
  return section(words.title, table(RANGE_HEAD, rows), paragraph(words.note));
}

const COST_PARTS = [
  'inoculant',
  'otherGoods',
  'kilometres',
  'vehicleDays',
  'crews',
  'ice',
  'training',
  'testing',
] as const satisfies readonly (keyof CostParts)[];

export function moneySection(plan: Plan, show: Figure): string {
  const words = WORDS.money;
  const { headline } = plan.outcomes;
  const parts = COST_PARTS.map((part) => [
    escapeHtml(words[part]),
    headline.cost[part] === null ? escapeHtml(words.notPriced) : show(`${HEADLINE}.cost.${part}`),
  ]);
  const ranged = (name: string, key: 'costPerHectare' | MoneyRange, decimals: number) => {
    const range: Range | null = headline[key];
    return range ? rangeRow(show, name, `${HEADLINE}.${key}`, decimals) : [escapeHtml(name), WORDS.unstated, '', ''];
  };
  return section(
    words.title(plan.scenario.currency),
    table([words.part, ''], parts),
    table(RANGE_HEAD, [
      ranged(words.perHectare, 'costPerHectare', 1),
      ranged(words.programmeWorth, 'programmeGrainWorth', 0),
      ranged(words.inoculationWorth, 'inoculationGrainWorth', 0),
      ranged(words.ratio, 'valueCostRatio', 1),
      ranged(words.inoculantRatio, 'inoculantValueCostRatio', 1),
    ]),
    paragraph(words.ratioNote),
    residualTable(headline.residualWorth !== null, show),
  );
}

type MoneyRange = 'programmeGrainWorth' | 'inoculationGrainWorth' | 'valueCostRatio' | 'inoculantValueCostRatio';

function residualTable(isPriced: boolean, show: Figure): string {
  const words = WORDS.money;
  const worth = `${HEADLINE}.residualWorth`;
  return table(
    ['', words.least, words.most],
    [
      [
        escapeHtml(words.residual),
        show(`${HEADLINE}.residualNitrogenKg.least`),
        show(`${HEADLINE}.residualNitrogenKg.most`),
      ],
      [
        escapeHtml(words.residualWorth),
        ...(isPriced ? [show(`${worth}.least`), show(`${worth}.most`)] : [WORDS.unstated, '']),
      ],
      [escapeHtml(words.brought), show(`${HEADLINE}.broughtSeedHa`, 1), ''],
    ],
    escapeHtml(words.residualTitle),
  );
}

export function peopleSection(show: Figure): string {
  const words = WORDS.people;
  return section(
    words.title,
    table(RANGE_HEAD, [
      rangeRow(show, words.expected, `${HEADLINE}.farmersReached`),
      [escapeHtml(words.planned), '', show(`${HEADLINE}.farmers`), ''],
      [escapeHtml(words.women), '', show(`${HEADLINE}.womenShare`, 2), ''],
    ]),
    paragraph(words.note),
  );
}

export function seasonsSection(
  plan: Plan,
  scenario: Scenario,
  show: Figure,
  replayed: { readonly printed: ReplayedPlan; readonly zoneNames: readonly (string | null)[] },
): string {
  const words = WORDS.seasons;
  const { year } = plan.outcomes.seasons;
  if (year.length === 0) return section(words.title, paragraph(words.none));
  const columns = ['reachedHa', 'noOnsetHa', 'lateHa', 'hotHa', 'waitingHa', 'weakHa'] as const;
  const head = [words.season, words.reached, words.noOnset, words.late, words.hot, words.waiting, words.weak];
  const rows = year.map((of, row) => [
    escapeHtml(seasonLabel(of, scenario)),
    ...columns.map((column) => show(`outcomes.seasons.${column}.${row}`, 1)),
  ]);
  const worst = worstSeasons(replayed.printed, 3).map((season) =>
    explainSeason(season, replayed.printed, { scenario, zoneNames: replayed.zoneNames }, REPLAY_WORDING, grouped),
  );
  return section(
    words.title,
    table(head, rows),
    paragraph(words.note),
    `<div class="told"><h3>${words.worst}</h3>${list(worst)}</div>`,
  );
}
