/** The state of a sprint on a day, as data. */
import { blockedCardDays } from '../../sprint/blocks.ts';
import type { Day } from '../../sprint/calendar.ts';
import { runningSummary, type SprintSummary } from '../../sprint/summary.ts';
import { memberShareOf } from '../../sprint/work-calendar.ts';
import {
  type CardLine,
  cardLine,
  isOpenCard,
  type SprintCardState,
  sharedNote,
  statesOf,
} from '../cards/card-line.ts';
import { eveningsBefore, isQuestionDay } from '../clock/sprint-clock.ts';
import { isDayOver, type SprintTime, sprintTime } from '../clock/sprint-time.ts';
import { rememberedBaseline } from '../history/baseline-of.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import type { Membership } from '../team/place.ts';
import {
  type Member,
  type Prompt,
  type RecordedFact,
  type Sprint,
  type SprintHeading,
  type Team,
  workersOf,
} from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import { type LoadOutlook, loadOutlook } from './load-outlook.ts';
import type { TeamSprint } from './team-sprint.ts';

export interface StatusContent extends SprintHeading {
  readonly on: Day;
  readonly begun: boolean;
  readonly workingDaysLeft: number;
  readonly workingDays: number;
  readonly summary: SprintSummary;
  readonly cards: readonly CardLine[];
  /** Answers with growth other than 0, latest first, without who said it. */
  readonly growth: readonly {
    readonly card: CardLine;
    readonly day: Day;
    readonly surprisePoints: number;
    readonly driftPoints: number;
    readonly note: string;
  }[];
  /** Members with open cards today and how many of them have met today's prompt. */
  readonly asked: number;
  readonly answered: number;
  readonly load: LoadOutlook;
  /** Days off and away that the plan names and nobody recorded. */
  readonly onlyNamedDays: number;
  readonly drawn: TeamSprint;
}

/**
 * Makes the content from what the store holds.
 *
 * @param knownVersion of the workspace's past, read before in the same transaction; left out: it is read now
 */
export async function statusContent(
  tx: Transaction,
  { team, members }: Pick<Membership, 'team' | 'members'>,
  sprint: Sprint,
  on: Day,
  knownVersion?: string,
): Promise<StatusContent> {
  const pastVersion = knownVersion ?? (await tx.read.pastVersion(team.workspaceId));
  const [records, prompts, baseline] = await waitForAll([
    tx.read.recordsOf(sprint.id),
    tx.read.promptsOf([{ sprintId: sprint.id, day: on }]),
    rememberedBaseline(tx.read, team, sprint.id, pastVersion),
  ]);
  const states = statesOf(records);
  const counts = answerCounts(team, sprint, members, { states, prompts, on });
  const time = sprintTime(team, sprint, members, on, isDayOver(counts));
  return {
    team,
    sprint,
    on,
    begun: on >= sprint.startsOn,
    workingDays: time.total,
    workingDaysLeft: time.left,
    summary: {
      ...runningSummary(states, { ...team, baseline }),
      blockedCardDays: blockedCardDays(states, eveningsBefore(team, sprint, on)),
    },
    cards: states.map(cardLine),
    growth: growthOf(states),
    ...counts,
    onlyNamedDays: time.onlyNamedDays,
    load: await loadOutlook(tx, { team, members, sprint, states }, time, on, pastVersion),
    drawn: { team, members, sprint, states },
  };
}

function growthOf(states: readonly SprintCardState[]): StatusContent['growth'] {
  return states
    .flatMap((state) =>
      state.entries
        .filter(({ growthPoints }) => growthPoints !== 0)
        .map((entry) => ({
          card: cardLine(state),
          day: entry.answer.day,
          surprisePoints: entry.surprisePoints,
          driftPoints: entry.driftPoints,
          note: sharedNote((entry.answer as RecordedFact & { kind: 'answer' }).note),
        })),
    )
    .sort((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));
}

/** How much of a running sprint's time is over, today included once enough was said of it. */
export async function sprintTimeToday(
  read: Reading,
  { team, members, sprint, states }: TeamSprint,
  today: Day,
): Promise<SprintTime> {
  const prompts = await read.promptsOf([{ sprintId: sprint.id, day: today }]);
  const counts = answerCounts(team, sprint, members, { states, prompts, on: today });
  return sprintTime(team, sprint, members, today, isDayOver(counts));
}

/** How many members have open cards or were asked today, and how many of them have met the day. */
export function answerCounts(
  team: Team,
  sprint: Pick<Sprint, 'id' | 'startsOn' | 'endsOn'>,
  members: readonly Member[],
  {
    states,
    prompts,
    on,
  }: {
    readonly states: readonly SprintCardState[];
    readonly prompts: readonly Prompt[];
    readonly on: Day;
  },
): { asked: number; answered: number } {
  const working = workersOf(members, sprint.id).filter(
    (member) => memberShareOf(team, member, on) > 0 && isQuestionDay(team, sprint, member, on),
  );
  const active = new Set(working.map(({ userId }) => userId));
  const owners = states
    .filter((state) => isOpenCard(state) && state.card.enteredOn <= on)
    .flatMap(({ card }) => card.ownerIds);
  const asked = new Set(
    [...owners, ...prompts.map(({ userId }) => userId)].filter((userId) => active.has(userId)),
  );
  const met = prompts.filter(({ userId, state }) => state !== 'asked' && asked.has(userId));
  return { asked: asked.size, answered: met.length };
}
