/**
 * The kinds of post. Each is declared once, with the fields that it is about and how what it says is made from the state
 * at the time of delivery. The columns' check, the types and what is delivered follow from the declaration.
 */

import { randomUUID } from 'node:crypto';
import { adviceOf } from '../advice/advice-of.ts';
import { needsNoLastCall, needsNoReminder } from '../answering/prompt-content.ts';
import { type CardLine, cardLine, isOpenCard, needsOwner } from '../cards/card-line.ts';
import { type VerdictContent, verdictContent } from '../closing/verdict-content.ts';
import { commitmentOf, type PlanContent } from '../planning/plan-content.ts';
import type { Transaction } from '../ports/store.ts';
import { erasedOn } from '../privacy/promised-times.ts';
import { retroContent } from '../retro/retro-content.ts';
import { facilitatorIdsOf, facilitatorsOrMembers } from '../team/place.ts';
import { activeMembers, type Role, type SprintHeading, type Team, workersOf } from '../team/team.ts';
import { readChanges } from '../team/team-changes.ts';
import { digestContent } from '../watching/digest-content.ts';
import { statusContent } from '../watching/status-content.ts';
import { crossing, type Word } from '../watching/watch.ts';
import { aboutDay } from './about-day.ts';
import type { ChannelCause, UndeliveredCause } from './delivery-failure.ts';
import {
  aboutNothing,
  aboutSprint,
  aboutTeam,
  type ChartWanted,
  isLate,
  type KindDeclaration,
} from './kind-declaration.ts';
import type { NewPost, Post, PostedAt, SubjectFields } from './posts.ts';

export const POST_KINDS = {
  'daily-prompt': aboutDay({ skipIfMet: false }),
  reminder: aboutDay({ skipIfMet: true, isMet: needsNoReminder }),
  'last-call': aboutDay({ skipIfMet: true, isMet: needsNoLastCall }),

  'team-set-up': aboutTeam(['byUserId'], async ({ tx, team }) => {
    const members = (await tx.read.membersOf(team.id)).filter(({ isActive }) => isActive);
    const [sprint] = await tx.read.openSprintsOf(team.id);
    return {
      content: {
        team,
        /** That goes on, where a team was taken over. */
        sprintName: sprint?.name,
        memberIds: activeMembers(members).map(({ userId }) => userId),
        facilitatorIds: members.filter(({ isFacilitator }) => isFacilitator).map(({ userId }) => userId),
      },
    };
  }),

  /** `reason`: what has changed. */
  'team-changed': aboutTeam(['byUserId', 'reason'], async ({ team, subject: { byUserId, reason } }) => ({
    content: { team, byUserId, changes: readChanges(reason) },
  })),

  /** `reason`: the roles, parted by spaces. */
  'role-given': aboutTeam(
    ['byUserId', 'reason'],
    async ({ tx, team, post, subject: { byUserId, reason } }) => {
      const { userId } = post.recipient as { readonly userId: string };
      const person = (await tx.read.membersOf(team.id)).find((one) => one.userId === userId && one.isActive);
      const holds: Readonly<Record<Role, boolean>> = {
        member: person?.isMember === true,
        facilitator: person?.isFacilitator === true,
        'product-owner': team.productOwnerId === userId,
      };
      const given = reason.split(' ') as Role[];
      const roles = post.postedAt === undefined ? given.filter((role) => holds[role]) : given;
      if (roles.length === 0) return undefined;
      return { content: { team, roles, byUserId, isOwnDoing: byUserId === userId } };
    },
  ),

  /** To somebody whom a facilitator took off the team. */
  'taken-off': aboutTeam(['byUserId'], async ({ tx, team, post, subject: { byUserId } }) => {
    const { userId } = post.recipient as { readonly userId: string };
    const isBack = (await tx.read.membersOf(team.id)).some((one) => one.userId === userId && one.isActive);
    if (isBack && post.postedAt === undefined) return undefined;
    return { content: { team, byUserId, isProductOwner: team.productOwnerId === userId } };
  }),

  'no-facilitator': aboutTeam([], async ({ tx, team, post }) => {
    const members = await tx.read.membersOf(team.id);
    const { userId } = post.recipient as { readonly userId: string };
    const isTheirTurn =
      facilitatorIdsOf(members).length === 0 && facilitatorsOrMembers(members).includes(userId);
    return isTheirTurn || post.postedAt ? { content: { team } } : undefined;
  }),

  /** `reason`: the role, which the platform's word on somebody ended. To those who lead the team now, and to who did. */
  'role-ended': aboutTeam(['reason'], async ({ tx, team, subject: { reason } }) => ({
    content: {
      team,
      role: reason as Exclude<Role, 'member'>,
      facilitatorIds: facilitatorIdsOf(await tx.read.membersOf(team.id)),
    },
  })),

  'team-moved': aboutTeam(['byUserId'], async ({ team, post: { recipient }, subject: { byUserId } }) => ({
    content: { team, byUserId, isHere: 'channelId' in recipient && recipient.channelId === team.channelId },
  })),

  /** To the conversation with somebody who was erased. `reason`: how many messages went, and how many could not. */
  'messages-removed': aboutNothing(['reason'], async ({ subject: { reason } }) => {
    const [removed = 0, left = 0] = reason.split(' ').map(Number);
    return { content: { removed, left } };
  }),

  'team-ended': aboutTeam(['byUserId'], async ({ team, post, subject: { byUserId } }) =>
    team.endedAt === undefined && post.postedAt === undefined
      ? undefined
      : { content: { team, byUserId, erasedOn: team.endedAt && erasedOn(team, team.endedAt) } },
  ),
  /** The clock ended it: no sprint for long. */
  'team-idle': aboutTeam([], async ({ team, post }) =>
    team.endedAt === undefined && post.postedAt === undefined
      ? undefined
      : { content: { team, erasedOn: team.endedAt && erasedOn(team, team.endedAt) } },
  ),
  'team-resumed': aboutTeam(['byUserId'], async ({ team, subject: { byUserId } }) => ({
    content: { team, byUserId },
  })),

  'import-removed': aboutTeam(['byUserId', 'reason'], async ({ team, subject: { byUserId, reason } }) => ({
    content: { team, byUserId, sprintName: reason },
  })),

  plan: aboutSprint(['byUserId'], async ({ team, sprint, states, subject: { byUserId } }) => {
    const cards = states.filter(({ card }) => card.origin === 'planned').map(cardLine);
    const plan: PlanContent = { team, sprint, commitmentPoints: commitmentOf(cards), cards, byUserId };
    return { content: { plan } };
  }),

  'goal-question': aboutSprint([], async ({ team, sprint, post }) => {
    const { goalOutcome: outcome, state } = sprint;
    if (post.postedAt === undefined && (outcome || state === 'cancelled')) return undefined;
    const heading: SprintHeading = { team, sprint };
    return { content: { heading, outcome } };
  }),

  'value-question': aboutSprint([], async ({ tx, team, sprint, post }) => {
    const past = (await tx.read.pastSprintsOf(team.id)).find(({ sprintId }) => sprintId === sprint.id);
    const value = past?.recordedValue;
    if (post.postedAt === undefined && (past === undefined || value !== undefined)) return undefined;
    const heading: SprintHeading = { team, sprint };
    return { content: { heading, value } };
  }),

  /** `reason`: the experiment's id. */
  'experiment-question': aboutSprint(
    ['reason'],
    async ({ tx, team, sprint, post, now, subject: { reason: id } }) => {
      if (sprint.state !== 'closed') return undefined;
      const { experiments } = await verdictContent(tx, team, sprint, now);
      const result = experiments.find(({ experiment }) => experiment.id === id);
      if (!result || (post.postedAt === undefined && result.experiment.ended)) return undefined;
      return { content: { team, result } };
    },
  ),

  verdict: aboutSprint([], async ({ tx, team, members, sprint, states, now }) => ({
    content: { verdict: await verdictContent(tx, team, sprint, now) },
    chart: { team, members, sprint, states },
  })),
  'direct-verdict': aboutSprint([], async ({ tx, team, members, sprint, states, now }) => ({
    content: { verdict: await verdictContent(tx, team, sprint, now) },
    chart: { team, members, sprint, states },
  })),
  'verdict-numbers': underVerdict(() => true),
  'verdict-cards': underVerdict(
    ({ cards, planChanges }) => cards.some(isNotAsPlanned) || planChanges.length > 0,
  ),
  'verdict-notes': underVerdict(({ notes, experiments }) => notes.length > 0 || experiments.length > 0),

  cancelled: aboutSprint(
    ['byUserId', 'reason'],
    async ({ tx, team, members, sprint, states, now, subject: { byUserId, reason } }) => ({
      content: { verdict: await verdictContent(tx, team, sprint, now), byUserId, reason },
      chart: { team, members, sprint, states },
    }),
  ),

  'owner-needed': aboutSprint([], async ({ team, sprint, states, post }) => {
    const cards = sprint.state === 'open' ? states.filter(needsOwner).map(cardLine) : [];
    if (cards.length === 0 && post.postedAt === undefined) return undefined;
    const heading: SprintHeading = { team, sprint };
    return { content: { heading, cards } };
  }),

  'guest-welcome': aboutSprint(
    ['byUserId'],
    async ({ team, members, sprint, post, subject: { byUserId } }) => {
      const { userId } = post.recipient as { readonly userId: string };
      const guest = workersOf(members, sprint.id).find((one) => one.userId === userId);
      if (post.postedAt === undefined && (!guest || sprint.state !== 'open')) return undefined;
      const heading: SprintHeading = { team, sprint };
      return { content: { heading, from: guest?.joinedOn ?? sprint.startsOn, byUserId } };
    },
  ),

  'cards-given': aboutSprint(
    ['byUserId', 'cardIds'],
    async ({ team, sprint, states, post, subject: { byUserId, cardIds } }) => {
      const { userId } = post.recipient as { readonly userId: string };
      const cards = states
        .filter((state) => cardIds.includes(state.card.id) && isOpenCard(state))
        .map(cardLine)
        .filter(({ ownerIds }) => ownerIds.includes(userId));
      if (post.postedAt === undefined && (cards.length === 0 || sprint.state !== 'open')) return undefined;
      const heading: SprintHeading = { team, sprint };
      return { content: { heading, cards, byUserId } };
    },
  ),

  'cards-blocked': aboutSprint(['cardIds'], async ({ team, sprint, states, post, subject: { cardIds } }) => {
    const cards = states
      .map(cardLine)
      .filter(({ cardId, blocked }) => blocked !== undefined && cardIds.includes(cardId));
    if (post.postedAt === undefined && (cards.length === 0 || sprint.state !== 'open')) return undefined;
    const heading: SprintHeading = { team, sprint };
    return { content: { heading, cards } };
  }),

  'cards-dropped': aboutSprint(
    ['byUserId', 'cardIds', 'reason'],
    async ({ team, sprint, states, post, subject: { byUserId, cardIds, reason } }) => {
      const cards = states.map(cardLine).filter(({ cardId }) => cardIds.includes(cardId));
      const isTakenBack = cards.every(({ state }) => state !== 'dropped');
      if (post.postedAt === undefined && isTakenBack) return undefined;
      const heading: SprintHeading = { team, sprint };
      return { content: { heading, cards, byUserId, reason, isTakenBack } };
    },
  ),

  digest: aboutSprint(['on'], async ({ tx, team, members, sprint, records, now, post, subject: { on } }) => {
    if (post.postedAt === undefined && isLate(team, sprint, on, now)) return undefined;
    return { content: { digest: await digestContent(tx, { team, members, sprint, records }, on) } };
  }),

  'watch-word': aboutSprint(
    ['on', 'reason'],
    async ({ tx, team, members, sprint, now, post, subject: { on, reason } }) => {
      if (post.postedAt === undefined && isLate(team, sprint, on, now)) return undefined;
      const status = await statusContent(tx, { team, members }, sprint, on);
      const word = reason as Word;
      return { content: { status, word, crossed: crossing(word, status.summary, team.thresholds) } };
    },
  ),

  'weekly-line': aboutSprint(['on'], async ({ tx, team, members, sprint, now, post, subject: { on } }) => {
    if (post.postedAt === undefined && isLate(team, sprint, on, now)) return undefined;
    const status = await statusContent(tx, { team, members }, sprint, on);
    return { content: { status, surpriseCeiling: team.thresholds.surpriseRatioAtMost } };
  }),

  'channel-unreachable': aboutTeam(['reason'], async ({ team, subject: { reason } }) => ({
    content: { team, cause: reason as ChannelCause },
  })),

  'member-unreachable': aboutTeam(['userId', 'reason'], async ({ team, subject: { userId, reason } }) => ({
    content: { team, userId, cause: reason as UndeliveredCause },
  })),

  'shared-status': aboutSprint(
    ['byUserId', 'on'],
    async ({ tx, team, members, sprint, states, subject: { on, byUserId } }) => ({
      content: { status: await statusContent(tx, { team, members }, sprint, on), byUserId },
      chart: { team, members, sprint, states },
    }),
  ),

  'shared-retro': aboutSprint(['byUserId'], async ({ tx, team, sprint, now, subject: { byUserId } }) => ({
    content: { retro: await retroContent(tx, team, sprint, now), byUserId },
  })),

  'shared-advice': aboutTeam(
    ['byUserId', 'on', 'question'],
    async ({ tx, team, subject: { question, on, byUserId } }) => {
      const advice = await adviceOf(tx, team, await tx.read.membersOf(team.id), question, on);
      return { content: { advice, byUserId }, chart: { advice } };
    },
  ),
};

export type PostKind = keyof typeof POST_KINDS;

/** What a post of the kind is about. */
export type SubjectOf<Kind extends PostKind> = Kind extends PostKind
  ? (typeof POST_KINDS)[Kind] extends KindDeclaration<infer Field, unknown>
    ? { readonly kind: Kind } & Pick<SubjectFields, Field>
    : never
  : never;

/**
 * What a post of the kind says, as data; the chat adapter turns it into words and blocks. `replaces`: it says that it
 * was sent in place of this message.
 */
export type ContentOf<Kind extends PostKind> = Kind extends PostKind
  ? (typeof POST_KINDS)[Kind] extends KindDeclaration<infer _, infer Content>
    ? { readonly kind: Kind; readonly replaces?: PostedAt } & Content
    : never
  : never;
export type MessageContent = ContentOf<PostKind>;

/** Undefined: there is nothing to say any more, so a post that is not out yet is skipped. */
export async function postWords(
  tx: Transaction,
  post: Post,
  now: Date,
): Promise<{ content: MessageContent; chart: ChartWanted | undefined } | undefined> {
  const { kind } = post.subject;
  const { make } = POST_KINDS[kind as PostKind] as KindDeclaration<keyof SubjectFields, object>;
  const made = await make({ tx, post, subject: post.subject as SubjectFields, now });
  if (!made) return undefined;
  const replaces = post.replaces && { replaces: post.replaces };
  return { content: { kind, ...replaces, ...made.content } as MessageContent, chart: made.chart };
}

/** Whether its message may stay as it is when the platform lets nobody change it any more. */
export function mayStayAsItIs({ subject }: Post): boolean {
  const declaration: { readonly mayStayAsItIs?: true } = POST_KINDS[subject.kind as PostKind];
  return declaration.mayStayAsItIs ?? false;
}

/** A post to the team's channel. */
export function channelPost(team: Team, subject: SubjectOf<PostKind>): NewPost {
  return newPost(team, { channelId: team.channelId }, subject);
}

/** A post to a person's direct messages. */
export function directPost(team: Team, userId: string, subject: SubjectOf<PostKind>): NewPost {
  return newPost(team, { userId }, subject);
}

function newPost(
  { workspaceId }: Team,
  recipient: NewPost['recipient'],
  subject: NewPost['subject'],
): NewPost {
  return { id: randomUUID(), workspaceId, recipient, subject };
}

/** A reply below the verdict; skipped while there is nothing to say. */
function underVerdict(hasWords: (verdict: VerdictContent) => boolean) {
  return aboutSprint([], async ({ tx, team, sprint, post, now }) => {
    const verdict = await verdictContent(tx, team, sprint, now);
    return hasWords(verdict) || post.postedAt ? { content: { verdict } } : undefined;
  });
}

function isNotAsPlanned({ surprisePoints, driftPoints, origin, state }: CardLine): boolean {
  return surprisePoints !== 0 || driftPoints !== 0 || origin === 'pulled-in' || state !== 'finished';
}
