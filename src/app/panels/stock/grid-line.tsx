import type { Crop } from '../../../engine/index.ts';
import { localNumber, wholePercent, withUnit } from '../../../presentation/local-number.ts';
import type { Cell } from '../../../presentation/views/stock-cells.ts';
import { cropName, goodsName } from '../../../presentation/views/stock-goods.ts';
import type { GridRow } from '../../../presentation/views/stock-grid.ts';
import { ShareBar } from '../../charts/share-bar.tsx';
import { useView, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import type { CellProps } from '../grid-keys.ts';
import { HandoverLink } from '../handover-link.tsx';

interface GridLineProps {
  readonly row: GridRow;
  readonly scarce: Crop | null;
  readonly isChosen: boolean;
  /** Index of the crop whose share is being fixed. */
  readonly edited: number | null;
  readonly cellAt: (column: number) => CellProps;
  readonly onEdit: (crop: number) => void;
}

/** One zone, one community or the sum. */
export function GridLine({ row, scarce, isChosen, edited, cellAt, onEdit }: GridLineProps) {
  const words = useWords();
  const { stock } = words;
  const { name } = row;
  const afterCrops = 3 + 2 * row.cells.length;
  const kind = row.communityId !== null ? 'is-community' : row.key === 'all' ? 'is-sum' : '';
  return (
    <tr aria-selected={isChosen} className={kind} data-zone={row.communityId === null ? row.zoneId : undefined}>
      <th scope="row">
        <RowName row={row} cell={cellAt(0)} isChosen={isChosen} />
      </th>
      <td className="number">
        <Figure path="places.shares.share" title={stock.communitiesTitle(name)} cell={cellAt(1)}>
          {localNumber(row.communities, words)}
        </Figure>
      </td>
      <td className="number">
        <Figure path="needs.plannedHa" title={stock.plannedTitle(name)} cell={cellAt(2)}>
          {localNumber(row.plannedHa, words, 1)}
        </Figure>
      </td>
      {row.cells.map((cell, crop) => (
        <CropCells
          key={cell.crop}
          cell={cell}
          place={name}
          isEdited={crop === edited}
          bar={cellAt(3 + 2 * crop)}
          figure={cellAt(4 + 2 * crop)}
          onEdit={row.key === 'all' ? null : () => onEdit(crop)}
        />
      ))}
      {scarce !== null && (
        <>
          <td className="number">
            <Figure
              path="needs.packsNeeded"
              title={stock.neededTitle(goodsName(scarce, 'inoculant', words), name)}
              cell={cellAt(afterCrops)}
            >
              {localNumber(Math.ceil(row.packsNeeded - 1e-6), words)}
            </Figure>
          </td>
          <td className={row.packsGiven < row.packsNeeded - 0.5 ? 'number firm' : 'number'}>
            <Figure
              path="allocation.grants.packs"
              title={stock.givenTitle(goodsName(scarce, 'inoculant', words), name)}
              cell={cellAt(afterCrops + 1)}
            >
              {localNumber(row.packsGiven, words)}
            </Figure>
          </td>
        </>
      )}
      <td className="number firm">
        <Figure
          path="outcomes.crops.inoculatedHa"
          title={stock.allCropsTitle(name)}
          cell={cellAt(afterCrops + (scarce === null ? 0 : 2))}
        >
          {withUnit(localNumber(wholePercent(row.share), words), '%')}
        </Figure>
      </td>
    </tr>
  );
}

/** A zone's or community's name, which chooses it on the map. */
function RowName({
  row,
  cell,
  isChosen,
}: {
  readonly row: GridRow;
  readonly cell: CellProps;
  readonly isChosen: boolean;
}) {
  const chooseZone = useView((view) => view.chooseZone);
  const chooseCommunity = useView((view) => view.chooseCommunity);
  const choose = () => {
    if (row.communityId !== null) chooseCommunity(null, row.zoneId);
    else chooseZone(isChosen ? null : row.zoneId);
  };
  return (
    <>
      <button type="button" className="row-name" {...cell} onClick={choose}>
        {row.name}
        {row.cutOff > 0 && row.key !== 'all' && ' †'}
      </button>
      {row.communityId !== null && <HandoverLink community={row.communityId} name={row.name} zone={row.zoneId} />}
    </>
  );
}

interface CropCellsProps {
  readonly cell: Cell;
  readonly place: string;
  readonly isEdited: boolean;
  readonly bar: CellProps;
  readonly figure: CellProps;
  /** Null where the cell cannot be fixed. */
  readonly onEdit: (() => void) | null;
}

/** A crop's share as a bar, which is fixed by hand, and as a figure, which opens. */
function CropCells({ cell, place, isEdited, bar, figure, onEdit }: CropCellsProps) {
  const words = useWords();
  const { stock } = words;
  const crop = cropName(cell.crop, words);
  if (cell.share === null) {
    return (
      <>
        <td {...bar} />
        <td {...figure} className="number soft">
          –
        </td>
      </>
    );
  }
  const shown = localNumber(wholePercent(cell.share), words);
  const marks = cell.fixed.flatMap(({ share }) => (share === null ? [] : [share]));
  return (
    <>
      {onEdit === null || cell.communityIds.length === 0 ? (
        <td className="bar-cell" {...bar}>
          <ShareBar land={cell.land} />
        </td>
      ) : (
        <td className={isEdited ? 'bar-cell is-edited' : 'bar-cell'}>
          <button
            type="button"
            className="bar-button"
            aria-label={stock.fixCell(crop, place, withUnit(shown, '%'))}
            {...bar}
            onClick={onEdit}
          >
            <ShareBar land={cell.land} marks={marks} />
          </button>
        </td>
      )}
      <td className="number">
        <Figure path="outcomes.crops.inoculatedHa" title={stock.cellTitle(crop, place)} cell={figure}>
          {shown}
        </Figure>
        {onEdit !== null && cell.fixed.length > 0 && <span className="fixed-mark">{fixedText(cell, words)}</span>}
      </td>
    </>
  );
}

/** `fixed` where the plan has the share already, else with the share that the next plan will hold. */
function fixedText({ fixed, share, land }: Cell, words: ReturnType<typeof useWords>): string {
  const [first] = fixed;
  if (!first || first.share === null) return words.stock.partlyFixed;
  const planned = first.commodity === 'seed' ? land.seedHa / Math.max(land.plannedHa, 1e-9) : (share ?? 0);
  const isThere = Math.abs(planned - first.share) < 0.015;
  return isThere ? words.stock.fixedMark : words.stock.fixedAt(localNumber(Math.round(first.share * 100), words));
}
