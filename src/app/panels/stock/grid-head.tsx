import { cropName } from '../../../presentation/views/stock-goods.ts';
import type { StockGrid } from '../../../presentation/views/stock-grid.ts';
import { useWords } from '../../state/use-stores.ts';

/** Heads of the zones by crops; a head of two words stands on two lines, so that its column may be narrow. */
export function GridHead({ grid }: { readonly grid: StockGrid }) {
  const words = useWords();
  const { stock } = words;
  return (
    <thead>
      <tr>
        <th scope="col">{stock.zone}</th>
        <TwoLines lines={stock.communities} />
        <TwoLines lines={stock.planned} />
        {grid.crops.map((crop) => (
          <th key={crop} scope="colgroup" colSpan={2}>
            {cropName(crop, words)}
          </th>
        ))}
        {grid.scarce !== null && (
          <>
            <TwoLines lines={[words.crops[grid.scarce], stock.needed]} />
            <TwoLines lines={[stock.packsHead, stock.given]} />
          </>
        )}
        <TwoLines lines={stock.allCrops} />
      </tr>
    </thead>
  );
}

function TwoLines({ lines: [above, below] }: { readonly lines: readonly [string, string] }) {
  return (
    <th scope="col" className="number">
      {above}
      <br />
      {below}
    </th>
  );
}
