/** Makes what a post says from the state at the time of delivery. */

import type { Advice } from '../advice/advice.ts';
import { adviceChart } from '../advice/advice-chart.ts';
import { adviceOf } from '../advice/ask-advice.ts';
import { promptContentOf } from '../answering/prompt-content.ts';
import type { SprintCardState } from '../cards/card-line.ts';
import { cardLine, needsOwner, statesOf } from '../cards/card-line.ts';
import { verdictContent } from '../closing/verdict-content.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { PostImage } from '../ports/messenger.ts';
import type { Transaction } from '../ports/store.ts';
import { todayOf } from '../team/place.ts';
import type { Member, Sprint, SprintRecords, Team } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import { burndownImage, statusContent } from '../watching/sprint-status.ts';
import type { ContentOf, MessageContent } from './message-content.ts';
import type { Post, PostKind, SubjectOf } from './posts.ts';

/** What to draw beside the words: the burndown of a sprint, or the picture of an answer. */
export type ChartWanted =
  | { readonly team: Team; readonly sprint: Sprint; readonly states: readonly SprintCardState[] }
  | { readonly advice: Advice };

/** What a post says and draws. Undefined: there is nothing to say any more. */
type Made<Kind extends PostKind> =
  | { readonly content: ContentOf<Kind>; readonly chart?: ChartWanted }
  | undefined;

/** A post that is due, and how to look up what it is about. */
interface Occasion<Kind extends PostKind> {
  readonly tx: Transaction;
  readonly post: Post;
  readonly subject: SubjectOf<Kind>;
  readonly now: Date;
}

type Maker<Kind extends PostKind> = (occasion: Occasion<Kind>) => Promise<Made<Kind>>;

/** What each kind of post says. */
const MAKERS: { readonly [Kind in PostKind]: Maker<Kind> } = {
  'daily-prompt': dailyPrompt,
  reminder: dailyPrompt,
  'last-call': dailyPrompt,

  'team-set-up': aboutTeam(async ({ tx, team }) => {
    const members = (await tx.read.membersOf(team.id)).filter(({ isActive }) => isActive);
    return {
      content: {
        kind: 'team-set-up',
        team,
        memberIds: members.map(({ userId }) => userId),
        facilitatorIds: members.filter(({ isFacilitator }) => isFacilitator).map(({ userId }) => userId),
      },
    };
  }),

  'shared-advice': aboutTeam(async ({ tx, team, subject: { question, on, byUserId } }) => {
    const advice = await adviceOf(tx, team, await tx.read.membersOf(team.id), question, on);
    return { content: { kind: 'shared-advice', advice, byUserId }, chart: { advice } };
  }),

  plan: aboutSprint(async ({ team, sprint, states, subject: { byUserId } }) => {
    const cards = states.filter(({ card }) => card.origin === 'planned').map(cardLine);
    const commitmentPoints = cards.reduce((total, card) => total + card.estimatePoints, 0);
    return { content: { kind: 'plan', plan: { team, sprint, commitmentPoints, cards, byUserId } } };
  }),

  verdict: aboutSprint(async ({ tx, team, sprint, states, now }) => ({
    content: { kind: 'verdict', verdict: await verdictContent(tx, team, sprint, now) },
    chart: { team, sprint, states },
  })),

  'owner-needed': aboutSprint(async ({ team, sprint, states, post }) => {
    const cards = sprint.state === 'open' ? states.filter(needsOwner).map(cardLine) : [];
    if (cards.length === 0 && post.postedAt === undefined) return undefined;
    return { content: { kind: 'owner-needed', heading: { team, sprint }, cards } };
  }),

  cancelled: aboutSprint(async ({ tx, team, sprint, states, now, subject: { byUserId, reason } }) => ({
    content: { kind: 'cancelled', verdict: await verdictContent(tx, team, sprint, now), byUserId, reason },
    chart: { team, sprint, states },
  })),

  'shared-status': aboutSprint(async ({ tx, team, members, sprint, states, subject: { on, byUserId } }) => ({
    content: {
      kind: 'shared-status',
      status: await statusContent(tx, { team, members }, sprint, on),
      byUserId,
    },
    chart: { team, sprint, states },
  })),
};

/** Undefined: there is nothing to say any more, so a post that is not out yet is skipped. */
export async function postWords(
  tx: Transaction,
  post: Post,
  now: Date,
): Promise<{ content: MessageContent; chart: ChartWanted | undefined } | undefined> {
  const make = MAKERS[post.subject.kind] as (occasion: Occasion<PostKind>) => Promise<Made<PostKind>>;
  const made = await make({ tx, post, subject: post.subject, now });
  return made && { content: made.content as MessageContent, chart: made.chart };
}

/** Nothing of one workspace is shown in another, whatever a record says. */
function isOurs(post: Post, team: Team): boolean {
  return team.workspaceId === post.workspaceId;
}

type TeamKind = { [Kind in PostKind]: SubjectOf<Kind> extends { teamId: string } ? Kind : never }[PostKind];

function aboutTeam<Kind extends TeamKind>(
  make: (found: Occasion<Kind> & { readonly team: Team }) => Promise<Made<Kind>>,
): Maker<Kind> {
  return async (occasion) => {
    const team = await occasion.tx.read.teamById((occasion.subject as SubjectOf<TeamKind>).teamId);
    return team && isOurs(occasion.post, team) ? make({ ...occasion, team }) : undefined;
  };
}

type SprintKind = {
  [Kind in PostKind]: SubjectOf<Kind> extends { sprintId: string } ? Kind : never;
}[PostKind];

interface FoundSprint {
  readonly team: Team;
  readonly sprint: Sprint;
  readonly members: readonly Member[];
  readonly records: SprintRecords;
  readonly states: readonly SprintCardState[];
}

function aboutSprint<Kind extends SprintKind>(
  make: (found: Occasion<Kind> & FoundSprint) => Promise<Made<Kind>>,
): Maker<Kind> {
  return async (occasion) => {
    const { sprintId } = occasion.subject as SubjectOf<SprintKind>;
    const { read } = occasion.tx;
    const [found, records] = await waitForAll([read.sprintWithTeam(sprintId), read.recordsOf(sprintId)]);
    if (!found || !isOurs(occasion.post, found.team)) return undefined;
    return make({ ...occasion, ...found, records, states: statesOf(records) });
  };
}

type PromptKind = 'daily-prompt' | 'reminder' | 'last-call';

/** A prompt, or what reminds of it. */
async function dailyPrompt<Kind extends PromptKind>(occasion: Occasion<Kind>): Promise<Made<Kind>> {
  const { tx, post, now } = occasion;
  const { kind, sprintId, userId, day } = occasion.subject as SubjectOf<PromptKind>;
  const [found, records, asked] = await waitForAll([
    tx.read.sprintWithTeam(sprintId),
    tx.read.recordsOf(sprintId),
    tx.read.promptOf(sprintId, userId, day),
  ]);
  if (!found || !isOurs(post, found.team)) return undefined;
  const { team, sprint } = found;
  const prompt = promptContentOf(team, sprint, userId, day, records, asked?.state ?? 'asked');
  const isLate = day !== todayOf(team, now) || sprint.state !== 'open';
  // A co-owner may have finished the member's last card in the meantime.
  const hasOpenCards = prompt.cards.some(({ state }) => state === 'open');
  const isMet = kind !== 'daily-prompt' && (prompt.state !== 'asked' || !hasOpenCards);
  // A prompt that was held up until its day had passed is not asked afterwards.
  if (post.postedAt === undefined && (isLate || isMet)) return undefined;
  return { content: { kind, prompt } as ContentOf<PromptKind> as ContentOf<Kind> };
}

/**
 * Draws the chart outside of any transaction: it takes longer than a lock should. Undefined: there is nothing to draw.
 */
export async function chartImage(deps: AppDependencies, wanted: ChartWanted): Promise<PostImage | undefined> {
  if ('advice' in wanted) return adviceChart(deps, wanted.advice);
  return burndownImage(
    deps,
    wanted.team,
    wanted.sprint,
    wanted.states,
    todayOf(wanted.team, deps.clock.now()),
  );
}
