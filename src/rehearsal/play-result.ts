/** What came of a play: for each sprint its numbers by the names of the code, and every post. */

import { type SprintCardState, statesOf } from '../app/cards/card-line.ts';
import { reopenUntil, sprintDays } from '../app/clock/sprint-clock.ts';
import type { LeadingNoteId } from '../app/closing/leading-note.ts';
import { askedPrompts } from '../app/closing/sprint-habits.ts';
import { verdictContent } from '../app/closing/verdict-content.ts';
import type { Direction } from '../app/experiments/experiment.ts';
import type { ExperimentResult } from '../app/experiments/experiment-results.ts';
import { memberDaysBy } from '../app/history/past-sprint-at-closing.ts';
import type { Reading } from '../app/ports/store.ts';
import {
  datedWorkersOf,
  everWorkersOf,
  type GoalMet,
  type Sprint,
  type SprintResult,
  type Team,
} from '../app/team/team.ts';
import { RATIO_IDS, type RatioId, type SprintRatios } from '../sprint/sprint-ratios.ts';
import type { SprintTotals } from '../sprint/totals.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import type { Verdict } from '../sprint/verdict.ts';
import { reasonSentence } from '../words/undefined.ts';
import { TEAM_CHANNEL_ID } from './cast.ts';
import type { PlayedPlan, Player, PlayRefusal } from './player.ts';
import type { Rehearsal } from './rehearsal.ts';

/** A post as a member of the workspace got it. */
export interface PlayedPost {
  /** The channel's id or the member's id in the scenario. */
  readonly to: { readonly channel: string } | { readonly member: string };
  /** ISO 8601, simulated time. */
  readonly at: string;
  /** The full text as it was last. */
  readonly text: string;
  /** Alternative texts of its images. */
  readonly altTexts: readonly string[];
  /** Names of the files that it shares. */
  readonly fileNames: readonly string[];
  /** What it said before each update, oldest first. */
  readonly earlierTexts: readonly string[];
  /** True for a reply in the thread of another post. */
  readonly inThread: boolean;
  /** True for an answer that only this person saw. */
  readonly onlyForThem: boolean;
}

interface PlayedCard {
  readonly key: string;
  readonly title: string;
  readonly link?: string | undefined;
  readonly origin: 'planned' | 'pulled-in';
  readonly owners: readonly string[];
  readonly estimatePoints: number;
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly growthPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  readonly trueSizePoints: number;
  readonly state: 'open' | 'finished' | 'dropped';
}

/** A number, or why there is none, in words. */
type PlayedRatio = number | { readonly undefined: string };

interface PlayedExperiment {
  readonly text: string;
  readonly ratio: RatioId;
  readonly direction: Direction;
  /** In the sprint that had closed last when it began; `null` when none had. */
  readonly before: PlayedRatio | null;
  readonly now: PlayedRatio;
  /** Whether the number is beyond ordinary variation; `null` while there are too few sprints to know. */
  readonly beyondOrdinary: boolean | null;
}

export type PlayedSprint = SprintTotals &
  Readonly<Record<RatioId, PlayedRatio>> & {
    readonly name: string;
    readonly startsOn: string;
    readonly endsOn: string;
    readonly state: Sprint['state'];
    /** Whether its goal was met; `null` while nobody has said. */
    readonly goalMet: GoalMet | null;
    /** Working days of all members together, less the days off and away. */
    readonly memberDays: number;
    /** Questions to members on days on which they work, and how many of them were met. */
    readonly askedPrompts: number;
    readonly answeredPrompts: number;
    /** Sum of the estimates of all cards: commitment + pulled-in work. */
    readonly estimatePoints: number;
    /** Pairs of card and working day at whose evening the card was blocked. */
    readonly blockedCardDays: number;
    /** `null` while the sprint is open, and for a cancelled one. */
    readonly verdict: Verdict | null;
    readonly failedTests: readonly string[];
    readonly noteIds: readonly string[];
    /** The note that the verdict leads with; `null` while there is no verdict, and for a cancelled sprint. */
    readonly leadingNoteId: LeadingNoteId | null;
    /** What was being tried at its verdict, in the order in which it began. */
    readonly experiments: readonly PlayedExperiment[];
    /** Until when its numbers can be corrected, ISO 8601; `null` for a cancelled sprint, which can't be reopened. */
    readonly reopenableUntil: string | null;
    readonly cards: readonly PlayedCard[];
    readonly posts: readonly PlayedPost[];
  };

export interface PlayResult {
  readonly team: string;
  readonly sprints: readonly PlayedSprint[];
  readonly refusals: readonly PlayRefusal[];
  /** Posts from before the first sprint. */
  readonly posts: readonly PlayedPost[];
}

export async function playResult(rehearsal: Rehearsal, { refusals, plans }: Player): Promise<PlayResult> {
  const { deps, workspaceId, cast } = rehearsal;
  const posts = playedPosts(rehearsal);
  const postsBetween = (from: number | undefined, to: number | undefined): PlayedPost[] =>
    posts.slice(from, to).filter((post) => post !== undefined);
  const { team, sprints } = await deps.store.transaction(async (tx) => {
    const { read } = tx;
    const found = await read.teamByChannel(workspaceId, TEAM_CHANNEL_ID);
    const all = found ? await read.sprintsOf(found.id) : [];
    const withRecords = [];
    for (const sprint of all) {
      const result = await read.latestResult(sprint.id);
      const states = statesOf(await read.recordsOf(sprint.id));
      const days = await playedDays(read, found as Team, sprint);
      const isClosed = found && sprint.state === 'closed';
      const verdict = isClosed && (await verdictContent(tx, found, sprint, deps.clock.now()));
      withRecords.push({
        sprint,
        result,
        states,
        days,
        leadingNoteId: verdict ? verdict.leadingNoteId : null,
        experiments: verdict ? verdict.experiments.map(playedExperiment) : [],
      });
    }
    return { team: found, sprints: withRecords };
  });
  return {
    team: team?.name ?? '',
    sprints: sprints.map(({ sprint, result, states, days, leadingNoteId, experiments }, i) => ({
      ...playedSprint(sprint, result),
      leadingNoteId,
      experiments,
      reopenableUntil: reopenableUntil(team, sprint),
      ...days,
      cards: states.map((state) => playedCard(state, plans[i], cast.memberIdOf)),
      posts: postsBetween(plans[i]?.firstPost, plans[i + 1]?.firstPost),
    })),
    refusals,
    posts: postsBetween(0, plans[0]?.firstPost),
  };
}

type PlayedDays = Pick<PlayedSprint, 'memberDays' | 'askedPrompts' | 'answeredPrompts'>;

/** How much working time the sprint had, and how its questions were met. */
async function playedDays(read: Reading, team: Team, sprint: Sprint): Promise<PlayedDays> {
  const days = sprintDays(team, sprint);
  const people = await read.membersOf(team.id);
  const prompts = await read.promptsOf(days.map((day) => ({ sprintId: sprint.id, day })));
  const asked = askedPrompts(team, sprint, everWorkersOf(people, sprint.id), prompts);
  return {
    memberDays: memberDaysBy(team, sprint, datedWorkersOf(people, sprint.id), days, prompts),
    askedPrompts: asked.length,
    answeredPrompts: asked.filter(({ state }) => state !== 'asked').length,
  };
}

function playedSprint(
  sprint: Sprint,
  result: SprintResult | undefined,
): Omit<
  PlayedSprint,
  'cards' | 'posts' | 'leadingNoteId' | 'experiments' | 'reopenableUntil' | keyof PlayedDays
> {
  if (!result) throw new Error(`${sprint.name} has no result: it was not closed.`);
  const { totals, ratios, verdict, notes } = result.summary;
  const { name, startsOn, endsOn, state } = sprint;
  return {
    name,
    startsOn,
    endsOn,
    state,
    goalMet: sprint.goalOutcome?.met ?? null,
    ...totals,
    ...playedRatios(ratios),
    estimatePoints: totals.commitmentPoints + totals.pulledInPoints,
    blockedCardDays: result.summary.blockedCardDays ?? 0,
    verdict: result.cancelled ? null : verdict.verdict,
    failedTests: result.cancelled ? [] : verdict.failedTests.map(({ id }) => id),
    noteIds: result.cancelled ? [] : notes.map(({ id }) => id),
  };
}

function reopenableUntil(team: Team | undefined, sprint: Sprint): string | null {
  const until = team && sprint.state === 'closed' ? reopenUntil(team, sprint) : undefined;
  return until?.toISOString() ?? null;
}

function playedExperiment({ experiment, before, now, beyondOrdinary }: ExperimentResult): PlayedExperiment {
  const { text, ratio, direction } = experiment;
  return {
    text,
    ratio,
    direction,
    before: before === undefined ? null : playedRatio(before),
    now: playedRatio(now),
    beyondOrdinary: beyondOrdinary ?? null,
  };
}

function playedRatio(ratio: Ratio): PlayedRatio {
  return isDefined(ratio) ? ratio : { undefined: reasonSentence(ratio.undefined) };
}

function playedRatios(ratios: SprintRatios): Record<RatioId, PlayedRatio> {
  const entries = RATIO_IDS.map((id) => [id, playedRatio(ratios[id])]);
  return Object.fromEntries(entries) as Record<RatioId, PlayedRatio>;
}

function playedCard(
  state: SprintCardState,
  plan: PlayedPlan | undefined,
  memberIdOf: (userId: string) => string | undefined,
): PlayedCard {
  const { card, workedPoints, leftPoints, surprisePoints, driftPoints, trueSizePoints } = state;
  return {
    key: plan?.keys.get(card.number) ?? card.key,
    title: card.title,
    ...(card.link === undefined ? {} : { link: card.link }),
    origin: card.origin,
    owners: card.ownerIds.map((userId) => memberIdOf(userId) ?? userId),
    estimatePoints: card.estimatePoints,
    workedPoints,
    leftPoints,
    growthPoints: surprisePoints + driftPoints,
    surprisePoints,
    driftPoints,
    trueSizePoints,
    state: state.droppedOn !== undefined ? 'dropped' : state.finished ? 'finished' : 'open',
  };
}

/** In order; people's own messages are `undefined`, so that places in the list stay those of the workspace. */
function playedPosts({ standIn, cast }: Rehearsal): (PlayedPost | undefined)[] {
  return standIn.allPosts().map((post) => {
    if (!post.byBot) return undefined;
    const member = post.memberId ?? post.ephemeralFor;
    return {
      to:
        member === undefined
          ? { channel: post.channelName ?? post.channelId }
          : { member: cast.memberIdOf(member) ?? member },
      at: new Date(Number.parseFloat(post.ts) * 1_000).toISOString(),
      text: post.text,
      altTexts: post.altTexts,
      fileNames: post.files.map(({ name }) => name),
      earlierTexts: post.earlier.map(({ text }) => text),
      inThread: post.threadTs !== undefined,
      onlyForThem: post.ephemeralFor !== undefined,
    };
  });
}
