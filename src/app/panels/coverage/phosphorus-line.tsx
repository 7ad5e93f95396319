import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { useAmounts } from './use-amounts.ts';

/** What the fertiliser that goes along adds; nothing where none does. */
export function PhosphorusLine() {
  const { hectares, tonnes } = useAmounts();
  const { figures, unit } = useWords().coverage;
  const plan = useSeason((season) => season.plan);
  if (plan === null || !(plan.outcomes.headline.fertilisedHa > 0)) return null;
  const { fertilisedHa, phosphorusGrainT, phosphorusNitrogenKg } = plan.outcomes.headline;
  const grain = (t: number) => tonnes(1000 * t);
  const inTonnes = (text: string) => `${text}\u00a0${unit.t}`;
  return (
    <p className="phosphorus-line">
      {figures.phosphorus}{' '}
      <Figure path="outcomes.headline.phosphorusGrainT" title={figures.phosphorusGrainTitle}>
        {inTonnes(grain(phosphorusGrainT.p50))}
      </Figure>{' '}
      {figures.phosphorusOf}{' '}
      <Figure path="outcomes.headline.phosphorusNitrogenKg" title={figures.phosphorusNitrogenTitle}>
        {inTonnes(tonnes(phosphorusNitrogenKg.p50))}
      </Figure>{' '}
      {figures.phosphorusOn}{' '}
      <Figure path="outcomes.headline.fertilisedHa" title={figures.phosphorusHaTitle}>
        {`${hectares(fertilisedHa)}\u00a0${unit.ha}`}
      </Figure>
      .{' '}
      <span className="soft">
        {figures.phosphorusNote(grain(phosphorusGrainT.p10), inTonnes(grain(phosphorusGrainT.p90)))}
      </span>
    </p>
  );
}
