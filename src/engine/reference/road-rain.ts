import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/** Rain on a day or the day before from which roads are difficult, and from which earth roads are closed, mm. */
export interface RoadRainRule {
  readonly difficultMm: Sourced<number>;
  readonly closedMm: Sourced<number>;
}

const REFERENCE: RoadRainRule = {
  difficultMm: sourced(10, 'assumed', 'a first rule; those who keep the roads know better'),
  closedMm: sourced(40, 'assumed', 'a first rule; those who keep the roads know better'),
};

/** The rule in force: the programme's own limits where its assumptions name `road.difficultMm` or `road.closedMm`. */
export function roadRainRule(assumptions: Readonly<Record<string, number>>): RoadRainRule {
  const limit = (key: keyof RoadRainRule): Sourced<number> => {
    const own = assumptions[`road.${key}`];
    return own === undefined ? REFERENCE[key] : sourced(own, 'given', `scenario.json:assumptions.road.${key}`);
  };
  return { difficultMm: limit('difficultMm'), closedMm: limit('closedMm') };
}
