/** The sprint and the day that a member speaks about, and how that day's prompt is met. */
import { isDay } from '../sprint/calendar.ts';
import type { SprintCardState } from './card-line.ts';
import { needsOwner, statesOf } from './card-line.ts';
import type { PromptContent } from './message-content.ts';
import type { Membership, Place } from './place.ts';
import { currentSprint, membershipAt, requireBegun, requireOpen, todayOf } from './place.ts';
import type { AppDependencies, NewFact, SprintRecords, Transaction } from './ports.ts';
import { promptContentOf } from './prompt-content.ts';
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
  // One after the other on the way, though nobody waits in between. What is read again under the lock may have changed:
  // the clock may have closed the sprint since.
  const [, sprint, records] = await Promise.all([
    tx.lockTeam(team.id),
    tx.sprintById(found.sprint.id),
    tx.recordsOf(found.sprint.id),
  ]);
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
  return { ...found, sprint, day: wanted, records };
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
  return statesOf(records).filter(needsOwner);
}

export function factsAbout(records: SprintRecords, card: SprintCard): RecordedFact[] {
  return records.facts.filter((fact) => fact.cardId === card.id);
}

/** Whether the member has given numbers for the day. */
export function hasAnswered(records: SprintRecords, userId: string, day: string): boolean {
  return records.facts.some((fact) => fact.kind === 'answer' && fact.memberId === userId && fact.day === day);
}

/** Records what was said, marks the day's prompt as met and brings it up to date where it stands. */
export async function meetPrompt(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  { team, sprint, day, records }: AnsweredDay,
  state: 'answered' | 'unchanged' | 'away',
  facts: readonly NewFact[] = [],
): Promise<PromptContent> {
  const { userId } = actor;
  const prompt = { sprintId: sprint.id, userId, day };
  const [postId, added] = await Promise.all([
    tx.setPromptState(prompt, state, deps.clock.now()),
    tx.insertFacts(facts),
  ]);
  if (postId !== undefined) await tx.refreshPost(postId);
  const now = { ...records, facts: [...records.facts, ...added] };
  return promptContentOf(team, sprint, userId, day, now, state);
}
