/**
 * Corrections of the plans of an invented scenario, and words on the goals: right ones and wrong ones, by facilitators and
 * by others. They follow from the dice alone.
 */
import type { Scenario, ScenarioEvent, ScenarioSprint } from '../../src/rehearsal/scenario.ts';
import { daysBetween } from './local-instants.ts';
import type { Dice } from './random-scenario.ts';

/** Puts them among the events of each sprint. No sprint is extended into the days of the next one. */
export function addCorrections(dice: Dice, scenario: Scenario): void {
  const { facilitators = [], productOwner: owner } = scenario.roles ?? {};
  const lead = facilitators[0];
  const someone = (): { by?: string } => {
    const by = dice.pick([undefined, lead, lead, owner, dice.pick(scenario.members).id]);
    return by === undefined ? {} : { by };
  };
  for (const [i, sprint] of scenario.sprints.entries()) {
    const next = scenario.sprints[i + 1]?.startsOn;
    const days = daysBetween(sprint.startsOn, sprint.endsOn);
    const events: ScenarioEvent[] = [];
    for (let count = dice.whole(0, 3); count > 0; count -= 1) {
      const edit = editFrom(dice, sprint);
      // Estimates can be corrected on the first day only.
      const on = dice.chance(0.4) ? (days[0] as string) : dice.pick(days);
      if (edit) events.push({ on, ...someone(), edit });
    }
    if (dice.chance(0.6)) {
      events.push({ on: dice.pick(days), ...someone(), extend: extensionFrom(dice, sprint, next) });
    }
    if (dice.chance(0.6)) {
      events.push({ on: dice.pick(days), ...someone(), goalMet: dice.pick(['yes', 'partly', 'no']) });
    }
    for (const event of events) sprint.events.splice(dice.whole(0, sprint.events.length), 0, event);
  }
}

function editFrom(dice: Dice, { cards }: ScenarioSprint): ScenarioEvent['edit'] {
  if (cards.length === 0) return undefined;
  const card = dice.chance(0.9) ? dice.pick(cards).key : 'no such card';
  const title = dice.pick(['Tide table, corrected', ' <!channel> "quoted"  twice ', '', 'Moon & stars']);
  const estimate = dice.pick([0.5, 3, 5, 8, 0.25]);
  if (dice.chance(0.4)) return { card, title };
  return dice.chance(0.6) ? { card, estimate } : { card, title: title || 'Low water', estimate };
}

function extensionFrom(
  dice: Dice,
  { startsOn, endsOn }: ScenarioSprint,
  next: string | undefined,
): NonNullable<ScenarioEvent['extend']> {
  const closesAt = dice.pick(['12:30', '16:00', '19:45']);
  if (dice.chance(0.25)) return { closesAt };
  const latest = plusDays(endsOn, 4);
  const room = daysBetween(dice.chance(0.7) ? endsOn : startsOn, latest).filter(
    (day) => next === undefined || day < next,
  );
  const to = dice.pick(room);
  return dice.chance(0.5) ? { endsOn: to } : { endsOn: to, closesAt };
}

function plusDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}
