/** The nouns and units of the whole engine, by one name for those who only read. */
export * from './calendar.ts';
export * from './crops.ts';
export * from './decisions.ts';
export * from './fleet.ts';
export * from './places.ts';
export * from './plan.ts';
export * from './problems.ts';
export * from './provenance.ts';
export * from './reasons.ts';
export * from './records.ts';
export * from './scenario.ts';
export * from './settings.ts';
export * from './stage-results.ts';
export * from './supply.ts';
export * from './units.ts';
