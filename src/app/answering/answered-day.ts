/** The sprint and the day that a member speaks about, and how that day's prompt is met. */
import type { Day } from '../../sprint/calendar.ts';
import { needsOwner, type SprintCardState, statesOf } from '../cards/card-line.ts';
import { reopenUntil } from '../clock/sprint-clock.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { readGoneDay } from '../read-day.ts';
import { Refusal } from '../refusal.ts';
import {
  currentSprint,
  type Membership,
  membershipAt,
  type Place,
  requireBegun,
  requireOpen,
  sprintForMemberLocked,
  todayOf,
} from '../team/place.ts';
import type {
  Actor,
  NewFact,
  Prompt,
  RecordedFact,
  Sprint,
  SprintCard,
  SprintRecords,
} from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import { type PromptContent, promptContentOf } from './prompt-content.ts';

/** A day of an open sprint about which a member speaks. */
export interface AnsweredDay extends Membership {
  readonly sprint: Sprint;
  readonly day: string;
  /** With what was posted about it; undefined: nobody asked yet. */
  readonly prompt: Prompt | undefined;
  /** Of the cards about which the member speaks. */
  readonly records: SprintRecords;
}

/**
 * The sprint and the day that a member speaks about, checked, and the team locked. Without a day: today, or the last day
 * of a sprint that is over.
 *
 * @param day as it was typed
 * @param named cards about which the member speaks, beside those that they may answer for
 */
export async function answeredDay(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  sprintId: string,
  day: string | undefined,
  named: readonly string[] | 'all',
): Promise<AnsweredDay> {
  const [found, prompts, records] = await waitForAll([
    sprintForMemberLocked(tx, actor, sprintId),
    tx.read.promptsOfPerson(sprintId, actor.userId),
    named === 'all' ? tx.read.recordsOf(sprintId) : tx.read.recordsAbout(sprintId, actor.userId, named),
  ]);
  const { team, sprint } = found;
  requireOpen(sprint);
  const today = todayOf(team, deps.clock.now());
  requireBegun(sprint, today);
  const { name: sprintName, startsOn, endsOn } = sprint;
  const wanted = day === undefined ? earlierOf(today, endsOn) : readGoneDay(day, today);
  if (wanted === undefined || wanted < startsOn || wanted > endsOn) {
    throw new Refusal('day-outside-sprint', { sprintName, day: day ?? today, startsOn, endsOn });
  }
  if (wanted > today) throw new Refusal('day-not-come', { day: wanted });
  return { ...found, day: wanted, prompt: prompts.find((prompt) => prompt.day === wanted), records };
}

function earlierOf(day: Day, other: Day): Day {
  return day < other ? day : other;
}

/**
 * The sprint that a place's team has on the day, or today.
 *
 * @param day as it was typed
 * @throws Refusal `sprint-over` where only the latest sprint can be meant, which is closed and may still be reopened;
 *   `no-sprint-running`
 */
export async function runningSprintId(
  read: Reading,
  actor: Actor,
  place: Place,
  now: Date,
  day: string | undefined,
): Promise<string> {
  const { team, openSprints } = await membershipAt(read, actor, place);
  const today = todayOf(team, now);
  const asked = (day && readGoneDay(day, today)) ?? today;
  const sprint = currentSprint(openSprints, asked);
  if (sprint && sprint.startsOn <= asked) return sprint.id;
  const last = await read.latestFinishedSprint(team.id);
  const until = last?.state === 'closed' ? reopenUntil(team, last) : undefined;
  if (last && until && now < until)
    throw new Refusal('sprint-over', { sprintName: last.name, state: 'closed' });
  if (!sprint) throw new Refusal('no-sprint-running', {});
  return sprint.id;
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

/** Records what was said, marks the day's prompt as met and brings its post up to date. */
export async function meetPrompt(
  deps: AppDependencies,
  tx: Transaction,
  actor: Actor,
  { team, member, sprint, day, records, prompt }: AnsweredDay,
  state: 'answered' | 'unchanged' | 'away',
  facts: readonly NewFact[] = [],
): Promise<PromptContent> {
  const { userId } = actor;
  const today = todayOf(team, deps.clock.now());
  // The others who work on these cards answer by what their prompts say is left.
  const answeredIds = new Set(facts.map(({ cardId }) => cardId));
  const answered = records.cards.filter(({ id }) => answeredIds.has(id));
  const others = new Set(answered.flatMap(({ ownerIds }) => ownerIds).filter((id) => id !== userId));
  const [refreshed, added] = await waitForAll([
    tx.write.prompts.setState(
      prompt ?? { sprintId: sprint.id, userId, day, postId: undefined },
      state,
      deps.clock.now(),
    ),
    tx.write.cards.insertFacts(facts),
    tx.write.posts.refreshAboutDay(sprint.id, [...others], today),
  ]);
  const now = { ...records, facts: [...records.facts, ...added] };
  const isInPrompt = refreshed > 0 && day === today;
  return { ...promptContentOf(team, sprint, member, day, now, state), isInPrompt };
}
