/**
 * Ten years of five teams and two workspaces, in steps of a sprint: at every step nothing in any table is older than
 * docs/privacy.md promises, and no table grows but by what it promises to keep.
 */
import { sql } from 'drizzle-orm';
import { beforeAll, describe, expect, test } from 'vitest';
import { endExperiment } from '../../../src/app/experiments/end-experiment.ts';
import { tryExperiment } from '../../../src/app/experiments/try-experiment.ts';
import { recordValue } from '../../../src/app/history/record-value.ts';
import { editCard } from '../../../src/app/planning/edit-card.ts';
import { commitPlan, previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { letGoOfOld } from '../../../src/app/privacy/ended-teams.ts';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import { endTeam } from '../../../src/app/team/end-team.ts';
import { addGuests } from '../../../src/app/team/guests.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import type { Actor, Team } from '../../../src/app/team/team.ts';
import { watchChannel } from '../../../src/app/team/watch-channel.ts';
import { openHomePage } from '../../../src/app/watching/home-page.ts';
import { type Day, dayPlus } from '../../../src/sprint/calendar.ts';
import { anInstallation } from '../../store/store-examples.ts';
import { actorOf, Harness, PEOPLE, WORKSPACE } from '../../support/app-harness.ts';
import { emptyDatabase } from '../../support/databases.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { rowsWith } from '../../support/whole-database.ts';

/** A Monday. Past, so that what the database stamps with its own clock can be told from what was set to the simulated one. */
const FIRST_DAY: Day = '2016-01-04';
const SPRINTS = 261;
/** Of what ends in which sprint. */
const BEN_LEAVES = 26;
const CHI_IS_ERASED = 52;
const REMOVED = 60;
const ENDED = 78;
const IDLE_FROM = 90;
const CHANNEL_CLOSED = 129;
const SETTLED = 65;
const OTHER = 'W2';

/** Rows of each table that should not be there any more; `now` and the months of each team say which. */
const TOO_OLD: Readonly<Record<string, string>> = {
  teams: `select from loadline.teams as t left join loadline.installations as i using (workspace_id)
    where least(t.ended_at, i.revoked_at) < NOW - make_interval(months => coalesce(t.retention_months, 13))`,
  members: `select from loadline.members as m join loadline.teams as t on t.id = m.team_id
    where not m.is_active and m.left_on < (NOW - make_interval(months => t.retention_months + 1))::date`,
  sprints: `select from loadline.sprints as s join loadline.teams as t on t.id = s.team_id
    where s.state = 'open' and s.closes_at < NOW - interval '31 days'
      or s.state <> 'open' and s.reduced_at is null and OLD_SPRINT
      or s.reduced_at is not null and (s.goal <> '' or s.goal_note <> '')`,
  ...Object.fromEntries(
    ['cards', 'prompts', 'plan_changes'].map((table) => [
      table,
      `select from loadline.${table} join loadline.sprints as s on s.id = sprint_id
        join loadline.teams as t on t.id = s.team_id where OLD_SPRINT`,
    ]),
  ),
  ...Object.fromEntries(
    ['answers', 'card_changes', 'card_owners'].map((table) => [
      table,
      `select from loadline.${table} join loadline.cards as c on c.id = card_id join loadline.sprints as s on s.id = c.sprint_id
        join loadline.teams as t on t.id = s.team_id where OLD_SPRINT`,
    ]),
  ),
  posts: `select from loadline.posts as p left join loadline.sprints as s on s.id = p.sprint_id
    left join loadline.teams as t on t.id = coalesce(s.team_id, p.team_id)
    where (t.id is null and p.created_at < NOW - interval '1 day') or (s.id is null and p.created_at < NOW - make_interval(months => t.retention_months)) or OLD_SPRINT`,
  plan_drafts: `select from loadline.plan_drafts as d join loadline.teams as t on t.id = d.team_id
    where d.saved_at < NOW - make_interval(months => least(t.retention_months, 13))`,
  experiments: `select from loadline.experiments as e join loadline.teams as t on t.id = e.team_id
    where e.ended_at < NOW - make_interval(months => t.retention_months)`,
  watches: `select from loadline.watches as w join loadline.sprints as s on s.id = w.sprint_id where s.state <> 'open'`,
  bodies_of_work: `select from loadline.bodies_of_work as b join loadline.teams as t on t.id = b.team_id
    where b.done_at < NOW - make_interval(months => t.retention_months)`,
  told_dates: `select from loadline.told_dates left join loadline.bodies_of_work as b on b.id = body_id where b.id is null`,
  // Totals stay as long as the team, whose row the keys demand.
  sprint_results: `select from loadline.sprint_results left join loadline.sprints as s on s.id = sprint_id where s.id is null`,
  past_sprints: `select from loadline.past_sprints as p join loadline.sprints as s on s.id = p.sprint_id
    join loadline.teams as t on t.id = s.team_id where p.card_evenings is not null and OLD_SPRINT`,
  recorded_values: `select from loadline.recorded_values as v join loadline.sprints as s on s.id = v.sprint_id
    join loadline.teams as t on t.id = s.team_id where v.recorded_by <> 'erased' and OLD_SPRINT`,
  past_changes: `select from loadline.past_changes as c where c.changed_at < NOW - interval '31 days'
    and (not exists (select from loadline.teams as t where t.workspace_id = c.workspace_id)
      or exists (select from loadline.past_changes as later where later.workspace_id = c.workspace_id
        and later.changed_at > c.changed_at))`,
  visits: `select from loadline.visits as v where greatest(v.home_opened_at, v.welcomed_at) < NOW - interval '12 months'
    and not exists (select from loadline.teams as t left join loadline.members as m on m.team_id = t.id
      where t.workspace_id = v.workspace_id and (t.product_owner_id = v.user_id or m.user_id = v.user_id and m.is_active))`,
  installations: `select from loadline.installations as i where i.revoked_at < NOW - interval '31 days'
    and (i.sealed_token is not null or not exists (select from loadline.teams as t where t.workspace_id = i.workspace_id))`,
  message_removals: `select from loadline.message_removals where created_at < NOW - interval '14 days'`,
  install_attempts: `select from loadline.install_attempts where expires_at < NOW`,
  seen_events: `select from loadline.seen_events where seen_at < NOW - interval '1 day'`,
};
/** Two days: a sprint that closed late may still be reopened for one. */
const OLD_SPRINT = `(s.ends_on < (NOW - make_interval(months => t.retention_months) - interval '1 day')::date
  and s.closed_at < NOW - interval '2 days')`;

/** What the database stamps with its own clock. */
const STAMPED = [
  ['posts', 'created_at'],
  ['sprints', 'created_at'],
  ['teams', 'created_at'],
  ['plan_drafts', 'saved_at'],
  ['past_changes', 'changed_at'],
] as const;

interface Played {
  readonly team: Team;
  readonly by: Actor;
}

describe('ten years', () => {
  let h: Harness;
  const teams = {} as Record<'goesOn' | 'keepsAll' | 'ends' | 'idles' | 'closes' | 'removed', Played>;
  /** Rows by table after each sprint. */
  const sizes: Record<string, number>[] = [];
  const tooOld: string[] = [];

  const run = (statement: string) => h.database.session.execute(sql.raw(statement));

  /** The simulated clock for what the database stamped by its own, and all posts delivered. */
  async function settle(now: string): Promise<void> {
    for (const [table, column] of STAMPED) {
      await run(`update loadline.${table} set ${column} = '${now}' where ${column} > '${now}'`);
    }
    await run(`update loadline.posts set state = 'sent', sent_version = wanted_version, posted_ts = id,
      posted_channel_id = coalesce(channel_id, 'D-' || user_id) where state = 'pending'`);
    await run('delete from pgboss.job');
  }

  async function setUp(channelId: string, name: string, workspaceId = WORKSPACE): Promise<Played> {
    const by = actorOf('ana', workspaceId);
    return { team: await h.setUpTeam({ channelId, name }, by), by };
  }

  /** A sprint of two weeks in four steps: planned, asked and answered, closed; and what is old goes. */
  async function sprintOf({ team, by }: Played, n: number, startsOn: Day): Promise<string> {
    const input = {
      teamId: team.id,
      name: `Sprint ${n}`,
      goal: `Goal ${n}`,
      startsOn,
      endsOn: dayPlus(startsOn, 11),
    };
    const owners = n < BEN_LEAVES ? '@Ben' : '@Ana';
    const cards = `Card a, 5, ${owners}\nCard b, 3, @Ana`;
    await previewPlan(h.deps, by, { ...input, closesAt: '17:00', awayDays: '', cards });
    const { sprint } = await commitPlan(h.deps, by, { teamId: team.id });
    return sprint.id;
  }

  async function play(n: number): Promise<void> {
    const startsOn = dayPlus(FIRST_DAY, 14 * n);
    h.set(`${startsOn}T07:00:00Z`);
    const { goesOn, keepsAll, ends, idles, closes, removed } = teams;
    // The others plan every third time, so that the test takes minutes.
    const isTurn = n % 3 === 0;
    const planning = [
      goesOn,
      ...(isTurn ? [keepsAll] : []),
      ...(isTurn && n < ENDED ? [ends] : []),
      ...(isTurn && n < IDLE_FROM ? [idles] : []),
      ...(isTurn && n <= CHANNEL_CLOSED ? [closes] : []),
      ...(isTurn && n < REMOVED ? [removed] : []),
    ];

    const ids = new Map<Played, string>();
    for (const one of planning) ids.set(one, await sprintOf(one, n, startsOn));
    const ownId = ids.get(goesOn) as string;
    const ownPlace = { channelId: goesOn.team.channelId, isDirect: false };
    const ana = actorOf('ana');
    if (n % 5 === 0) await addGuests(h.deps, ana, { place: ownPlace, words: `<@${PEOPLE.dayo}>` });
    h.set(`${startsOn}T12:00:00Z`);
    await h.tick();
    await h.answer('ana', ownId, startsOn, { 2: { left: '4', surprise: '1', note: 'Rust below' } });
    await editCard(h.deps, ana, { place: ownPlace, reference: '1', edit: { title: 'Card a, corrected' } });
    if (n % 10 === 1)
      await tryExperiment(h.deps, ana, {
        teamId: goesOn.team.id,
        text: 'Pair',
        ratio: 'keptShare',
        direction: 'up',
      });
    if (n % 10 === 4) await endExperiment(h.deps, ana, { place: ownPlace, reference: '1', outcome: 'drop' });
    if (n % 7 === 0) await openHomePage(h.deps, { workspaceId: WORKSPACE, userId: `USTRANGER${n}` });
    await happenings(n);
    const lastDay = dayPlus(startsOn, 11);
    h.set(`${lastDay}T17:00:00Z`);
    await h.tick();
    if (n % 3 === 0) {
      await recordValue(h.deps, ana, { place: ownPlace, value: '12', sprint: { sprintId: ownId } });
    }
    const night = `${dayPlus(startsOn, 13)}T23:00:00Z`;
    // Something was begun and left.
    if (n === IDLE_FROM) {
      const draft = {
        ...h.planInput(idles.team),
        startsOn: dayPlus(startsOn, 28),
        endsOn: dayPlus(startsOn, 32),
        cards: 'Card a, 5, @Ana',
      };
      await previewPlan(h.deps, idles.by, draft);
    }
    h.set(night);
    await settle(night);
    while ((await letGoOfOld(h.deps)) > 0) await settle(night);
    await check(n, night);
  }

  async function happenings(n: number): Promise<void> {
    const { goesOn, ends, closes } = teams;
    if (n === BEN_LEAVES) await leaveTeam(h.deps, actorOf('ben'), { teamId: goesOn.team.id });
    if (n === CHI_IS_ERASED) {
      await erasePerson(h.deps, actorOf('chi'), { removeMessages: true });
      await erasePerson(h.deps, actorOf('chi', OTHER));
    }
    if (n === REMOVED - 3) await h.write((tx) => tx.write.installations.revoke(OTHER, h.deps.clock.now()));
    if (n === ENDED - 3) await endTeam(h.deps, ends.by, { teamId: ends.team.id });
    if (n === CHANNEL_CLOSED) {
      h.directory.channels.set(closes.team.channelId, { name: 'closed', isArchived: true, isShared: false });
      await watchChannel(h.deps, WORKSPACE, { kind: 'closed', channelId: closes.team.channelId });
    }
  }

  async function check(n: number, now: string): Promise<void> {
    for (const [table, statement] of Object.entries(TOO_OLD)) {
      const query = statement.replaceAll('OLD_SPRINT', OLD_SPRINT).replaceAll('NOW', `'${now}'::timestamptz`);
      const old = await rowsOf(h.database, sql.raw(query));
      if (old.length > 0) tooOld.push(`${table}: ${old.length} after sprint ${n}`);
    }
    // Of the teams that keep details for a time only.
    const size: Record<string, number> = {};
    for (const table of Object.keys(TOO_OLD)) {
      const [row] = await rowsOf<{ count: number }>(
        h.database,
        sql.raw(`select count(*)::integer as count from loadline.${table}`),
      );
      size[table] = row?.count ?? 0;
    }
    sizes.push(size);
  }

  beforeAll(async () => {
    h = new Harness(await emptyDatabase('Postgres'), `${FIRST_DAY}T06:00:00Z`);
    teams.goesOn = await setUp('C1', 'Goes on');
    teams.keepsAll = await setUp('C2', 'Keeps all');
    teams.ends = await setUp('C3', 'Ends');
    teams.idles = await setUp('C4', 'Idles');
    teams.closes = await setUp('C5', 'Closes');
    teams.removed = await setUp('C6', 'Removed', OTHER);
    const { keepsAll } = teams;
    await h.write((tx) => tx.write.teams.save({ ...keepsAll.team, retentionMonths: undefined }));
    await h.write((tx) =>
      tx.write.installations.save(
        anInstallation({
          workspaceId: OTHER,
          workspaceName: 'Other',
          installedBy: PEOPLE.ana,
          installedAt: h.deps.clock.now(),
        }),
      ),
    );
    await run(
      `insert into loadline.install_attempts (state_hash, browser_hash, expires_at) values ('a', 'b', '2016-02-01')`,
    );
    const began = performance.now();
    for (let n = 0; n < SPRINTS; n += 1) await play(n);
    console.log(`ten years took ${Math.round((performance.now() - began) / 1_000)} s`);
    console.table(Object.fromEntries([SETTLED, 130, SPRINTS - 1].map((n) => [n, sizes[n]])));
  }, 1_200_000);

  test('left nothing in any table for longer than was promised, at any time', () => {
    expect(tooOld).toEqual([]);
  });

  test('looked at every table', async () => {
    const tables = await rowsOf<{ name: string }>(
      h.database,
      sql`select tablename as name from pg_tables where schemaname = 'loadline' and tablename <> 'migrations' order by 1`,
    );
    expect(Object.keys(TOO_OLD).sort()).toEqual(tables.map(({ name }) => name));
  });

  test('ended what ended: of those teams and that workspace nothing is left', async () => {
    const names = await rowsOf<{ name: string }>(h.database, sql`select name from loadline.teams order by 1`);
    expect(names).toEqual([{ name: 'Goes on' }, { name: 'Keeps all' }]);
    expect(await rowsWith(h.database, [`"${OTHER}"`])).toEqual([]);
  });

  test('forgot who left and who was erased, but in the team that keeps everything', async () => {
    expect(await rowsWith(h.database, [PEOPLE.chi, 'Chi Wen'])).toEqual([]);
    const ben = await rowsWith(h.database, [PEOPLE.ben, 'Ben Ode']);
    const [keepsAll, goesOn] = [teams.keepsAll.team.id, teams.goesOn.team.id];
    expect(ben.length).toBeGreaterThan(0);
    expect(ben.filter((line) => line.includes(goesOn))).toEqual([]);
    expect(ben.some((line) => line.includes(keepsAll))).toBe(true);
  });

  test('kept the totals of every sprint of a team that goes on', async () => {
    const totals = async (table: string) => {
      const counts = await rowsOf<{ sprints: number }>(
        h.database,
        sql.raw(`select count(distinct sprint_id)::integer as sprints from loadline.${table} join loadline.sprints as s on s.id = sprint_id
          where s.team_id = '${teams.goesOn.team.id}'`),
      );
      return counts[0]?.sprints;
    };
    expect(await totals('past_sprints')).toBe(SPRINTS);
    expect(await totals('sprint_results')).toBe(SPRINTS);
  });

  test('let no detail grow: a team that goes on has as many rows after ten years as after three', async () => {
    const [row] = await rowsOf<Record<string, number>>(
      h.database,
      sql.raw(
        `select ${['cards', 'prompts', 'posts']
          .map(
            (
              table,
            ) => `(select count(*)::integer from loadline.${table} join loadline.sprints as s on s.id = sprint_id
          where s.team_id = '${teams.goesOn.team.id}') as ${table}`,
          )
          .join(', ')}`,
      ),
    );
    // Thirteen months hold 28.2 sprints of two weeks; a part of one at each end.
    const most = 30;
    expect(row?.cards).toBeLessThanOrEqual(2 * most);
    expect(row?.prompts).toBeLessThanOrEqual(6 * most);
    expect(row?.posts).toBeLessThanOrEqual(12 * most);
    for (const table of [
      'visits',
      'seen_events',
      'past_changes',
      'watches',
      'experiments',
      'plan_drafts',
      'members',
    ]) {
      expect(sizes.at(-1)?.[table], table).toBeLessThanOrEqual((sizes[SETTLED]?.[table] ?? 0) + 5);
    }
  });
});
