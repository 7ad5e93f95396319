import { describe, expect, it } from 'vitest';
import { problem } from '../../src/engine/index.ts';
import { figureText, figureView } from '../../src/presentation/views/figure-view.ts';
import { dateText, seasonText } from '../../src/presentation/views/frame-view.ts';
import { borderLines, shareTone, zoneLabels } from '../../src/presentation/views/map-view.ts';
import { countProblems, problemEntries, rowsLeftOut } from '../../src/presentation/views/problem-view.ts';
import { percentOf } from '../../src/presentation/views/share-text.ts';
import { pseudoText, pseudoWords } from '../../src/presentation/wording/pseudo.ts';
import { english } from '../../src/presentation/wording/words.ts';
import { planFiles } from '../plan-files.ts';
import { tinyFiles } from './planner-at-hand.ts';

const { plan, scenario } = planFiles(tinyFiles());

describe('an opened figure', () => {
  it('tells formula, source and inputs of every figure that the plan explains', () => {
    expect(plan.provenance.length).toBeGreaterThan(20);
    for (const { figure, inputs } of plan.provenance) {
      const view = figureView(plan, figure, english);
      expect(view?.formula, figure).not.toBe('');
      expect(view?.inputs, figure).toHaveLength(inputs.length);
      for (const { opens } of view?.inputs ?? [])
        if (opens !== null) expect(figureView(plan, opens, english)).not.toBe(null);
    }
  });

  it('takes the table of a column that has no entry of its own, and says nothing where there is none', () => {
    expect(figureView(plan, 'no.such.figure', english)).toBeNull();
    const [first] = plan.provenance;
    expect(figureView(plan, `${first?.figure}.part`, english)?.path).toBe(first?.figure);
  });

  it('is copied with its inputs and how sure each is', () => {
    const view = figureView(plan, plan.provenance[0]?.figure ?? '', english);
    const text = view ? figureText(view, 'Title', '12 ha', english) : '';
    expect(text).toMatch(/^Title: 12 ha\nFormula: .+\nSource: .+/);
    expect(text.split('\n').length).toBe(4 + (view?.inputs.length ?? 0));
  });
});

describe('the problem list', () => {
  const entries = problemEntries(
    [
      problem('E1304', { file: 'depots.csv', row: 3, column: 'opens', value: '6am' }),
      ...[2, 3, 4, 5, 6].map((row) =>
        problem('E1303', { file: 'lots.csv', row, column: 'expires', value: '31/02/27' }),
      ),
      problem('E1120', { value: 'communities' }),
    ],
    english,
  );

  it('puts what blocks first and like problems of one column into one entry', () => {
    expect(entries[0]?.weight).toBe('blocks');
    const lots = entries.find(({ file }) => file === 'lots.csv');
    expect(lots).toMatchObject({ column: 'expires', rows: '2, 3, 4, 5', rowCount: 5 });
    expect(lots && rowsLeftOut(lots)).toBe(1);
    const { blocks, setAside, noted } = countProblems(entries);
    expect(blocks + setAside + noted).toBe(3);
  });

  it('says what it is without repeating where, and what to do', () => {
    const lots = entries.find(({ file }) => file === 'lots.csv');
    expect(lots?.what).toMatch(/^31\/02\/27 is not a date/);
    expect(lots?.remedy).toMatch(/ISO 8601/);
  });
});

describe('the map', () => {
  const square = (x: number): [number, number][][] => [
    [
      [x, 0],
      [x + 1, 0],
      [x + 1, 1],
      [x, 1],
      [x, 0],
    ],
  ];

  it('draws the border that two zones share once, and the outline apart from it', () => {
    const { outer, inner } = borderLines([[square(0)], [square(1)]]);
    expect(inner).toEqual([
      [
        [1, 0],
        [1, 1],
      ],
    ]);
    expect(outer.reduce((edges, line) => edges + line.length - 1, 0)).toBe(6);
  });

  it.each([
    [0, 'share-1'],
    [0.499, 'share-1'],
    [0.5, 'share-2'],
    [0.7, 'share-3'],
    [0.85, 'share-4'],
    [0.95, 'share-5'],
    [0.99, 'share-5'],
    [1, 'share-6'],
  ])('shows a share of %d as %s', (share, tone) => {
    expect(shareTone(share)).toBe(tone);
  });

  it('never takes what is not known for nought', () => {
    expect(shareTone(null)).toBeNull();
    expect(shareTone(Number.NaN)).toBeNull();
  });

  it('puts the name of each zone inside its bounds', () => {
    for (const [zone, { position }] of zoneLabels(scenario, () => null).entries()) {
      const geometry = scenario.zones[zone]?.geometry;
      const positions = geometry?.kind === 'area' ? geometry.polygons.flat(2) : [geometry?.position ?? [0, 0]];
      const lons = positions.map(([lon]) => lon as number);
      expect(position[0]).toBeGreaterThanOrEqual(Math.min(...lons));
      expect(position[0]).toBeLessThanOrEqual(Math.max(...lons));
    }
  });
});

describe('words and figures', () => {
  it('rounds a share, but never to all or to nothing', () => {
    expect([0, 0.001, 0.494, 0.996, 0.9996, 1].map(percentOf)).toEqual(['0', '1', '49', '99', '100', '100']);
  });

  it('writes dates with the month as a word', () => {
    expect(dateText('2026-11-04', english)).toBe('4 Nov 2026');
    expect(
      seasonText({ seasonYear: 2099, seasons: [{ name: 'm', from: { month: 10, day: 1 }, to: { month: 2, day: 1 } }] }),
    ).toBe('2099/00');
  });

  it('lengthens English by about 40 percent and keeps values', () => {
    expect(pseudoText('Groundnut inoculant')).toMatch(/óó|úú|ííí?/);
    for (const text of [english.empty.what, english.problems.explain, english.problems.mendNote]) {
      const growth = pseudoText(text).length / text.length;
      expect(growth).toBeGreaterThan(1.2);
      expect(growth).toBeLessThan(1.5);
    }
    expect(pseudoText('374 packs, 96 %')).toContain('374');
  });

  it('has a word of the other language at every place of the English ones', () => {
    const shapeOf = (part: unknown): unknown =>
      typeof part === 'object' && part !== null
        ? Object.fromEntries(Object.entries(part).map(([name, inner]) => [name, shapeOf(inner)]))
        : typeof part;
    expect(shapeOf(pseudoWords())).toEqual(shapeOf(english));
  });
});
