import type {
  AllocationDifference,
  CellDifference,
  Commodity,
  CommodityDifference,
  Crop,
  LotDifference,
  Scenario,
} from '../../engine/index.ts';
import { localNumber, noBreaks, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { goodsName } from './stock-goods.ts';

/** Two allocations side by side, in words. */
export interface DifferencesView {
  /** Who gains and who loses how much land, over all crops. */
  readonly price: string;
  /** One line a crop and commodity that differs. */
  readonly goods: readonly string[];
  /** Communities that differ most, first those that lose. */
  readonly cells: readonly string[];
  readonly lots: readonly string[];
}

const SHOWN = 8;

/** What differs between two allocations, to be said before one of them is chosen. */
export function differencesView(difference: AllocationDifference, scenario: Scenario, words: Words): DifferencesView {
  const change = (cell: CellDifference) => cell.hectaresAfter - cell.hectaresBefore;
  const [losers, winners] = [
    difference.cells.filter((cell) => change(cell) < 0),
    difference.cells.filter((cell) => change(cell) > 0),
  ];
  return {
    price: priceText(winners, losers, words),
    goods: difference.commodities.map((one) => goodsText(one, words)),
    cells: [...cellTexts(losers, scenario, words), ...cellTexts(winners, scenario, words)],
    lots: difference.lots.map((lot) => lotText(lot, scenario, words)),
  };
}

const hectares = (value: number, words: Words) => withUnit(localNumber(value, words, 1), 'ha');
const percent = (share: number, words: Words) => withUnit(localNumber(wholePercent(share), words), '%');

function priceText(winners: readonly CellDifference[], losers: readonly CellDifference[], words: Words): string {
  const said = words.stock.differences;
  const sum = (cells: readonly CellDifference[]) =>
    hectares(
      cells.reduce((total, cell) => total + Math.abs(cell.hectaresAfter - cell.hectaresBefore), 0),
      words,
    );
  const count = (cells: readonly CellDifference[]) => {
    const communities = new Set(cells.map(({ communityId }) => communityId)).size;
    return noBreaks(words.stock.inCommunities(localNumber(communities, words), communities === 1));
  };
  if (winners.length === 0 && losers.length === 0) return said.none;
  if (losers.length === 0) return said.onlyGain(sum(winners), count(winners));
  if (winners.length === 0) return said.onlyLose(sum(losers), count(losers));
  return said.price(sum(winners), count(winners), sum(losers), count(losers));
}

function goodsText(one: CommodityDifference, words: Words): string {
  const said = words.stock.differences;
  const moved = one.hectaresAfter - one.hectaresBefore;
  const land =
    Math.abs(moved) < 0.05 ? said.sameLand : (moved > 0 ? said.more : said.less)(hectares(Math.abs(moved), words));
  const [before, after] = [percent(one.leastBefore, words), percent(one.leastAfter, words)];
  const least = before === after ? said.leastStays(before) : said.least(before, after);
  return `${said.land(goodsName(one.crop as Crop, one.commodity as Commodity, words), land)}, ${least}`;
}

function cellTexts(cells: readonly CellDifference[], { communities }: Scenario, words: Words): string[] {
  const said = words.stock.differences;
  const names = new Map(communities.map(({ id, name }) => [id, name || id]));
  const texts = cells
    .slice(0, SHOWN)
    .map(({ communityId, crop, commodity, shareBefore, shareAfter }) =>
      said.cell(
        names.get(communityId) ?? communityId,
        goodsName(crop as Crop, commodity, words).toLowerCase(),
        percent(shareBefore, words),
        percent(shareAfter, words),
      ),
    );
  return cells.length > SHOWN ? [...texts, said.others(localNumber(cells.length - SHOWN, words))] : texts;
}

/** A lot that the scenario does not have is one that would be bought: its id names product and depot. */
function lotText({ lotId, packsBefore, packsAfter }: LotDifference, { lots }: Scenario, words: Words): string {
  const said = words.stock.differences;
  const after = localNumber(packsAfter, words);
  if (!lots.some(({ id }) => id === lotId)) return said.newLot(lotId, after);
  return said.lot(lotId, localNumber(packsBefore, words), after);
}
