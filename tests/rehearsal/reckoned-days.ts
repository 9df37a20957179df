/** When people of a scenario work, worked out from the file alone; as independent as the rest of the reckoning. */
import type { Scenario, ScenarioEvent } from '../../src/rehearsal/scenario.ts';
import { daysBetween, weekdayOf } from './local-instants.ts';

export class ReckonedDays {
  readonly #scenario: Scenario;
  /** `member day` or `team day` → how much of the day is off. */
  readonly #off = new Map<string, 0.5 | 1>();

  constructor(scenario: Scenario) {
    this.#scenario = scenario;
  }

  /** Takes days off that somebody says; false when they must be refused. @param earliest the first day that still matters */
  take({ by, off }: ScenarioEvent, earliest: string): boolean {
    const isWorking = this.#scenario.members.some(({ id }) => id === by);
    if (!off || (by !== 'team' && !isWorking)) return false;
    const { from, to = from, half } = off;
    if (to < from || to < earliest) return false;
    for (const day of daysBetween(from < earliest ? earliest : from, to)) {
      this.#off.set(`${by} ${day}`, half ? 0.5 : 1);
    }
    return true;
  }

  isWorkingDay(day: string): boolean {
    return this.#scenario.team.workingDays.includes(weekdayOf(day)) && this.#off.get(`team ${day}`) !== 1;
  }

  /** How much of the day a member works, as far as is known. */
  share(memberId: string, day: string): number {
    const { worksOn } = this.#scenario.members.find(({ id }) => id === memberId) ?? {};
    if (!this.isWorkingDay(day) || (worksOn && !worksOn.includes(weekdayOf(day)))) return 0;
    const off = [this.#off.get(`team ${day}`), this.#off.get(`${memberId} ${day}`)];
    return 1 - Math.max(...off.map((part) => part ?? 0));
  }
}
