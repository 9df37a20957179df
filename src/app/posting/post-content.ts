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
import type { Sprint, Team } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import { burndownImage, statusContent } from '../watching/sprint-status.ts';
import type { MessageContent } from './message-content.ts';
import type { Post } from './posts.ts';

/** What to draw beside the words: the burndown of a sprint, or the picture of an answer. */
export type ChartWanted =
  | { readonly team: Team; readonly sprint: Sprint; readonly states: readonly SprintCardState[] }
  | { readonly advice: Advice };

export interface PostWords {
  readonly content: MessageContent;
  readonly chart: ChartWanted | undefined;
}

/** Undefined: there is nothing to say any more, so a post that is not out yet is skipped. */
export async function postWords(tx: Transaction, post: Post, now: Date): Promise<PostWords | undefined> {
  const { subject } = post;
  // Nothing of one workspace is told in another, whatever a record says.
  const isOurs = (team: Team): boolean => team.workspaceId === post.workspaceId;
  if (subject.kind === 'team-set-up') {
    const team = await tx.read.teamById(subject.teamId);
    if (!team || !isOurs(team)) return undefined;
    const members = (await tx.read.membersOf(team.id)).filter(({ isActive }) => isActive);
    const content: MessageContent = {
      kind: 'team-set-up',
      team,
      memberIds: members.map(({ userId }) => userId),
      facilitatorIds: members.filter(({ isFacilitator }) => isFacilitator).map(({ userId }) => userId),
    };
    return { content, chart: undefined };
  }
  if (subject.kind === 'shared-advice') {
    const team = await tx.read.teamById(subject.teamId);
    if (!team || !isOurs(team)) return undefined;
    const { byUserId, question, on } = subject;
    const advice = await adviceOf(tx, team, await tx.read.membersOf(team.id), question, on);
    return { content: { kind: 'shared-advice', advice, byUserId }, chart: { advice } };
  }
  const [found, records, asked] = await waitForAll([
    tx.read.sprintWithTeam(subject.sprintId),
    tx.read.recordsOf(subject.sprintId),
    'day' in subject ? tx.read.promptOf(subject.sprintId, subject.userId, subject.day) : undefined,
  ]);
  if (!found || !isOurs(found.team)) return undefined;
  const { team, sprint, members } = found;
  const states = statesOf(records);
  const chart = { team, sprint, states };
  switch (subject.kind) {
    case 'daily-prompt':
    case 'reminder':
    case 'last-call': {
      const { userId, day } = subject;
      const prompt = promptContentOf(team, sprint, userId, day, records, asked?.state ?? 'asked');
      const isLate = subject.day !== todayOf(team, now) || sprint.state !== 'open';
      // A co-owner may have finished the member's last card meanwhile.
      const hasOpenCards = prompt.cards.some(({ state }) => state === 'open');
      const isMet = subject.kind !== 'daily-prompt' && (prompt.state !== 'asked' || !hasOpenCards);
      // A prompt that was held up until its day had passed is not asked afterwards.
      if (post.postedAt === undefined && (isLate || isMet)) return undefined;
      return { content: { kind: subject.kind, prompt }, chart: undefined };
    }
    case 'plan': {
      const cards = states.filter(({ card }) => card.origin === 'planned').map(cardLine);
      const commitmentPoints = cards.reduce((total, card) => total + card.estimatePoints, 0);
      const plan = { team, sprint, commitmentPoints, cards, byUserId: subject.byUserId };
      return { content: { kind: 'plan', plan }, chart: undefined };
    }
    case 'verdict':
      return { content: { kind: 'verdict', verdict: await verdictContent(tx, team, sprint, now) }, chart };
    case 'owner-needed': {
      const cards = sprint.state === 'open' ? states.filter(needsOwner).map(cardLine) : [];
      if (cards.length === 0 && post.postedAt === undefined) return undefined;
      return { content: { kind: 'owner-needed', heading: { team, sprint }, cards }, chart: undefined };
    }
    case 'cancelled': {
      const verdict = await verdictContent(tx, team, sprint, now);
      const { byUserId, reason } = subject;
      return { content: { kind: 'cancelled', verdict, byUserId, reason }, chart };
    }
    case 'shared-status': {
      const status = await statusContent(tx, { team, members }, sprint, subject.on);
      return { content: { kind: 'shared-status', status, byUserId: subject.byUserId }, chart };
    }
  }
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
