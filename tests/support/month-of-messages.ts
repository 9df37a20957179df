/** A month of two sprints, played on the clock: Ben answers every question at ten, Chi never does. For a test and a bench. */
import type { Harness, PersonName } from './app-harness.ts';

/** Before the month. Lisbon is on UTC in November (IANA tz 2025c). */
export const BEFORE_THE_MONTH = '2026-10-30T12:00:00Z';
/** Each from a Monday to the Friday of the week after. */
export const SPRINTS_OF_MONTH = [
  { name: 'Harbour 12', startsOn: '2026-11-02', endsOn: '2026-11-13' },
  { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-27' },
];
/** Each asks something but the two first mornings. */
export const WORKING_DAYS_OF_MONTH = 20;
const CARDS = 'Tide table, 5, @Ben\nCrane log, 3, @Chi\nPilot roster, 2, @Ben @Chi';

/** Kinds of the messages that the bot sent to one member on one day, weekends included. */
export interface MessagesOfDay {
  readonly who: PersonName;
  readonly day: string;
  readonly kinds: readonly string[];
}

/** @param channels a team is set up in each; all have the same members and ask at the same time */
export async function playMonth(
  h: Harness,
  channels: readonly string[] = ['C1'],
): Promise<readonly MessagesOfDay[]> {
  const teams = [];
  for (const channelId of channels)
    teams.push(await h.setUpTeam({ name: `Harbour ${channelId}`, channelId }));
  const got: MessagesOfDay[] = [];
  for (const plan of SPRINTS_OF_MONTH) {
    const sprintIds: string[] = [];
    for (const team of teams) sprintIds.push((await h.plan(team, { ...plan, cards: CARDS })).sprint.id);
    for (let date = Number(plan.startsOn.slice(-2)); date <= Number(plan.endsOn.slice(-2)); date += 1) {
      const day = `2026-11-${String(date).padStart(2, '0')}`;
      const members = (['ben', 'chi'] as const).map((who) => ({ who, before: h.messagesTo(who).length }));
      await h.pass(`${day}T09:15:00Z`);
      h.set(`${day}T10:00:00Z`);
      for (const id of sprintIds) await h.answer('ben', id, day, { 1: { left: '5' } });
      for (const time of ['12:15', '16:00', '17:00']) await h.pass(`${day}T${time}:00Z`);
      got.push(...members.map(({ who, before }) => ({ who, day, kinds: h.kindsTo(who).slice(before) })));
    }
  }
  return got;
}
