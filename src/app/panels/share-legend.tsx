import { SHARE_CLASSES } from '../../presentation/views/map-view.ts';
import { useWords } from '../state/use-stores.ts';

/** What the six tones of a share mean, and the hatches beside them. */
export function ShareLegend({ title, nothing = true, nothingText, unknown = false }: LegendProps) {
  const words = useWords();
  const classes = SHARE_CLASSES.map((least, index) => ({ tone: index + 1, least })).reverse();
  return (
    <>
      <h2>{title}</h2>
      <ul className="swatches">
        {classes.map(({ tone, least }) => (
          <li key={tone}>
            <span className={`swatch share-${tone}`} />
            {tone === 6 ? words.scale.all : tone === 1 ? words.scale.less : least}
          </li>
        ))}
        <li>%</li>
        {nothing && (
          <li>
            <span className="swatch hatch-nothing" />
            {nothingText ?? words.scale.nothing}
          </li>
        )}
        {unknown && (
          <li>
            <span className="swatch hatch-unknown" />
            {words.scale.unknown}
          </li>
        )}
      </ul>
    </>
  );
}

interface LegendProps {
  readonly title: string;
  readonly nothing?: boolean;
  /** What the cross-hatch says, where it is not that a community gets nothing. */
  readonly nothingText?: string;
  readonly unknown?: boolean;
}
