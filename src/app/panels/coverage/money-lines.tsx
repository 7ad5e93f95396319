import type { Range } from '../../../engine/index.ts';
import { type CoverageMoney, coverageMoney } from '../../../presentation/views/coverage-money.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { useAmounts } from './use-amounts.ts';

/** What it costs, and the part of the nitrogen that may be priced; where a price is missing, which. */
export function MoneyLines() {
  const { plan, scenario } = useSeason();
  if (!plan || !scenario) return null;
  const view = coverageMoney(plan, scenario);
  return (
    <div className="money-lines">
      <Cost view={view} currency={scenario.currency} />
      <Residual view={view} currency={scenario.currency} />
      <Missing view={view} />
    </div>
  );
}

interface LineProps {
  readonly view: CoverageMoney;
  readonly currency: string;
}

function Cost({ view: { goods, delivery, perHectare, deliveryPerHectare }, currency }: LineProps) {
  const { money } = useAmounts();
  const words = useWords().coverage.money;
  if (goods === null && delivery === null) return null;
  return (
    <p>
      {goods !== null && (
        <>
          {words.goods}{' '}
          <Figure path="outcomes.headline.goodsCost" title={words.goodsTitle}>
            {money(goods, currency)}
          </Figure>
          {delivery === null ? '.' : ', '}
        </>
      )}
      {delivery !== null && (
        <>
          {goods === null ? words.deliveryFirst : words.delivery}{' '}
          <Figure path="outcomes.headline.deliveryCost" title={words.deliveryTitle}>
            {money(delivery, currency)}
          </Figure>
          {perHectare ? ': ' : ', '}
        </>
      )}
      {perHectare && <PerHectare range={perHectare} currency={currency} />}
      {deliveryPerHectare !== null && (
        <>
          {' '}
          {perHectare && `${words.deliveryAlone} `}
          <Figure path="outcomes.headline.deliveryPerHectare" title={words.deliveryPerHectareTitle}>
            {money(deliveryPerHectare, currency)}
          </Figure>
          {!perHectare && ` ${words.perHectare}`}.
        </>
      )}
    </p>
  );
}

function PerHectare({ range: { p10, p50, p90 }, currency }: { readonly range: Range; readonly currency: string }) {
  const { money, moneyAlone } = useAmounts();
  const words = useWords().coverage.money;
  const [low, high] = [moneyAlone(p10, currency), moneyAlone(p90, currency)];
  return (
    <>
      <b>
        <Figure path="outcomes.headline.costPerHectare" title={words.perHectareTitle}>
          {money(p50, currency)}
        </Figure>{' '}
        {words.perHectare}
      </b>
      {low !== high && <span className="soft"> {words.perHectareRange(low, high)}</span>}
      {'; '}
    </>
  );
}

function Residual({ view: { residual }, currency }: LineProps) {
  const { amount, hectares, money, moneyAlone, tonnes } = useAmounts();
  const all = useWords().coverage;
  const words = all.money;
  if (residual === null) return null;
  const { worth, pricePerKg } = residual;
  return (
    <p>
      {words.residual}{' '}
      <Figure path="outcomes.headline.residualNitrogenKg" title={words.residualTitle}>
        {`${words.to(tonnes(residual.leastKg), tonnes(residual.mostKg))}\u00a0${all.unit.t}`}
      </Figure>{' '}
      {words.residualLess(amount(residual.leastKgPerHa), amount(residual.mostKgPerHa))}{' '}
      <Figure path="outcomes.headline.broughtSeedHa" title={words.broughtTitle}>
        {`${hectares(residual.hectares)}\u00a0${all.unit.ha}`}
      </Figure>{' '}
      {words.brought}
      {worth !== null && pricePerKg !== null && (
        <>
          {words.worthIs}{' '}
          <Figure path="outcomes.headline.residualWorth" title={words.worthTitle}>
            {words.to(money(worth.least, currency), moneyAlone(worth.most, currency))}
          </Figure>{' '}
          {words.worthAt(money(pricePerKg, currency))}{' '}
        </>
      )}
      {worth === null && words.unpriced} <span className="soft">{words.notSaved}</span>
    </p>
  );
}

function Missing({ view }: { readonly view: CoverageMoney }) {
  const words = useWords().coverage.money;
  const missing = [
    view.goods === null && words.missingGoods(String(view.productsWithoutPrice.length)),
    view.delivery === null && words.missingDelivery,
    view.residual !== null && view.residual.pricePerKg === null && words.missingNitrogen,
  ].filter((line) => line !== false);
  if (missing.length === 0) return null;
  return (
    <p>
      <b>{words.missing}</b> {missing.join('; ')}.
    </p>
  );
}
