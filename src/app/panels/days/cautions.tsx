import { useWords } from '../../state/use-stores.ts';

/** What no plan replaces: the label, a cool box, a rested crew. */
export function DayCautions() {
  const { days } = useWords();
  return (
    <section className="care">
      <h2>{days.cautionsTitle}</h2>
      {days.cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </section>
  );
}
