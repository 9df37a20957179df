/** Reads what is stored under one person's id. Must never give a row of anybody else. */
import { and, asc, eq, or, type SQL, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import type { PeopleReading } from '../../app/ports/teams.ts';
import type { PersonalData } from '../../app/privacy/personal-data.ts';
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
import type { SqlSession } from './sql-session.ts';
import { teamOf } from './team-queries.ts';

/** ISO 8601 in UTC. */
function instantText(column: PgColumn): SQL<string | null> {
  return sql<string | null>`to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
}

export function peopleReading(session: SqlSession): PeopleReading {
  const nothing = sql<null>`null`;
  const sprint = sprints.name;
  const card = cards.key;
  const { title, link } = cards;
  const team = teams.name;

  /** Teams of the workspace, in every role of the person. */
  const inWorkspace = ({ workspaceId }: Actor) => eq(teams.workspaceId, workspaceId);

  /** What hangs on a card. */
  const ofCards = (actor: Actor, isTheirs: SQL | undefined) => and(inWorkspace(actor), isTheirs);

  async function cardRecords(actor: Actor): Promise<Pick<PersonalData, 'cardsOwned' | 'cardsAdded'>> {
    const estimate = cards.estimatePoints;
    return {
      cardsOwned: await session
        .select({ team, on: cards.enteredOn, sprint, card, title, link, estimate })
        .from(cardOwners)
        .innerJoin(cards, eq(cards.id, cardOwners.cardId))
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(ofCards(actor, eq(cardOwners.userId, actor.userId)))
        .orderBy(asc(cards.enteredOn), asc(cards.number)),
      cardsAdded: await session
        .select({ team, on: cards.enteredOn, sprint, card, title, link, estimate })
        .from(cards)
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(ofCards(actor, eq(cards.addedBy, actor.userId)))
        .orderBy(asc(cards.enteredOn), asc(cards.number)),
    };
  }

  async function factRecords(actor: Actor): Promise<Pick<PersonalData, 'answers' | 'cardChanges'>> {
    return {
      answers: await session
        .select({
          team,
          on: answers.day,
          sprint,
          card,
          title,
          worked: answers.workedPoints,
          left: answers.leftPoints,
          surprise: answers.surprisePoints,
          note: answers.note,
          recordedAt: instantText(answers.recordedAt),
          corrects: sql<boolean>`${answers.supersedesId} is not null`,
        })
        .from(answers)
        .innerJoin(cards, eq(cards.id, answers.cardId))
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(ofCards(actor, eq(answers.memberId, actor.userId)))
        .orderBy(asc(answers.factOrder)),
      cardChanges: await session
        .select({
          team,
          on: cardChanges.day,
          sprint,
          card,
          title,
          change: cardChanges.kind,
          // What it was: theirs to say, or about them.
          byYou: sql<boolean>`${cardChanges.memberId} = ${actor.userId}`,
          aboutYou: sql<boolean>`${cardChanges.userId} is not distinct from ${actor.userId}`,
          reason: sql<string>`case when ${cardChanges.memberId} = ${actor.userId} then ${cardChanges.note} else '' end`,
          recordedAt: instantText(cardChanges.recordedAt),
        })
        .from(cardChanges)
        .innerJoin(cards, eq(cards.id, cardChanges.cardId))
        .innerJoin(sprints, eq(sprints.id, cards.sprintId))
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(
          ofCards(actor, or(eq(cardChanges.memberId, actor.userId), eq(cardChanges.userId, actor.userId))),
        )
        .orderBy(asc(cardChanges.factOrder)),
    };
  }

  async function postRecords(actor: Actor): Promise<Pick<PersonalData, 'messagesToYou' | 'postsByYou'>> {
    const columns = {
      team: sql<string | null>`coalesce(${teams.name}, (select own.name from loadline.sprints as s
        join loadline.teams as own on own.id = s.team_id where s.id = ${posts.sprintId}))`,
      // The day that it is about says more than when it was recorded.
      on: sql<string | null>`coalesce(${posts.subjectDay}::text, ${instantText(posts.createdAt)})`,
      kind: posts.kind,
      recordedAt: instantText(posts.createdAt),
      state: posts.state,
    };
    const isTo = or(eq(posts.userId, actor.userId), eq(posts.subjectUserId, actor.userId));
    return {
      messagesToYou: await session
        .select({
          ...columns,
          conversation: posts.postedChannelId,
          message: posts.postedTs,
        })
        .from(posts)
        .leftJoin(teams, eq(teams.id, posts.teamId))
        .where(and(eq(posts.workspaceId, actor.workspaceId), isTo))
        .orderBy(asc(posts.entryOrder)),
      postsByYou: await session
        .select({ ...columns, reason: posts.reason, question: posts.question })
        .from(posts)
        .leftJoin(teams, eq(teams.id, posts.teamId))
        .where(and(eq(posts.workspaceId, actor.workspaceId), eq(posts.byUserId, actor.userId)))
        .orderBy(asc(posts.entryOrder)),
    };
  }

  return {
    async personalData(actor) {
      const isUser = (column: PgColumn) => and(inWorkspace(actor), eq(column, actor.userId));
      return {
        memberships: await session
          .select({
            team,
            on: nothing,
            name: members.name,
            facilitator: members.isFacilitator,
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
        productOwnerOf: await session
          .select({ team, on: nothing, getsVerdicts: teams.ownerGetsVerdicts })
          .from(teams)
          .where(isUser(teams.productOwnerId))
          .orderBy(asc(teams.name), asc(teams.id)),
        ...(await factRecords(actor)),
        prompts: await session
          .select({
            team,
            on: prompts.day,
            sprint,
            state: prompts.state,
            metAt: instantText(prompts.answeredAt),
          })
          .from(prompts)
          .innerJoin(sprints, eq(sprints.id, prompts.sprintId))
          .innerJoin(teams, eq(teams.id, sprints.teamId))
          .where(isUser(prompts.userId))
          .orderBy(asc(prompts.day), asc(sprints.id)),
        ...(await cardRecords(actor)),
        drafts: await session
          .select({ team, on: instantText(planDrafts.savedAt), draft: planDrafts.draft })
          .from(planDrafts)
          .innerJoin(teams, eq(teams.id, planDrafts.teamId))
          .where(isUser(planDrafts.userId))
          .orderBy(asc(teams.name), asc(teams.id)),
        planChanges: await session
          .select({
            team,
            on: instantText(planChanges.changedAt),
            sprint,
            card: cards.key,
            part: planChanges.part,
            was: planChanges.was,
            became: planChanges.became,
          })
          .from(planChanges)
          .leftJoin(cards, eq(cards.id, planChanges.cardId))
          .innerJoin(sprints, eq(sprints.id, planChanges.sprintId))
          .innerJoin(teams, eq(teams.id, sprints.teamId))
          .where(isUser(planChanges.changedBy))
          .orderBy(asc(planChanges.entryOrder)),
        goalsJudged: await session
          .select({
            team,
            on: instantText(sprints.goalSaidAt),
            sprint,
            goal: sprints.goal,
            met: sprints.goalMet,
            note: sprints.goalNote,
          })
          .from(sprints)
          .innerJoin(teams, eq(teams.id, sprints.teamId))
          .where(isUser(sprints.goalSaidBy))
          .orderBy(asc(sprints.goalSaidAt)),
        experimentsBegun: await session
          .select({
            team,
            on: instantText(experiments.begunAt),
            text: experiments.text,
            ratio: experiments.ratio,
            direction: experiments.direction,
          })
          .from(experiments)
          .innerJoin(teams, eq(teams.id, experiments.teamId))
          .where(isUser(experiments.begunBy))
          .orderBy(asc(experiments.begunAt)),
        experimentsEnded: await session
          .select({
            team,
            on: instantText(experiments.endedAt),
            text: experiments.text,
            outcome: experiments.outcome,
          })
          .from(experiments)
          .innerJoin(teams, eq(teams.id, experiments.teamId))
          .where(isUser(experiments.endedBy))
          .orderBy(asc(experiments.endedAt)),
        recordedValues: await session
          .select({ team, on: instantText(recordedValues.recordedAt), sprint, value: recordedValues.value })
          .from(recordedValues)
          .innerJoin(sprints, eq(sprints.id, recordedValues.sprintId))
          .innerJoin(teams, eq(teams.id, sprints.teamId))
          .where(isUser(recordedValues.recordedBy))
          .orderBy(asc(recordedValues.recordedAt)),
        ...(await postRecords(actor)),
        visits: await session
          .select({
            team: nothing,
            on: sql<
              string | null
            >`coalesce(${instantText(visits.homeOpenedAt)}, ${instantText(visits.welcomedAt)})`,
            homeOpenedAt: instantText(visits.homeOpenedAt),
            welcomedAt: instantText(visits.welcomedAt),
          })
          .from(visits)
          .where(and(eq(visits.workspaceId, actor.workspaceId), eq(visits.userId, actor.userId))),
        installations: await session
          .select({
            team: nothing,
            on: instantText(installations.installedAt),
            workspace: installations.workspaceName,
          })
          .from(installations)
          .where(
            and(
              eq(installations.workspaceId, actor.workspaceId),
              eq(installations.installedBy, actor.userId),
            ),
          ),
      };
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
