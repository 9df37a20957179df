/** What is tried in a scenario and what it came to, worked out from the design alone. Imports nothing from `src/` but types. */
import type { Scenario, ScenarioEvent } from '../../src/rehearsal/scenario.ts';
import { localInstantMs } from './local-instants.ts';

interface Trial {
  text: string;
  ratio: string;
  direction: string;
  begunMs: number;
  endedMs: number | undefined;
}

export interface ReckonedExperiment {
  text: string;
  ratio: string;
  direction: string;
  /** `null`: no sprint had closed before; undefined: there is no such number. */
  before: number | null | undefined;
  now: number | undefined;
  beyondOrdinary: boolean | null;
}

interface ClosedSprint {
  closesAtMs: number;
  cancelled: boolean;
  numbers: Record<string, number | undefined>;
}

export class ReckonedExperiments {
  readonly #scenario: Scenario;
  readonly #trials: Trial[] = [];

  constructor(scenario: Scenario) {
    this.#scenario = scenario;
  }

  /** False when it must be refused. */
  take({ on, by, try: begun, experiment }: ScenarioEvent): boolean {
    const { team, roles } = this.#scenario;
    if (by !== undefined && !roles?.facilitators?.includes(by)) return false;
    const atMs = localInstantMs(on, team.promptAt, team.timeZone);
    const open = this.#trials.filter(({ endedMs }) => endedMs === undefined);
    const text = plain(begun?.text ?? experiment?.text ?? '');
    const same = open.find((one) => one.text.toLowerCase() === text.toLowerCase());
    if (begun) {
      if (text === '' || text.length > 200 || same !== undefined || open.length >= 10) return false;
      const { ratio, direction } = begun;
      this.#trials.push({ text, ratio, direction, begunMs: atMs, endedMs: undefined });
      return true;
    }
    // Without words, the only one is meant.
    const meant = same ?? (text === '' && open.length === 1 ? open[0] : undefined);
    if (!meant) return false;
    meant.endedMs = atMs;
    return true;
  }

  /** At the verdict of the latest of these, which are in their order. */
  at(sprints: readonly ClosedSprint[]): ReckonedExperiment[] {
    const sprint = sprints.at(-1);
    if (!sprint || sprint.cancelled) return [];
    const closed = sprints.filter(({ cancelled }) => !cancelled);
    return this.#trials
      .filter(({ begunMs, endedMs = Number.POSITIVE_INFINITY }) => {
        return begunMs < sprint.closesAtMs && endedMs >= sprint.closesAtMs;
      })
      .map(({ text, ratio, direction, begunMs }) => {
        const last = closed.findLast(({ closesAtMs }) => closesAtMs <= begunMs);
        const now = sprint.numbers[ratio];
        const values = closed.flatMap(({ numbers }) => numbers[ratio] ?? []);
        return {
          text,
          ratio,
          direction,
          before: last === undefined ? null : last.numbers[ratio],
          now,
          beyondOrdinary: now === undefined || values.length < 8 ? null : isOutOfTheOrdinary(values),
        };
      });
  }
}

function plain(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim();
}

/** The last value lies further from the mean than three times 1/1.128 of the mean step, or ends eight on one side of it. */
function isOutOfTheOrdinary(values: readonly number[]): boolean {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const steps = values.slice(1).map((value, i) => Math.abs(value - (values[i] as number)));
  const meanStep = steps.reduce((sum, step) => sum + step, 0) / steps.length;
  const distances = values.map((value) => value - mean);
  const last = distances.at(-1) as number;
  if (Math.abs(last) > (3 * meanStep) / 1.128 + 1e-9) return true;
  const eight = distances.slice(-8);
  return eight.every((distance) => distance > 1e-9) || eight.every((distance) => distance < -1e-9);
}
