import type { PlanHooks } from '../engine/index.ts';

/** Times the stages of a run, and says which one has begun. */
export class StageClock {
  readonly milliseconds: Record<string, number> = {};
  readonly hooks: PlanHooks;
  private readonly say: (stage: string) => void;
  private readonly begun = new Map<string, number>();

  constructor(say: (stage: string) => void) {
    this.say = say;
    this.hooks = { stageBegins: (stage) => this.begin(stage), stageEnds: (stage) => this.end(stage) };
  }

  time<T>(stage: string, work: () => T): T {
    this.begin(stage);
    const value = work();
    this.end(stage);
    return value;
  }

  private begin(stage: string): void {
    this.say(stage);
    this.begun.set(stage, performance.now());
  }

  /** A stage that runs twice counts both times. */
  private end(stage: string): void {
    const took = performance.now() - (this.begun.get(stage) ?? performance.now());
    this.milliseconds[stage] = Math.round((this.milliseconds[stage] ?? 0) + took);
  }
}
