import type { ReactNode } from 'react';
import { coverageFigures, type FourSteps, type RangeFigure } from '../../../presentation/views/coverage-view.ts';
import { RangeBar } from '../../charts/range-bar.tsx';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { useAmounts } from './use-amounts.ts';

/** The figures of the view with their ranges: land and growers on the left, nitrogen on one scale on the right. */
export function RangeFigures() {
  const { amount, hectares, tonnes } = useAmounts();
  const words = useWords().coverage;
  const { plan, scenario } = useSeason();
  if (!plan || !scenario) return null;
  const view = coverageFigures(plan, scenario);
  const { figures } = words;
  const tonnesText = (kg: number) => `${tonnes(kg)}\u00a0${words.unit.t}`;
  const people = (count: number) => amount(count);
  return (
    <div className="range-figures">
      <div>
        <RangeOf big name={figures.expectedHa} title={figures.expectedHaTitle} range={view.expectedHa} text={hectares}>
          {figures.dashesPlanned(hectares(view.steps.planned))}
        </RangeOf>
        <RangeOf name={figures.farmers} title={figures.farmersTitle} range={view.farmers} text={people}>
          {view.womenPercent === null ? (
            figures.ofFarmers(people(view.farmers.planned ?? 0))
          ) : (
            <>
              {figures.ofFarmersWomen(people(view.farmers.planned ?? 0))}{' '}
              <Figure path="outcomes.headline.womenShare" title={figures.womenTitle}>
                {`${amount(view.womenPercent)}\u00a0%`}
              </Figure>
            </>
          )}
        </RangeOf>
        <Steps steps={view.steps} />
      </div>
      <div>
        <RangeOf
          big
          name={figures.programmeNitrogen}
          title={figures.programmeNitrogenTitle}
          range={view.programmeNitrogen}
          text={tonnesText}
        >
          {figures.seedAndAll}
        </RangeOf>
        <RangeOf name={figures.allNitrogen} title={figures.allNitrogen} range={view.allNitrogen} text={tonnesText}>
          {figures.allNote}
        </RangeOf>
        <RangeOf name={figures.inoculation} title={figures.inoculationTitle} range={view.inoculation} text={tonnesText}>
          {figures.inoculationNote}
        </RangeOf>
        {view.phosphorus && (
          <RangeOf
            name={figures.phosphorus}
            title={figures.phosphorusTitle}
            range={view.phosphorus.nitrogen}
            text={tonnesText}
          >
            {figures.fertiliserFor}{' '}
            <Figure path="outcomes.headline.fertilisedHa" title={figures.fertilisedTitle}>
              {`${hectares(view.phosphorus.hectares)}\u00a0${words.unit.ha}`}
            </Figure>
            {figures.moreGrain}{' '}
            <Figure path="outcomes.headline.phosphorusGrainT.p50" title={figures.phosphorusGrainTitle}>
              {`${amount(view.phosphorus.grainT)}\u00a0${words.unit.t}`}
            </Figure>
            .
          </RangeOf>
        )}
      </div>
    </div>
  );
}

interface RangeOfProps {
  readonly name: string;
  readonly title: string;
  readonly range: RangeFigure;
  readonly text: (value: number) => string;
  readonly big?: boolean;
  readonly children: ReactNode;
}

function RangeOf({ name, title, range, text, big = false, children }: RangeOfProps) {
  const { figures } = useWords().coverage;
  const [low, high] = [text(range.low), text(range.high)];
  // The unit stands once, behind the second figure.
  const lowAlone = low.replace(/\u00a0[a-z]+$/, '');
  return (
    <section className="range-of">
      <h2>{name}</h2>
      <p className={big ? 'range-big' : 'range-lesser'}>
        <Figure path={range.path} title={title}>
          {text(range.middle)}
        </Figure>
      </p>
      <RangeBar range={range} />
      <p className="note">
        {low === high ? figures.noRange(low) : figures.range(lowAlone, high)} {children}
      </p>
    </section>
  );
}

/** From plan to field: what was planned and expected, what was signed for, what was sown. */
function Steps({ steps: { planned, expected, signedFor, sown } }: { readonly steps: FourSteps }) {
  const { hectares } = useAmounts();
  const words = useWords().coverage.stages;
  const ha = (value: number) => words.ha(hectares(value));
  return (
    <dl className="four-steps">
      <div>
        <dt>{words.planned}</dt>
        <dd>
          <Figure path="outcomes.headline.plannedHa" title={words.planned}>
            {ha(planned)}
          </Figure>
        </dd>
      </div>
      <div>
        <dt>{words.expected}</dt>
        <dd>
          <Figure path="outcomes.headline.reachedHa" title={words.expected}>
            {ha(expected)}
          </Figure>
        </dd>
      </div>
      <Told
        name={words.signedFor}
        path="outcomes.headline.signedForHa"
        title={words.signedForTitle}
        value={signedFor}
      />
      <Told name={words.sown} path="outcomes.headline.sownHa" title={words.sownTitle} value={sown} />
    </dl>
  );
}

interface ToldProps {
  readonly name: string;
  readonly path: string;
  readonly title: string;
  readonly value: number | null;
}

function Told({ name, path, title, value }: ToldProps) {
  const { hectares } = useAmounts();
  const words = useWords().coverage.stages;
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {value === null ? (
          <span className="soft">{words.nothingYet}</span>
        ) : (
          <Figure path={path} title={title}>
            {words.ha(hectares(value))}
          </Figure>
        )}
      </dd>
    </div>
  );
}
