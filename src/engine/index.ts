/** The only door to the engine. Holds no code. */
export * from './vocabulary/index.ts';
