/**
 * Fills a database with invented teams in the midst of a sprint, by statements over whole sets: thousands of teams in
 * seconds. What it writes is what the bot itself would have written; the database's own rules are in force.
 */
import { formatISO } from 'date-fns/formatISO';
import postgres from 'postgres';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { closingSummary } from '../../src/sprint/summary.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { WORKSPACE_ID } from './quick-platform.ts';

export interface Filling {
  /** Teams are numbered from here on. */
  readonly firstTeam?: number;
  readonly teams: number;
  /** Among so many the teams are spread; left out: all are in the one of the bench. */
  readonly workspaces?: number;
  readonly membersATeam: number;
  readonly cardsAMember: number;
  /** Days of the running sprint about which every member has answered for every card; 4 at most. */
  readonly answeredDays: number;
  readonly pastSprints: number;
  /** Whether today's prompts have been sent to the direct messages; else they are due. */
  readonly prompted: boolean;
}

export const teamId = (team: number): string => `team-${team}`;
export const channelId = (team: number): string => `C${team}`;
export const sprintId = (team: number): string => `team-${team}-now`;
/** Members are numbered from 1 in each team. */
export const memberId = (team: number, member: number): string => `U${team}M${member}`;
export const directChannelId = (userId: string): string => userId.replace(/^U/, 'D');
/** Cards of a member are numbered from 1. */
export const cardId = (team: number, member: number, card: number): string =>
  `card-${team}-${member}-${card}`;

/** The day that it stays while a bench runs. */
export function today(): string {
  return formatISO(new Date(), { representation: 'date' });
}

/** The sprint began four days ago and goes on for nine; every day is a working day, so that no bench minds weekends. */
const BEGAN_DAYS_AGO = 4;
const LASTS_DAYS = 14;
const ESTIMATE_POINTS = 8;

export async function fillTeams(databaseUrl: string, filling: Filling): Promise<void> {
  const client = postgres(databaseUrl, { max: 1, onnotice: () => undefined });
  try {
    await client.begin(async (sql) => {
      const {
        firstTeam = 1,
        teams,
        workspaces = 1,
        membersATeam,
        cardsAMember,
        answeredDays,
        pastSprints,
        prompted,
      } = filling;
      await sql`create temporary table numbers on commit drop as
        select t, ${WORKSPACE_ID} || case when t % ${workspaces}::int > 0 then (t % ${workspaces}::int)::text
          else '' end as workspace
        from generate_series(${firstTeam}::int, ${firstTeam + teams - 1}::int) as t`;
      await addTeams(sql, membersATeam);
      await addRunningSprints(sql, prompted);
      await addCards(sql, membersATeam, cardsAMember);
      await addAnswers(sql, membersATeam, cardsAMember, answeredDays);
      if (prompted) await addPrompts(sql, membersATeam);
      await addPastSprints(sql, pastSprints, cardsAMember * membersATeam);
    });
    // As the server itself would, sooner or later.
    await client`vacuum analyze`;
  } finally {
    await client.end();
  }
}

type Sql = postgres.TransactionSql;

async function addTeams(sql: Sql, membersATeam: number): Promise<void> {
  const {
    keptShareAtLeast,
    surpriseRatioAtMost,
    pullInRatioAtMost,
    planShareAtLeast,
    estimateAccuracyAtLeast,
    estimateAccuracyAtMost,
  } = DEFAULT_THRESHOLDS;
  await sql`insert into loadline.teams (id, workspace_id, channel_id, name, time_zone, prompt_at,
      reminder_after_minutes, closing_time, working_days, scale, kept_share_at_least, surprise_ratio_at_most,
      pull_in_ratio_at_most, plan_share_at_least, estimate_accuracy_at_least, estimate_accuracy_at_most)
    select 'team-' || t, workspace, 'C' || t, 'Tugboats ' || t, 'Etc/UTC', '00:00', 1440, '23:59',
      '{1,2,3,4,5,6,7}', ${[...DEFAULT_SCALE]}::float8[], ${keptShareAtLeast}, ${surpriseRatioAtMost},
      ${pullInRatioAtMost}, ${planShareAtLeast}, ${estimateAccuracyAtLeast}, ${estimateAccuracyAtMost} from numbers`;
  await sql`insert into loadline.members (team_id, user_id, name, is_facilitator, is_active)
    select 'team-' || t, 'U' || t || 'M' || m, 'Deckhand ' || m, m = 1, true
    from numbers, generate_series(1, ${membersATeam}::int) as m`;
}

async function addRunningSprints(sql: Sql, prompted: boolean): Promise<void> {
  await sql`insert into loadline.sprints (id, team_id, name, goal, starts_on, ends_on, closing_time, closes_at, state,
      next_prompt_at, last_call_at)
    select 'team-' || t || '-now', 'team-' || t, 'Harbour 12', 'Ferries berth by themselves', first, first + ${LASTS_DAYS - 1}::int,
      '23:59', closing, 'open', ${today()}::date + make_interval(days => ${prompted ? 1 : 0}), closing - interval '1 hour'
    from numbers,
      lateral (select ${today()}::date - ${BEGAN_DAYS_AGO}::int as first) as begun,
      lateral (select (first + ${LASTS_DAYS - 1}::int + time '23:59') at time zone 'UTC' as closing) as ended`;
}

async function addCards(sql: Sql, membersATeam: number, cardsAMember: number): Promise<void> {
  await sql`insert into loadline.cards (id, sprint_id, number, key, title, estimate_points, origin, entered_on, added_by)
    select 'card-' || t || '-' || m || '-' || c, 'team-' || t || '-now', number, number, 'Tide table ' || number,
      ${ESTIMATE_POINTS}, 'planned', ${today()}::date - ${BEGAN_DAYS_AGO}::int, 'U' || t || 'M1'
    from numbers, generate_series(1, ${membersATeam}::int) as m, generate_series(1, ${cardsAMember}::int) as c,
      lateral (select (m - 1) * ${cardsAMember}::int + c as number) as numbered`;
  await sql`insert into loadline.card_owners (card_id, user_id, position)
    select 'card-' || t || '-' || m || '-' || c, 'U' || t || 'M' || m, 0
    from numbers, generate_series(1, ${membersATeam}::int) as m, generate_series(1, ${cardsAMember}::int) as c`;
}

/** A point worked each day; on the second day half a point of surprise work came up on every third card. */
async function addAnswers(sql: Sql, membersATeam: number, cardsAMember: number, days: number): Promise<void> {
  await sql`insert into loadline.answers (id, card_id, member_id, day, fact_order, worked_points, left_points,
      surprise_points, note, recorded_at)
    select 'answer-' || t || '-' || m || '-' || c || '-' || d, 'card-' || t || '-' || m || '-' || c, 'U' || t || 'M' || m,
      day, nextval('loadline.fact_order'), 1, ${ESTIMATE_POINTS} - d + surprise * (d >= 2)::int, surprise * (d = 2)::int,
      '', (day + time '09:30') at time zone 'UTC'
    from generate_series(1, ${days}::int) as d, numbers, generate_series(1, ${membersATeam}::int) as m,
      generate_series(1, ${cardsAMember}::int) as c,
      lateral (select ${today()}::date - ${BEGAN_DAYS_AGO}::int + d - 1 as day,
        case when c % 3 = 0 then 0.5 else 0 end as surprise) as given`;
}

async function addPrompts(sql: Sql, membersATeam: number): Promise<void> {
  await sql`insert into loadline.posts (id, workspace_id, user_id, kind, sprint_id, subject_user_id, subject_day, state,
      posted_channel_id, posted_ts, wanted_version, sent_version, first_attempt_at)
    select gen_random_uuid(), workspace, 'U' || t || 'M' || m, 'daily-prompt', 'team-' || t || '-now',
      'U' || t || 'M' || m, ${today()}, 'sent', 'D' || t || 'M' || m, '1790000000.000001', 1, 1, now()
    from numbers, generate_series(1, ${membersATeam}::int) as m`;
  await sql`insert into loadline.prompts (sprint_id, user_id, day, state, post_id)
    select sprint_id, subject_user_id, subject_day, 'asked', posts.id
    from loadline.posts join numbers on sprint_id = 'team-' || t || '-now' where kind = 'daily-prompt'`;
}

/** Two weeks each, one after the other, up to the running one. All but a few cards were finished. */
async function addPastSprints(sql: Sql, sprints: number, cards: number): Promise<void> {
  if (sprints === 0) return;
  await sql`create temporary table past on commit drop as
    select 'team-' || t || '-' || s as id, 'team-' || t as team_id, workspace, s, ends_on,
      (ends_on + time '17:00') at time zone 'UTC' as closed_at, cards, 8 * (cards - (s * 7 + t) % 4) as velocity,
      8 * cards as commitment
    from numbers, generate_series(1, ${sprints}::int) as s,
      lateral (select ${today()}::date - ${BEGAN_DAYS_AGO + 1}::int - (s - 1) * ${LASTS_DAYS}::int as ends_on,
        greatest(${cards}::int - s % 3, 5) as cards) as made`;
  await sql`insert into loadline.sprints (id, team_id, name, goal, starts_on, ends_on, closing_time, closes_at, state,
      closed_at)
    select id, team_id, 'Harbour −' || s, '', ends_on - 13, ends_on, '17:00', closed_at, 'closed', closed_at from past`;
  await sql`insert into loadline.past_sprints (sprint_id, team_id, workspace_id, ends_on, working_days, member_days,
      commitment_points, pulled_in_points, surprise_points, velocity_points, worked_points,
      committed_finished_points, ratios, trace, cards, recorded_at)
    select id, team_id, workspace, ends_on, 10, 80, commitment, 0, 4, velocity, velocity + 4, velocity,
      jsonb_build_object('keptShare', velocity::float8 / commitment, 'pullInRatio', 0, 'surpriseRatio', 4.0 / commitment,
        'planShare', 0.95, 'estimateAccuracy', 0.85, 'onScaleShare', 0.7, 'finishShare', 0.9),
      (select jsonb_agg(jsonb_build_object('cardPoints', commitment, 'finishedPoints', velocity * d / 10,
        'underwayPoints', 8)) from generate_series(0, 10) as d),
      (select jsonb_agg(jsonb_build_object('estimatePoints', 8, 'surprisePoints', 0.5 * (c % 2)))
        from generate_series(1, cards) as c),
      closed_at
    from past`;
  const summary = closingSummary([], {
    scale: DEFAULT_SCALE,
    thresholds: DEFAULT_THRESHOLDS,
    baseline: undefined,
  });
  await sql`insert into loadline.sprint_results (sprint_id, version, recorded_at, cancelled, summary, commitment_points,
      pulled_in_points, surprise_points, drift_points, worked_points, velocity_points, load_points)
    select id, 1, closed_at, false, ${sql.json(JSON.parse(JSON.stringify(summary)))}, commitment, 0, 4, 0, velocity + 4,
      velocity, commitment + 4 from past`;
}
