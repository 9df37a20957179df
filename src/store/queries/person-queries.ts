/** Reads what is stored under one person's id. Must never give a row of anybody else. */
import { and, asc, eq, or, type SQL, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import type { PeopleReading } from '../../app/ports/teams.ts';
import { PERSONAL_KINDS, type PersonalKind, type PersonalSum } from '../../app/privacy/personal-data.ts';
import type { Actor } from '../../app/team/team.ts';
import {
  answers,
  cardChanges,
  cardOwners,
  cards,
  experiments,
  installations,
  members,
  planChanges,
  planDrafts,
  posts,
  prompts,
  recordedValues,
  sprints,
  teams,
  visits,
} from '../schema.ts';
import { type PersonalSelect, recordsInPieces, sumInPieces } from './records-in-pieces.ts';
import type { SqlSession } from './sql-session.ts';
import { teamOf } from './team-queries.ts';

/** ISO 8601 in UTC. */
function instantText(column: PgColumn): SQL<string | null> {
  return sql<string | null>`to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
}

/** What every record is counted by, under names that no column has. */
const ofTeam = (team: SQL | PgColumn) => sql<string | null>`${team}`.as('of_team');
const ofDay = (day: SQL | PgColumn) => sql<string | null>`(${day})::text`.as('of_day');

/** Of records that may be many: their place among those of one day. They are put in order here (`records-in-pieces.ts`). */
const inOrder = (order: PgColumn) => ({ inOrder: sql<number>`${order}`.as('in_order') });

export function peopleReading(session: SqlSession): PeopleReading {
  const noTeam = ofTeam(sql`null::text`);
  const noDay = ofDay(sql`null::text`);
  const sprint = sprints.name;
  const card = cards.key;
  const { title, link } = cards;
  const team = ofTeam(teams.name);

  /** Teams of the workspace, in every role of the person. */
  const inWorkspace = ({ workspaceId }: Actor) => eq(teams.workspaceId, workspaceId);

  /** What hangs on a card. */
  const ofCards = (actor: Actor, isTheirs: SQL | undefined) => and(inWorkspace(actor), isTheirs);

  function cardSelects(actor: Actor) {
    const on = ofDay(cards.enteredOn);
    const estimate = cards.estimatePoints;
    const columns = { team, on, sprint, card, title, link, estimate, ...inOrder(cards.number) };
    return {
      cardsOwned: session
        .select(columns)
        .from(cardOwners)
        .innerJoin(cards, eq(cards.id, cardOwners.cardId))
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(ofCards(actor, eq(cardOwners.userId, actor.userId))),
      cardsAdded: session
        .select(columns)
        .from(cards)
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(ofCards(actor, eq(cards.addedBy, actor.userId))),
    };
  }

  function factSelects(actor: Actor) {
    return {
      answers: session
        .select({
          team,
          on: ofDay(answers.day),
          sprint,
          card,
          title,
          worked: answers.workedPoints,
          left: answers.leftPoints,
          surprise: answers.surprisePoints,
          note: answers.note,
          recordedAt: instantText(answers.recordedAt),
          corrects: sql<boolean>`${answers.supersedesId} is not null`,
          ...inOrder(answers.factOrder),
        })
        .from(answers)
        .innerJoin(cards, eq(cards.id, answers.cardId))
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(ofCards(actor, eq(answers.memberId, actor.userId))),
      cardChanges: session
        .select({
          team,
          on: ofDay(cardChanges.day),
          sprint,
          card,
          title,
          change: cardChanges.kind,
          // What it was: theirs to say, or about them.
          byYou: sql<boolean>`${cardChanges.memberId} = ${actor.userId}`,
          aboutYou: sql<boolean>`${cardChanges.userId} is not distinct from ${actor.userId}`,
          reason: sql<string>`case when ${cardChanges.memberId} = ${actor.userId} then ${cardChanges.note} else '' end`,
          recordedAt: instantText(cardChanges.recordedAt),
          ...inOrder(cardChanges.factOrder),
        })
        .from(cardChanges)
        .innerJoin(cards, eq(cards.id, cardChanges.cardId))
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(
          ofCards(actor, or(eq(cardChanges.memberId, actor.userId), eq(cardChanges.userId, actor.userId))),
        ),
    };
  }

  function postSelects(actor: Actor) {
    const columns = {
      team: ofTeam(sql`coalesce(${teams.name}, (select own.name from loadline.sprints as s
        join loadline.teams as own on own.id = s.team_id where s.id = ${posts.sprintId}))`),
      // The day that it is about says more than when it was recorded.
      on: ofDay(sql`coalesce(${posts.subjectDay}::text, ${instantText(posts.createdAt)})`),
      kind: posts.kind,
      recordedAt: instantText(posts.createdAt),
      state: posts.state,
      ...inOrder(posts.entryOrder),
    };
    const isTo = or(eq(posts.userId, actor.userId), eq(posts.subjectUserId, actor.userId));
    return {
      messagesToYou: session
        .select({
          ...columns,
          conversation: posts.postedChannelId,
          message: posts.postedTs,
        })
        .from(posts)
        .leftJoin(teams, eq(teams.id, posts.teamId))
        .where(and(eq(posts.workspaceId, actor.workspaceId), isTo)),
      postsByYou: session
        .select({ ...columns, reason: posts.reason, question: posts.question })
        .from(posts)
        .leftJoin(teams, eq(teams.id, posts.teamId))
        .where(and(eq(posts.workspaceId, actor.workspaceId), eq(posts.byUserId, actor.userId))),
    };
  }

  function selectsOf(actor: Actor): { readonly [Kind in PersonalKind]: PersonalSelect } {
    const isUser = (column: PgColumn) => and(inWorkspace(actor), eq(column, actor.userId));
    return {
      memberships: session
        .select({
          team,
          on: noDay,
          name: members.name,
          facilitator: members.isFacilitator,
          mayFacilitate: members.mayFacilitate,
          morningDigestAt: members.digestAt,
          getsVerdicts: members.getsVerdicts,
          askedAt: members.promptAt,
          askedInZone: members.promptTimeZone,
          onTheTeam: members.isActive,
          worksOn: members.worksOn,
          worksOnBefore: members.worksOnBefore,
          daysOff: members.daysOff,
          joinedOn: members.joinedOn,
          leftOn: members.leftOn,
          guestIn: members.guestIn,
        })
        .from(members)
        .innerJoin(teams, eq(teams.id, members.teamId))
        .where(isUser(members.userId))
        .orderBy(asc(teams.name), asc(teams.id)),
      productOwnerOf: session
        .select({ team, on: noDay, getsVerdicts: teams.ownerGetsVerdicts })
        .from(teams)
        .where(isUser(teams.productOwnerId))
        .orderBy(asc(teams.name), asc(teams.id)),
      ...factSelects(actor),
      prompts: session
        .select({
          team,
          on: ofDay(prompts.day),
          sprint,
          state: prompts.state,
          metAt: instantText(prompts.answeredAt),
        })
        .from(prompts)
        .innerJoin(sprints, eq(sprints.id, prompts.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(isUser(prompts.userId)),
      ...cardSelects(actor),
      drafts: session
        .select({ team, on: ofDay(instantText(planDrafts.savedAt)), draft: planDrafts.draft })
        .from(planDrafts)
        .innerJoin(teams, eq(teams.id, planDrafts.teamId))
        .where(isUser(planDrafts.userId))
        .orderBy(asc(teams.name), asc(teams.id)),
      planChanges: session
        .select({
          team,
          on: ofDay(instantText(planChanges.changedAt)),
          sprint,
          card: cards.key,
          part: planChanges.part,
          was: planChanges.was,
          became: planChanges.became,
          ...inOrder(planChanges.entryOrder),
        })
        .from(planChanges)
        .leftJoin(cards, eq(cards.id, planChanges.cardId))
        .innerJoin(sprints, eq(sprints.id, planChanges.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(isUser(planChanges.changedBy)),
      goalsJudged: session
        .select({
          team,
          on: ofDay(instantText(sprints.goalSaidAt)),
          sprint,
          goal: sprints.goal,
          met: sprints.goalMet,
          note: sprints.goalNote,
        })
        .from(sprints)
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(isUser(sprints.goalSaidBy))
        .orderBy(asc(sprints.goalSaidAt)),
      experimentsBegun: session
        .select({
          team,
          on: ofDay(instantText(experiments.begunAt)),
          text: experiments.text,
          ratio: experiments.ratio,
          direction: experiments.direction,
        })
        .from(experiments)
        .innerJoin(teams, eq(teams.id, experiments.teamId))
        .where(isUser(experiments.begunBy))
        .orderBy(asc(experiments.begunAt)),
      experimentsEnded: session
        .select({
          team,
          on: ofDay(instantText(experiments.endedAt)),
          text: experiments.text,
          outcome: experiments.outcome,
        })
        .from(experiments)
        .innerJoin(teams, eq(teams.id, experiments.teamId))
        .where(isUser(experiments.endedBy))
        .orderBy(asc(experiments.endedAt)),
      recordedValues: session
        .select({
          team,
          on: ofDay(instantText(recordedValues.recordedAt)),
          sprint,
          value: recordedValues.value,
        })
        .from(recordedValues)
        .innerJoin(sprints, eq(sprints.id, recordedValues.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(isUser(recordedValues.recordedBy))
        .orderBy(asc(recordedValues.recordedAt)),
      ...postSelects(actor),
      visits: session
        .select({
          team: noTeam,
          on: ofDay(sql`coalesce(${instantText(visits.homeOpenedAt)}, ${instantText(visits.welcomedAt)})`),
          homeOpenedAt: instantText(visits.homeOpenedAt),
          welcomedAt: instantText(visits.welcomedAt),
        })
        .from(visits)
        .where(and(eq(visits.workspaceId, actor.workspaceId), eq(visits.userId, actor.userId))),
      installations: session
        .select({
          team: noTeam,
          on: ofDay(instantText(installations.installedAt)),
          workspace: installations.workspaceName,
        })
        .from(installations)
        .where(
          and(eq(installations.workspaceId, actor.workspaceId), eq(installations.installedBy, actor.userId)),
        ),
    } as unknown as { readonly [Kind in PersonalKind]: PersonalSelect };
  }

  return {
    async personalSums(actor) {
      const selects = selectsOf(actor);
      const sums: PersonalSum[] = [];
      for (const kind of PERSONAL_KINDS) {
        const sum = await sumInPieces(session, selects[kind]);
        if (sum.count > 0) sums.push({ ...sum, kind });
      }
      return sums;
    },

    async personalRecords(actor, kind) {
      return recordsInPieces(session, selectsOf(actor)[kind]);
    },

    async teamsOfPerson(actor) {
      const rows = await session
        .select({ team: teams })
        .from(teams)
        .leftJoin(members, and(eq(members.teamId, teams.id), eq(members.userId, actor.userId)))
        .where(
          and(
            inWorkspace(actor),
            or(eq(members.userId, actor.userId), eq(teams.productOwnerId, actor.userId)),
          ),
        )
        .orderBy(asc(teams.name), asc(teams.id));
      return rows.map(({ team }) => teamOf(team));
    },
  };
}
