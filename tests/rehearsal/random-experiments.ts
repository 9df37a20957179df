/** What the people of an invented scenario try, and what becomes of it: right and wrong, by facilitators and by others. */
import type { Scenario, ScenarioEvent } from '../../src/rehearsal/scenario.ts';
import { daysBetween } from './local-instants.ts';
import type { Dice } from './random-scenario.ts';

const TRIED = ['Split cards of 8', 'Nothing is pulled in <!here> & early', '  Two on a card ', ' '];
const MOVED = ['keptShare', 'surpriseRatio', 'pullInRatio', 'estimateAccuracy', 'finishShare'] as const;

/** Puts them among the events of each sprint. */
export function addExperiments(dice: Dice, scenario: Scenario): void {
  const { facilitators = [], productOwner: owner } = scenario.roles ?? {};
  const someone = (): { by?: string } => {
    const by = dice.pick([undefined, undefined, facilitators[0], owner, dice.pick(scenario.members).id]);
    return by === undefined ? {} : { by };
  };
  for (const sprint of scenario.sprints) {
    const days = daysBetween(sprint.startsOn, sprint.endsOn);
    const events: ScenarioEvent[] = [];
    for (let count = dice.whole(1, 3); count > 0; count -= 1) {
      const text = dice.pick(TRIED);
      const trial = { text, ratio: dice.pick(MOVED), direction: dice.pick(['up', 'down'] as const) };
      events.push({ on: dice.pick(days), ...someone(), try: trial });
      if (dice.chance(0.5)) {
        const outcome = dice.pick(['keep', 'change', 'drop'] as const);
        // biome-ignore lint/suspicious/noThenProperty: the file’s own word; its value is never a function
        events.push({ on: dice.pick(days), ...someone(), experiment: { text, then: outcome } });
      }
    }
    for (const event of events) sprint.events.splice(dice.whole(0, sprint.events.length), 0, event);
  }
}
