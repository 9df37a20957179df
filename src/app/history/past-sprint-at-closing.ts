/** Makes what a sprint leaves behind for the statistics, from its records. Decides nothing about them. */
import type { CardEvenings } from '../../forecast/card-evenings.ts';
import { sprintSoFar } from '../../forecast/sprint-so-far.ts';
import type { Day } from '../../sprint/calendar.ts';
import type { WorkTime } from '../../sprint/evidence.ts';
import { sprintRatios } from '../../sprint/sprint-ratios.ts';
import { sprintTotals } from '../../sprint/totals.ts';
import { memberDaysOf, NO_DAYS_OFF } from '../../sprint/work-calendar.ts';
import { type SprintCardState, statesOf } from '../cards/card-line.ts';
import { dayAt } from '../clock/local-time.ts';
import { memberDaysIn } from '../clock/member-days.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import type { Reading } from '../ports/store.ts';
import {
  datedWorkersOf,
  type Member,
  type Prompt,
  type Sprint,
  type SprintRecords,
  type Team,
} from '../team/team.ts';
import type { NewPastSprint, PastCard, PastSprint } from './past-sprint.ts';

/** Reads what is needed and makes it. */
export async function pastSprintAtClosing(
  read: Reading,
  team: Team,
  sprint: Sprint,
  now: Date,
): Promise<NewPastSprint> {
  const records = await read.recordsOf(sprint.id);
  const days = sprintDays(team, sprint);
  const prompts = await read.promptsOf(days.map((day) => ({ sprintId: sprint.id, day })));
  const workers = datedWorkersOf(await read.membersOf(team.id), sprint.id);
  const closedOn = dayAt(sprint.closedAt ?? now, team.timeZone);
  return {
    sprintId: sprint.id,
    teamId: team.id,
    workspaceId: team.workspaceId,
    endsOn: sprint.endsOn,
    workingDays: days.length,
    // What was left of a sprint that was closed early, nobody worked in it.
    memberDays: memberDaysBy(
      team,
      sprint,
      workers,
      days.filter((day) => day <= closedOn),
      prompts,
    ),
    ...pastSprintOf(team, days, records),
    recordedAt: now,
  };
}

/** How much the members were there on these days of the sprint, beside their usual weekdays. */
export async function workTimeOf(
  read: Reading,
  team: Team,
  sprint: Sprint,
  days: readonly Day[],
): Promise<WorkTime> {
  const prompts = await read.promptsOf(days.map((day) => ({ sprintId: sprint.id, day })));
  const people = datedWorkersOf(await read.membersOf(team.id), sprint.id);
  const usual = people.map((person) => ({ ...person, daysOff: NO_DAYS_OFF }));
  return {
    memberDays: memberDaysBy(team, sprint, people, days, prompts),
    usualMemberDays: memberDaysOf(team, usual, days),
  };
}

/** Member-days of a sprint: its prompts know who was away, its plan how many days off and away there are at least. @param people those who worked in it */
export function memberDaysBy(
  team: Team,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn' | 'awayDays'>,
  people: readonly Member[],
  days: readonly Day[],
  prompts: readonly Pick<Prompt, 'userId' | 'day' | 'state'>[],
): number {
  const away = new Set(
    prompts.filter(({ state }) => state === 'away').map(({ userId, day }) => `${userId} ${day}`),
  );
  return memberDaysIn(team, sprint, people, days, ({ userId }, day) => away.has(`${userId} ${day}`));
}

/** What the records of a sprint say of it. */
export type FromRecords = Pick<NewPastSprint, 'cardEvenings'> &
  Pick<
    PastSprint,
    | 'commitmentPoints'
    | 'pulledInPoints'
    | 'surprisePoints'
    | 'velocityPoints'
    | 'workedPoints'
    | 'committedFinishedPoints'
    | 'ratios'
    | 'trace'
    | 'cards'
  >;

/** Pure part: what the records of a sprint say. @param days its working days, ascending */
export function pastSprintOf(
  team: Pick<Team, 'scale'>,
  days: readonly Day[],
  records: SprintRecords,
): FromRecords {
  const states = statesOf(records);
  const kept = states.filter(({ droppedOn }) => droppedOn === undefined);
  const evenings = eveningsOf(days, records);
  const totals = sprintTotals(states, team.scale);
  const { velocityGrowth: _changesWithTheBaseline, ...ratios } = sprintRatios(totals, undefined);
  return {
    commitmentPoints: totals.commitmentPoints,
    pulledInPoints: totals.pulledInPoints,
    // Sums of surprise are never below 0: no more can turn out not to be needed than there was.
    surprisePoints: totals.surprisePoints,
    velocityPoints: totals.velocityPoints,
    workedPoints: totals.workedPoints,
    committedFinishedPoints: totals.committedFinishedPoints,
    ratios,
    trace: evenings.map(sprintSoFar),
    cards: kept.map((state) => pastCard(state, days)),
    cardEvenings: kept.map((state) => cardEvenings(state, kept, evenings)),
  };
}

/** The cards before the first working day, and on the evening of each. */
function eveningsOf(days: readonly Day[], { cards, facts }: SprintRecords): SprintCardState[][] {
  const evening = (day: Day): SprintCardState[] =>
    statesOf({
      cards: cards.filter(({ enteredOn }) => enteredOn <= day),
      facts: facts.filter((fact) => fact.day <= day),
    });
  const start = statesOf({ cards: cards.filter(({ origin }) => origin === 'planned'), facts: [] });
  return [start, ...days.map(evening)];
}

/** How one of the sprint's cards went. Members become numbers in the order of the cards, of which nobody is told. */
function cardEvenings(
  { card }: SprintCardState,
  kept: readonly SprintCardState[],
  evenings: readonly (readonly SprintCardState[])[],
): CardEvenings {
  const members = [...new Set(kept.flatMap((state) => state.card.ownerIds))];
  const states = evenings.map((there) => there.find((state) => state.card.id === card.id));
  const from = states.findIndex((state) => state !== undefined);
  const there = from < 0 ? [] : states.slice(from).map((state) => state as SprintCardState);
  const blocked = there.flatMap(({ blocks }, i) =>
    blocks.length > 0 && blocks.at(-1)?.until === undefined ? [from + i] : [],
  );
  return {
    estimatePoints: card.estimatePoints,
    from: Math.max(0, from),
    left: there.map(({ leftPoints, finished }) => (finished ? 0 : leftPoints)),
    worked: there.map(({ workedPoints }) => workedPoints),
    ...(blocked.length > 0 && { blocked }),
    queues: card.ownerIds.map((id) => members.indexOf(id)),
  };
}

function pastCard(state: SprintCardState, days: readonly Day[]): PastCard {
  const { card, surprisePoints, workedPoints, leftPoints, finished } = state;
  const { estimatePoints, origin, enteredOn } = card;
  const doneShare = finished ? 1 : workedPoints === 0 ? 0 : workedPoints / (workedPoints + leftPoints);
  if (origin === 'planned') return { estimatePoints, surprisePoints, doneShare };
  const workingDaysLeft = days.filter((day) => day >= enteredOn).length;
  return { estimatePoints, surprisePoints, doneShare, pulledIn: { workingDaysLeft, finished } };
}
