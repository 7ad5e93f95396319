import {
  addProblems,
  askTripAtHour,
  calendarOf,
  checkPlan,
  compareDeliveries,
  type Decision,
  type DeliveryDesk,
  estimateNeedsAlone,
  type LinearSolver,
  openDeliveryDesk,
  openReplay,
  openStockDesk,
  type Plan,
  type PlanningTools,
  type PolygonOverlay,
  planSeason,
  readScenario,
  replanSeason,
  replaySeasons,
  type ScenarioReading,
  type ScenarioRecords,
  type StageCache,
  type StockDesk,
  type ZoneShares,
} from '../../engine/index.ts';
import { recordsFromFiles } from '../scenario-files/record-files.ts';
import { PlanningShare } from './planning-share.ts';
import type {
  OpenedScenario,
  PlanAsMade,
  PlannedSeason,
  PlanningProgress,
  PlanOrder,
  Verdict,
  WorkerCalls,
} from './worker-messages.ts';

type Tools = PlanningTools<LinearSolver, PolygonOverlay>;

/** The last plan made here, and the desk that prices moves on it once it is asked for. */
interface LastPlan {
  readonly plan: Plan;
  readonly stages: StageCache;
  readonly decisions: readonly Decision[];
  desk: DeliveryDesk | null;
}

/** The planner behind the messages: keeps the records of one scenario and the results of the stages between runs. */
export class Planner {
  private readonly loadTools: () => Promise<Tools>;
  private tools: Promise<Tools> | null = null;
  private records: ScenarioRecords | null = null;
  private reading: { readonly decisions: readonly Decision[] | null; readonly read: ScenarioReading } | null = null;
  private stages: StageCache | null = null;
  private shares: ZoneShares | null = null;
  private last: LastPlan | null = null;
  private desk: { readonly read: ScenarioReading; readonly desk: StockDesk } | null = null;

  constructor(loadTools: () => Promise<Tools>) {
    this.loadTools = loadTools;
  }

  /** Stages of before stay at hand: a stage whose inputs are the same is not run again. */
  open({ files, faults, decisions }: WorkerCalls['open']['ask']): OpenedScenario {
    this.records = recordsFromFiles(files, faults);
    this.reading = null;
    const read = decisions === undefined ? readScenario(this.records) : this.readWith(decisions);
    this.reading = { decisions: decisions ?? null, read };
    this.last = null;
    this.shares = null;
    return {
      scenario: read.scenario,
      problems: read.problems,
      decisions: read.decisions.decisions,
      decisionsSha256: read.decisions.sha256,
      sha256: this.records.sha256,
    };
  }

  async plan(order: PlanOrder, tell: (progress: PlanningProgress) => void): Promise<PlannedSeason> {
    const { scenario, decisions, problems } = this.readWith(order.decisions);
    if (scenario === null) throw new Error('no plan is possible from these files');
    this.tools ??= this.loadTools();
    const tools = await this.tools;
    const share = new PlanningShare();
    const settings = {
      seed: order.seed,
      iterations: order.iterations,
      stop: null,
      progress: (_: number, done: number, best: number) => tell(share.searched(done, best)),
    };
    const hooks = { stageBegins: (stage: string) => tell(share.stageBegins(stage)) };
    const { plan, stages } = planSeason(scenario, decisions, this.stages, settings, tools, hooks);
    this.keep(plan, stages, order.decisions);
    return { plan: addProblems(plan, problems) };
  }

  /** The season once more from the plan that people know, whoever made it. */
  async replan({ told, ...order }: WorkerCalls['replan']['ask']): Promise<WorkerCalls['replan']['answer']> {
    const { scenario, decisions, problems } = this.readWith(order.decisions);
    if (scenario === null) return null;
    const settings = { seed: order.seed, iterations: order.iterations, stop: null, progress: null };
    this.tools ??= this.loadTools();
    const { plan, stages } = replanSeason(scenario, decisions, told, this.stages, settings, await this.tools);
    this.keep(plan, stages, order.decisions);
    return { plan: addProblems(plan, problems), difference: compareDeliveries(told, plan) };
  }

  async move(asked: WorkerCalls['move']['ask']): Promise<WorkerCalls['move']['answer']> {
    if (this.last === null) return { priced: null };
    const { scenario, decisions } = this.readWith(this.last.decisions);
    if (scenario === null) return { priced: null };
    this.tools ??= this.loadTools();
    this.last.desk ??= openDeliveryDesk(scenario, decisions, this.last.stages, (await this.tools).overlay);
    return { priced: this.last.desk.priceMove(asked) };
  }

  private keep(plan: Plan, stages: StageCache, decisions: readonly Decision[]): void {
    this.stages = stages;
    this.shares = stages.places.value.result.shares;
    this.last = { plan, stages, decisions, desk: null };
  }

  check({ decisions: asked, plan }: WorkerCalls['check']['ask']): Verdict {
    const { scenario, decisions } = this.readWith(asked);
    this.shares ??= sharesOf(plan);
    return { findings: scenario === null ? [] : checkPlan(scenario, decisions, plan) };
  }

  needs({ decisions }: WorkerCalls['needs']['ask']): WorkerCalls['needs']['answer'] {
    const scenario = this.reading?.read.scenario;
    if (!scenario || this.shares === null) return { needs: null };
    return {
      needs: estimateNeedsAlone(scenario, { format: 'nodulary-decisions/1', decisions, sha256: '' }, this.shares),
    };
  }

  /** Stages of the last plan are not run again where the same inputs made them. */
  async calendar({ decisions, trip }: WorkerCalls['calendar']['ask']): Promise<WorkerCalls['calendar']['answer']> {
    const read = this.readWith(decisions);
    if (read.scenario === null) return { calendar: null };
    this.tools ??= this.loadTools();
    const { overlay } = await this.tools;
    return { calendar: calendarOf(read.scenario, read.decisions, this.stages, overlay, trip) };
  }

  async tripAtHour({
    decisions,
    trip,
  }: WorkerCalls['tripAtHour']['ask']): Promise<WorkerCalls['tripAtHour']['answer']> {
    const read = this.readWith(decisions);
    if (read.scenario === null) return { trip: null };
    this.tools ??= this.loadTools();
    const { overlay } = await this.tools;
    return { trip: askTripAtHour(read.scenario, read.decisions, this.stages, overlay, trip) };
  }

  async replay({ plan, decisions, other }: WorkerCalls['replay']['ask']): Promise<WorkerCalls['replay']['answer']> {
    const replay = await this.openReplay(plan, decisions);
    if (replay === null) return null;
    const beside = other && this.holds(other) ? await this.openReplay(other.plan as Plan, other.decisions) : null;
    return {
      zoneNames: replay.zoneNames,
      printed: replaySeasons(replay, 'as-printed'),
      released: replaySeasons(replay, 'with-release'),
      other: beside && replaySeasons(beside, 'as-printed'),
      prepared: replay.play('as-printed'),
    };
  }

  private holds({ plan, decisions }: PlanAsMade<unknown>): boolean {
    const read = this.readWith(decisions);
    return read.scenario !== null && checkPlan(read.scenario, read.decisions, plan).length === 0;
  }

  private async openReplay(plan: Plan, decisions: readonly Decision[]) {
    const read = this.readWith(decisions);
    if (read.scenario === null) return null;
    this.tools ??= this.loadTools();
    return openReplay(read.scenario, read.decisions, plan, this.stages, (await this.tools).overlay);
  }

  async stock({ decisions, changes }: WorkerCalls['stock']['ask']): Promise<WorkerCalls['stock']['answer']> {
    const desk = await this.stockDesk(decisions);
    return { difference: desk?.ask(...changes).difference ?? null };
  }

  async smallestChange(ask: WorkerCalls['smallestChange']['ask']): Promise<WorkerCalls['smallestChange']['answer']> {
    const desk = await this.stockDesk(ask.decisions);
    return { change: desk?.smallestChange(ask.shareRow, ask.commodity) ?? null };
  }

  async transfers({ decisions }: WorkerCalls['transfers']['ask']): Promise<WorkerCalls['transfers']['answer']> {
    const desk = await this.stockDesk(decisions);
    return { ideas: desk?.transfers() ?? null };
  }

  /** The desk stays open while its decisions are the same: opening it shares the stock out once. */
  private async stockDesk(decisions: readonly Decision[]): Promise<StockDesk | null> {
    const read = this.readWith(decisions);
    if (read.scenario === null) return null;
    if (this.desk?.read === read) return this.desk.desk;
    this.tools ??= this.loadTools();
    const desk = openStockDesk(read.scenario, read.decisions, this.stages, await this.tools);
    this.desk = { read, desk };
    return desk;
  }

  /** Intake judges the decisions of the page as it judges those of a file, so that both plan alike. */
  private readWith(decisions: readonly Decision[]): ScenarioReading {
    if (this.records === null) throw new Error('no scenario is open');
    const held = this.reading;
    const heldDecisions = held?.decisions ?? held?.read.decisions.decisions;
    if (held && JSON.stringify(heldDecisions) === JSON.stringify(decisions)) return held.read;
    const value = { format: 'nodulary-decisions/1', decisions };
    const read = readScenario({ ...this.records, decisions: { file: 'decisions.json', value } });
    this.reading = { decisions, read };
    return read;
  }
}

/** Zone shares as a plan records them, for a plan that was made elsewhere. */
function sharesOf({ places: { shares } }: WorkerCalls['check']['ask']['plan']): ZoneShares {
  return {
    community: Int32Array.from(shares.community),
    zone: Int32Array.from(shares.zone),
    share: Float64Array.from(shares.share),
  };
}
