import { Fragment } from 'react';
import type { Told } from '../../../presentation/views/stock-told.ts';
import { Figure } from '../figure.tsx';

/** A sentence whose figures open. */
export function ToldText({ told }: { readonly told: Told }) {
  const pieces = told.text.split(/\{(\d+)\}/);
  // Odd pieces are the places of figures.
  return pieces.map((piece, i) => {
    const figure = i % 2 === 1 ? told.figures[Number(piece)] : undefined;
    const key = `${i}`;
    if (figure === undefined) return <Fragment key={key}>{piece}</Fragment>;
    return (
      <Figure key={key} path={figure.path} title={figure.title} className={figure.isAlarm ? 'alarm' : ''}>
        {figure.shown}
      </Figure>
    );
  });
}
