/**
 * Two workspaces in one database in which everything has the same ids: people, channels, direct messages. Each has a
 * team with a closed sprint, a running one, answers, a draft, sent posts and an installation. North's words carry a
 * mark, so that they are known in every place.
 */
import { sql } from 'drizzle-orm';
import { expect } from 'vitest';
import { recordAnswers } from '../../src/app/answering/record-answers.ts';
import { keepBody } from '../../src/app/bodies/keep-bodies.ts';
import { closeSprint } from '../../src/app/closing/end-sprint.ts';
import { recordValue } from '../../src/app/history/record-value.ts';
import { commitPlan, previewPlan } from '../../src/app/planning/plan-sprint.ts';
import type { AppDependencies } from '../../src/app/ports/app-dependencies.ts';
import { setUpTeam } from '../../src/app/team/set-up-team.ts';
import type { Database } from '../../src/store/database.ts';
import { rowsOf } from '../support/rows-of.ts';
import { wholeDatabase } from '../support/whole-database.ts';

/** Begins every word of North's that somebody typed. */
export const NORTH_MARK = 'Polaris';
export const SOUTH_MARK = 'Canopus';

/** What there is of a workspace to be guessed or stolen. */
export interface Belongings {
  readonly workspaceId: string;
  readonly teamId: string;
  /** Running since the day before. */
  readonly sprintId: string;
  readonly closedSprintId: string;
  readonly cardIds: readonly string[];
  readonly cardKey: string;
  /** A body of work that the team keeps. */
  readonly bodyId: string;
  readonly postIds: readonly string[];
  /** Where its daily prompt to Ana is. */
  readonly prompt: { readonly channelId: string; readonly ts: string };
}

export const TODAY = '2026-11-03';
export const ANA = 'U0ANA';
export const BEN = 'U0BEN';
export const CHANNEL_ID = 'C0TEAM';

interface Surroundings {
  readonly deps: AppDependencies;
  readonly database: Database;
  /** Sets the clock, does what is due, and delivers. */
  pass(to: string): Promise<void>;
}

/** @param mark begins the names of everything */
export async function furnish(
  { deps, database, pass }: Surroundings,
  workspaceId: string,
  mark: string,
): Promise<Belongings> {
  const actor = { workspaceId, userId: ANA };
  await pass('2026-10-19T06:00:00Z');
  const team = await setUpTeam(deps, actor, {
    channelId: CHANNEL_ID,
    name: `${mark} tugs`,
    timeZone: 'Etc/UTC',
    promptAt: '09:00',
    workingDays: [1, 2, 3, 4, 5],
    memberIds: [ANA, BEN],
    facilitatorIds: [ANA],
    productOwnerId: ANA,
  });
  const keys = mark.slice(0, 3).toUpperCase();
  const plan = (name: string, startsOn: string, endsOn: string) => ({
    teamId: team.id,
    name: `${mark} ${name}`,
    goal: `${mark} goal`,
    startsOn,
    endsOn,
    closesAt: '17:00',
    awayDays: '',
    cards: `${keys}-1: ${mark} tide table, 5, <@${ANA}>\n${keys}-2: ${mark} crane log, 3, <@${BEN}>`,
  });
  const sprintOf = async (name: string, startsOn: string, endsOn: string): Promise<string> => {
    await previewPlan(deps, actor, plan(name, startsOn, endsOn));
    return (await commitPlan(deps, actor, { teamId: team.id })).sprint.id;
  };
  const cardsOf = async (sprintId: string) =>
    (await deps.store.read((read) => read.recordsOf(sprintId))).cards;
  const answer = async (sprintId: string, day: string, left: string): Promise<void> => {
    const [card] = await cardsOf(sprintId);
    const cardId = card?.id ?? 'no card';
    const answers = [{ cardId, left, worked: '', surprise: '', note: `${mark} note` }];
    await recordAnswers(deps, actor, { sprintId, day, answers });
  };
  const closedSprintId = await sprintOf('October', '2026-10-19', '2026-10-23');
  await pass('2026-10-20T09:30:00Z');
  await answer(closedSprintId, '2026-10-20', '0');
  await closeSprint(deps, actor, { sprintId: closedSprintId });
  await recordValue(deps, actor, { teamId: team.id, sprint: { sprintId: closedSprintId }, value: '7654' });
  const { body } = await keepBody(deps, actor, { teamId: team.id, name: `${mark} lights`, leftPoints: 80 });
  await pass('2026-11-02T06:00:00Z');
  const sprintId = await sprintOf('November', '2026-11-02', '2026-11-13');
  await pass('2026-11-02T09:30:00Z');
  await answer(sprintId, '2026-11-02', '4');
  await pass(`${TODAY}T09:30:00Z`);
  await previewPlan(deps, actor, plan('December', '2026-11-30', '2026-12-11'));
  const cards = await cardsOf(sprintId);
  const posts = await rowsOf<{
    id: string;
    kind: string;
    day: string;
    who: string;
    channel: string;
    ts: string;
  }>(
    database,
    sql`select id, kind, subject_day::text as day, subject_user_id as who,
      posted_channel_id as channel, posted_ts as ts from loadline.posts where workspace_id = ${workspaceId}`,
  );
  const prompt = posts.find(({ kind, day, who }) => kind === 'daily-prompt' && day === TODAY && who === ANA);
  expect(prompt?.ts).toBeDefined();
  return {
    workspaceId,
    teamId: team.id,
    sprintId,
    closedSprintId,
    cardIds: cards.map(({ id }) => id),
    bodyId: body.id,
    cardKey: cards[0]?.key ?? '',
    postIds: posts.map(({ id }) => id),
    prompt: { channelId: prompt?.channel ?? '', ts: prompt?.ts ?? '' },
  };
}

/** Every row that has to do with the workspace, in a form that can be compared: those that name anything of its. */
export async function rowsAbout(database: Database, belongings: Belongings): Promise<string[]> {
  const { workspaceId, teamId, sprintId, closedSprintId, bodyId, cardIds, postIds } = belongings;
  const marks = [workspaceId, teamId, sprintId, closedSprintId, bodyId, ...cardIds, ...postIds].map(
    (id) => `"${id}"`,
  );
  const rows = await allRows(database);
  // A draft holds all that its writer typed, even an id of somebody else.
  const isForeignDraft = (row: string) =>
    row.startsWith('loadline.plan_drafts ') && !row.includes(`"team_id": "${teamId}"`);
  return rows.filter((row) => marks.some((mark) => row.includes(mark)) && !isForeignDraft(row));
}

/** All rows of the bot's tables, what was seen for repetition left out. */
export async function allRows(database: Database): Promise<string[]> {
  const lines = await wholeDatabase(database);
  return lines.filter((line) => /^loadline\.(?!seen_events )/.test(line)).sort();
}
