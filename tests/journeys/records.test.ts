import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { recordsFromFiles } from '../../src/adapters/scenario-files/record-files.ts';
import { isoDate, readScenario } from '../../src/engine/index.ts';
import { readFolderFiles } from '../plan-files.ts';

const folder = fileURLToPath(new URL('../../scenarios/tiny-district/', import.meta.url));
const bytes = new TextEncoder();

/** The tiny district with hand-overs and decisions beside its files, though its scenario.json names neither. */
function read(handovers: readonly string[], decisions: readonly object[] = []) {
  const files = readFolderFiles(folder);
  if (handovers.length > 0) files.set('handovers.csv', bytes.encode(`${handovers.join('\n')}\n`));
  files.set('decisions.json', bytes.encode(JSON.stringify({ format: 'nodulary-decisions/1', decisions })));
  return readScenario(recordsFromFiles(files));
}

const { scenario: sent } = read([]);
if (!sent) throw new Error('the tiny district is blocked');
const [community] = sent.communities;
const lot = sent.lots.find(({ productId }) => sent.products.find(({ id }) => id === productId)?.kind === 'inoculant');
const from = isoDate(sent.planning.from);
const COLUMNS = 'date,community_id,lot_id,packs,box_c,returned_packs,sown_on';
const closed = { kind: 'day-closed', date: from };
const row = (packs: number, box = '', returned = 0, date = from, lotId = lot?.id) =>
  `${date},${community?.id},${lotId},${packs},${box},${returned},`;
const codes = (reading: ReturnType<typeof read>) =>
  reading.problems
    .filter(({ code }) => /^E(1207|1202|1302|1308|19)/.test(code))
    .map(({ code, weight }) => `${code} ${weight}`);

it('a day that is closed is over: what follows is planned from the next day on', () => {
  const reading = read([COLUMNS, row(1)], [closed]);
  expect(reading.scenario?.planning.from).toBe(sent.planning.from + 1);
  expect(reading.scenario?.asOf).toBe(sent.planning.from);
  expect(reading.scenario?.handovers).toHaveLength(1);
  expect(codes(reading)).toEqual(['E1207 noted']);
});

it('a hand-over of a day that is not closed is one of the future', () => {
  expect(codes(read([COLUMNS, row(1)]))).toContain('E1960 set aside');
});

it('the same record twice counts once; two that differ count both and are said; merged files lose no good row', () => {
  const twice = read([COLUMNS, row(1), row(1), row(2), row(1, '', 0, from, 'NO-SUCH-LOT')], [closed]);
  expect(twice.scenario?.handovers.map(({ packs }) => packs)).toEqual([1, 2]);
  expect(codes(twice).sort()).toEqual(['E1207 noted', 'E1308 set aside', 'E1961 set aside', 'E1962 noted']);
});

it('more than a lot held, more back than was handed over, and packs from a hot box are told', () => {
  expect(codes(read([COLUMNS, row((lot?.packs ?? 0) + 1)], [closed]))).toContain('E1963 noted');
  expect(codes(read([COLUMNS, row(2, '', 3)], [closed]))).toContain('E1302 set aside');
  expect(codes(read([COLUMNS, row(2, '41', 2)], [closed]))).toContain('E1964 noted');
});

it('a forecast day that is over is not taken for rain; what is measured is', () => {
  const station = sent.weather[0]?.id ?? '';
  const rainOn = (decisions: readonly object[]) => {
    const own = read([], decisions).scenario?.weather.find(({ id }) => id === station);
    return own?.rainMm[own.days.indexOf(sent.planning.from)];
  };
  expect(rainOn([closed]) ?? Number.NaN).toBeNaN();
  expect(rainOn([closed, { kind: 'rain', stationId: station, date: from, mm: 17.5 }])).toBe(17.5);
  const early = read([], [{ kind: 'rain', stationId: station, date: from, mm: 17.5 }]);
  expect(codes(early)).toEqual(['E1960 set aside']);
});

it('a season whose days are all closed has nothing left to plan, and says so', () => {
  const over = read([], [{ kind: 'day-closed', date: isoDate(sent.planning.to) }]);
  expect(over.scenario).toBeNull();
  expect(codes(over)).toContain('E1202 blocks');
});
