/** The sprint and the day that a member speaks about, and how that day's prompt is met. */
import { isDay } from '../sprint/calendar.ts';
import { answersInForce } from '../sprint/ledger.ts';
import type { SprintCardState } from './card-line.ts';
import { isOpenCard, statesOf } from './card-line.ts';
import type { PromptContent } from './message-content.ts';
import type { Membership, Place } from './place.ts';
import { currentSprint, membershipAt, requireBegun, requireOpen, todayOf } from './place.ts';
import type { AppDependencies, SprintRecords, Transaction } from './ports.ts';
import { promptContent } from './prompt-content.ts';
import { refreshPrompt } from './refresh-prompt.ts';
import { Refusal } from './refusal.ts';
import type { Actor, RecordedFact, Sprint, SprintCard } from './team.ts';

export interface SprintAndMember extends Membership {
  readonly sprint: Sprint;
}

/** A day of an open sprint about which a member speaks. */
export interface AnsweredDay extends SprintAndMember {
  readonly day: string;
  readonly records: SprintRecords;
}

/** The sprint and the day that a member speaks about, checked. */
export async function sprintDay(
  deps: AppDependencies,
  tx: Transaction,
  found: SprintAndMember,
  day: string | undefined,
): Promise<AnsweredDay> {
  const { team } = found;
  await tx.lockTeam(team.id);
  // Read again under the lock: the clock may have closed it since.
  const sprint = await tx.sprintById(found.sprint.id);
  if (!sprint) throw new Refusal('no-sprint-running', {});
  requireOpen(sprint);
  const today = todayOf(team, deps.clock.now());
  requireBegun(sprint, today);
  const wanted = day ?? (today > sprint.endsOn ? sprint.endsOn : today);
  if (!isDay(wanted) || wanted < sprint.startsOn || wanted > sprint.endsOn) {
    const { name: sprintName, startsOn, endsOn } = sprint;
    throw new Refusal('day-outside-sprint', { sprintName, day: wanted, startsOn, endsOn });
  }
  if (wanted > today) throw new Refusal('day-not-come', { day: wanted });
  return { ...found, sprint, day: wanted, records: await tx.recordsOf(sprint.id) };
}

/** The sprint that a place's team has on the day, or today. */
export async function runningSprint(
  tx: Transaction,
  actor: Actor,
  place: Place,
  now: Date,
  day: string | undefined,
): Promise<SprintAndMember> {
  const membership = await membershipAt(tx, actor, place);
  const open = await tx.openSprintsOf(membership.team.id);
  const sprint = currentSprint(open, day ?? todayOf(membership.team, now));
  if (!sprint) throw new Refusal('no-sprint-running', {});
  return { ...membership, sprint };
}

/** Open cards that nobody owns yet. */
export function takeableStates(records: SprintRecords): SprintCardState[] {
  return statesOf(records).filter((state) => isOpenCard(state) && state.card.ownerIds.length === 0);
}

export function factsAbout(records: SprintRecords, card: SprintCard): RecordedFact[] {
  return records.facts.filter((fact) => fact.cardId === card.id);
}

/** Whether the member has given numbers for the day. */
export function hasAnswered(records: SprintRecords, userId: string, day: string): boolean {
  return answersInForce(records.facts).some((answer) => answer.memberId === userId && answer.day === day);
}

/** Marks the day's prompt as met and brings it up to date where it stands. */
export async function meetPrompt(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  { team, sprint, day }: Pick<SprintAndMember, 'team' | 'sprint'> & { day: string },
  state: 'answered' | 'unchanged' | 'away',
): Promise<PromptContent> {
  const { userId } = actor;
  await tx.setPromptState({ sprintId: sprint.id, userId, day }, state, deps.clock.now());
  await refreshPrompt(tx, sprint.id, userId, day);
  return promptContent(tx, team, sprint, userId, day);
}
