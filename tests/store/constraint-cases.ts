/** What the database itself refuses to every caller; run by `queries.test.ts`. */
import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { BodyOfWork, ToldDates } from '../../src/app/bodies/body-of-work.ts';
import type { Experiment, Outcome } from '../../src/app/experiments/experiment.ts';
import type { Transaction } from '../../src/app/ports/store.ts';
import type { Sprint, Team } from '../../src/app/team/team.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import type { Database } from '../../src/store/database.ts';
import { sqlErrorOf } from '../../src/store/sql-error.ts';
import {
  aCard,
  aChange,
  aMember,
  anAnswer,
  aPost,
  aResult,
  aSprint,
  aTeam,
  savedSprint,
} from './store-examples.ts';

// SQLSTATE values: https://www.postgresql.org/docs/current/errcodes-appendix.html
const CHECK = '23514';
const UNIQUE = '23505';
const FOREIGN_KEY = '23503';
const EXCLUSION = '23P01';
const OUT_OF_RANGE = '22003';

type Refusal = readonly [what: string, sqlState: string, constraint: string | undefined, work: Work];
type Work = (tx: Transaction, saved: { team: Team; sprint: Sprint }) => Promise<unknown>;

const team =
  (given: Partial<Team>): Work =>
  (tx, saved) =>
    tx.write.teams.save({ ...saved.team, ...given });
const sprint =
  (given: Partial<Sprint>): Work =>
  (tx, saved) =>
    tx.write.sprints.update({ ...saved.sprint, ...given });
const card =
  (given: Parameters<typeof aCard>[2]): Work =>
  (tx, saved) =>
    tx.write.cards.insert([aCard(saved.sprint.id, 1, given)]);
const answer =
  (given: Parameters<typeof anAnswer>[1]): Work =>
  async (tx, saved) => {
    const answered = aCard(saved.sprint.id, 1);
    await tx.write.cards.insert([answered]);
    await tx.write.cards.insertFacts([anAnswer(answered.id, given)]);
  };
const correction =
  (given: Parameters<typeof anAnswer>[1]): Work =>
  async (tx, saved) => {
    const [one, other] = [aCard(saved.sprint.id, 1), aCard(saved.sprint.id, 2)];
    const first = anAnswer(one.id);
    await tx.write.cards.insert([one, other]);
    await tx.write.cards.insertFacts([first]);
    const cardId = given?.cardId === 'other' ? other.id : one.id;
    await tx.write.cards.insertFacts([anAnswer(cardId, { supersedesId: first.id, ...given, cardId })]);
  };
const result =
  (change: (summary: ReturnType<typeof aResult>['summary']['totals']) => object, version = 1): Work =>
  (tx, saved) => {
    const base = aResult(saved.sprint.id, 3, { version });
    const totals = { ...base.summary.totals, ...change(base.summary.totals) };
    return tx.write.results.insert({ ...base, summary: { ...base.summary, totals } });
  };

const experiment =
  (given: Partial<Experiment>): Work =>
  (tx, saved) =>
    tx.write.experiments.begin({
      id: 'experiment-1',
      teamId: saved.team.id,
      text: 'Small cards',
      ratio: 'keptShare',
      direction: 'up',
      begunBy: 'U1',
      begunAt: new Date(0),
      afterSprintId: saved.sprint.id,
      ended: undefined,
      ...given,
    });

const body =
  (given: Partial<BodyOfWork>): Work =>
  (tx, saved) =>
    tx.write.bodies.save({
      id: 'body-1',
      teamId: saved.team.id,
      name: 'Harbour lights',
      place: 1,
      leftPoints: 80,
      growthPoints: undefined,
      growthMostPoints: undefined,
      sharePercent: undefined,
      keptAt: new Date(0),
      saidAt: new Date(0),
      doneAt: undefined,
      ...given,
    });
const telling =
  (given: Partial<ToldDates>): Work =>
  async (tx, saved) => {
    await body({})(tx, saved);
    await tx.write.bodies.tell([
      {
        bodyId: 'body-1',
        toldOn: '2026-11-06',
        leftPoints: 80,
        sprintsSinceSaid: 0,
        optimisticOn: '2026-12-01',
        likelyOn: '2026-12-10',
        pessimisticOn: '2027-01-10',
        ...given,
      },
    ]);
  };

const REFUSED: readonly Refusal[] = [
  ['a body of work without a name', CHECK, 'bodies_of_work_given', body({ name: ' ' })],
  ['a body of work of nothing', CHECK, 'bodies_of_work_points', body({ leftPoints: 0 })],
  ['a quarter of a point', CHECK, 'bodies_of_work_points', body({ leftPoints: 0.3 })],
  ['work that shrinks', CHECK, 'bodies_of_work_points', body({ growthPoints: -1 })],
  [
    'growth from more to less',
    CHECK,
    'bodies_of_work_points',
    body({ growthPoints: 4, growthMostPoints: 2 }),
  ],
  ['growth with one end', CHECK, 'bodies_of_work_growth', body({ growthMostPoints: 2 })],
  ['a share of everything', CHECK, 'bodies_of_work_share', body({ sharePercent: 100 })],
  ['a body of work of no team', FOREIGN_KEY, 'bodies_of_work_team_id_teams_id_fk', body({ teamId: 'none' })],
  [
    'a telling of no body of work',
    FOREIGN_KEY,
    'told_dates_body_id_bodies_of_work_id_fk',
    telling({ bodyId: 'none' }),
  ],
  ['a telling of nothing left', CHECK, 'told_dates_points', telling({ leftPoints: 0 })],
  ['dates out of order', CHECK, 'told_dates_in_order', telling({ likelyOn: '2027-02-01' })],
  ['a date behind none', CHECK, 'told_dates_reached_in_order', telling({ likelyOn: undefined })],
  ['something to try without words', CHECK, 'experiments_given', experiment({ text: ' ' })],
  [
    'a number that is to go sideways',
    CHECK,
    'experiments_direction_known',
    experiment({ direction: 'sideways' as Experiment['direction'] }),
  ],
  [
    'another outcome of what was tried',
    CHECK,
    'experiments_outcome_known',
    experiment({ ended: { how: 'forget' as Outcome, by: 'U1', at: new Date(1) } }),
  ],
  [
    'an outcome of which nobody is known',
    CHECK,
    'experiments_end_complete',
    experiment({ ended: { how: 'keep', by: null as unknown as string, at: new Date(1) } }),
  ],
  [
    'something to try after a sprint of no team',
    FOREIGN_KEY,
    'experiments_after_sprint_of_team_fk',
    experiment({ afterSprintId: 'none' }),
  ],
  ['a team without a name', CHECK, 'teams_name_given', team({ name: ' ' })],
  ['a team without a zone', CHECK, 'teams_time_zone_given', team({ timeZone: '' })],
  ['a prompt at 24:00', CHECK, 'teams_prompt_at_is_time', team({ promptAt: '24:00' })],
  ['a closing at 5:00', CHECK, 'teams_closing_time_is_time', team({ closesAt: '5:00' })],
  ['a reminder before the prompt', CHECK, 'teams_reminder_within_day', team({ reminderAfterMinutes: -1 })],
  ['a reminder a day later', CHECK, 'teams_reminder_within_day', team({ reminderAfterMinutes: 1441 })],
  ['a week without a working day', CHECK, 'teams_working_days_are_weekdays', team({ workingDays: [] })],
  ['an eighth weekday', CHECK, 'teams_working_days_are_weekdays', team({ workingDays: [1, 8] })],
  ['an empty scale', CHECK, 'teams_scale_rises', team({ scale: [] })],
  ['a scale that does not rise', CHECK, 'teams_scale_rises', team({ scale: [1, 3, 3] })],
  ['a scale of 0 only', CHECK, 'teams_scale_rises', team({ scale: [0] })],
  ['a scale beyond 999.5', CHECK, 'teams_scale_rises', team({ scale: [1, 1000] })],
  [
    'a threshold below 0',
    CHECK,
    'teams_thresholds_in_range',
    team({ thresholds: { ...DEFAULT_THRESHOLDS, pullInRatioAtMost: -0.1 } }),
  ],
  [
    'a floor of accuracy above its ceiling',
    CHECK,
    'teams_threshold_pairs_in_order',
    team({ thresholds: { ...DEFAULT_THRESHOLDS, estimateAccuracyAtLeast: 0.99 } }),
  ],
  [
    'the first mark above the second',
    CHECK,
    'teams_threshold_pairs_in_order',
    team({
      thresholds: { ...DEFAULT_THRESHOLDS, velocityGrowthFirstMark: 6, velocityGrowthLongRangeMark: 5 },
    }),
  ],
  [
    "another team's sprint as baseline",
    FOREIGN_KEY,
    'teams_baseline_sprint_fk',
    async (tx, saved) => {
      const other = aTeam();
      await tx.write.teams.save(other);
      await tx.write.teams.save({ ...other, baselineSprintId: saved.sprint.id });
    },
  ],
  [
    'a member of no team',
    FOREIGN_KEY,
    'members_team_id_teams_id_fk',
    (tx) => tx.write.teams.saveMembers('nobody', [aMember()]),
  ],
  [
    'a sprint that ends before it starts',
    CHECK,
    'sprints_end_not_before_start',
    sprint({ endsOn: '2026-11-01' }),
  ],
  ['a sprint of no team', FOREIGN_KEY, 'sprints_team_id_teams_id_fk', sprint({ teamId: 'nobody' })],
  ['a sprint without a name', CHECK, 'sprints_name_given', sprint({ name: '' })],
  ['a sprint that closes at 17.00', CHECK, 'sprints_closing_time_is_time', sprint({ closesAt: '17.00' })],
  [
    'a state nobody knows',
    CHECK,
    'sprints_state_known',
    sprint({ state: 'paused' as never, closedAt: new Date(0) }),
  ],
  ['a closed sprint never closed', CHECK, 'sprints_over_has_closed_at', sprint({ state: 'closed' })],
  [
    'a reopened sprint never closed',
    CHECK,
    'sprints_over_has_closed_at',
    sprint({ reopenedAt: new Date(0) }),
  ],
  [
    'a second open sprint on the last day of the first',
    EXCLUSION,
    'sprints_open_no_overlap',
    (tx, saved) =>
      tx.write.sprints.insert(
        aSprint(saved.team.id, { startsOn: saved.sprint.endsOn, endsOn: '2026-11-27' }),
      ),
  ],
  [
    'an open sprint that ends on the first day of another',
    EXCLUSION,
    'sprints_open_no_overlap',
    (tx, saved) =>
      tx.write.sprints.insert(
        aSprint(saved.team.id, { startsOn: '2026-10-19', endsOn: saved.sprint.startsOn }),
      ),
  ],
  [
    'the reopening of a sprint into another',
    EXCLUSION,
    'sprints_open_no_overlap',
    async (tx, saved) => {
      const closed = aSprint(saved.team.id, { state: 'closed', closedAt: new Date(0) });
      await tx.write.sprints.insert(closed);
      await tx.write.sprints.update({ ...closed, state: 'open' });
    },
  ],
  ['a quarter of a point', CHECK, 'cards_estimate_is_points', card({ estimatePoints: 0.3 })],
  ['a negative estimate', CHECK, 'cards_estimate_is_points', card({ estimatePoints: -0.5 })],
  ['an estimate of 1000', OUT_OF_RANGE, undefined, card({ estimatePoints: 1000 })],
  ['an origin nobody knows', CHECK, 'cards_origin_known', card({ origin: 'found' as never })],
  ['a card numbered 0', CHECK, 'cards_number_from_1', card({ number: 0 })],
  ['a card of no sprint', FOREIGN_KEY, 'cards_sprint_id_sprints_id_fk', card({ sprintId: 'nobody' })],
  [
    'two cards of one number',
    UNIQUE,
    'cards_number_unique',
    (tx, saved) =>
      tx.write.cards.insert([aCard(saved.sprint.id, 1), aCard(saved.sprint.id, 1, { key: 'LP-2' })]),
  ],
  [
    'two cards of one key',
    UNIQUE,
    'cards_key_unique',
    (tx, saved) =>
      tx.write.cards.insert([aCard(saved.sprint.id, 1), aCard(saved.sprint.id, 2, { key: 'LP-1' })]),
  ],
  ['an owner named twice', UNIQUE, 'card_owners_pk', card({ ownerIds: ['U-ana', 'U-ana'] })],
  ['an answer that leaves less than nothing', CHECK, 'answers_left_is_points', answer({ leftPoints: -0.5 })],
  ['an answer that worked 0.3', CHECK, 'answers_worked_is_points', answer({ workedPoints: 0.3 })],
  ['a surprise of 0.3', CHECK, 'answers_surprise_in_halves', answer({ surprisePoints: 0.3 })],
  [
    'an answer about no card',
    FOREIGN_KEY,
    'answers_card_id_cards_id_fk',
    (tx) => tx.write.cards.insertFacts([anAnswer('nobody')]),
  ],
  [
    'a second answer that corrects nothing',
    UNIQUE,
    'answers_first_unique',
    correction({ supersedesId: undefined }),
  ],
  [
    "a correction of another member's answer",
    FOREIGN_KEY,
    'answers_supersedes_same_chain_fk',
    correction({ memberId: 'U-bo' }),
  ],
  [
    'a correction of an answer about another card',
    FOREIGN_KEY,
    'answers_supersedes_same_chain_fk',
    correction({ cardId: 'other' }),
  ],
  [
    "a correction of another day's answer",
    FOREIGN_KEY,
    'answers_supersedes_same_chain_fk',
    correction({ day: '2026-11-04' }),
  ],
  [
    'a second correction of one answer',
    UNIQUE,
    'answers_supersedes_unique',
    async (tx, saved) => {
      const answered = aCard(saved.sprint.id, 1);
      const first = anAnswer(answered.id);
      await tx.write.cards.insert([answered]);
      await tx.write.cards.insertFacts([first, anAnswer(answered.id, { supersedesId: first.id })]);
      await tx.write.cards.insertFacts([anAnswer(answered.id, { supersedesId: first.id })]);
    },
  ],
  [
    'a new owner that is not named',
    CHECK,
    'card_changes_owner_given',
    async (tx, saved) => {
      const given = aCard(saved.sprint.id, 1);
      await tx.write.cards.insert([given]);
      await tx.write.cards.insertFacts([aChange(given.id, 'owner-added' as never)]);
    },
  ],
  [
    'a version of a result recorded twice',
    UNIQUE,
    'sprint_results_pk',
    async (tx, saved) => {
      await tx.write.results.insert(aResult(saved.sprint.id, 3));
      await tx.write.results.insert(aResult(saved.sprint.id, 5));
    },
  ],
  ['a version 0', CHECK, 'sprint_results_version_from_1', result(() => ({}), 0)],
  [
    'surprise work of 0.3 points',
    CHECK,
    'sprint_results_points_in_halves',
    result(() => ({ driftPoints: 0.3 })),
  ],
  [
    'less than no surprise work',
    CHECK,
    'sprint_results_points_not_negative',
    result(({ loadPoints }) => ({ surprisePoints: -1, loadPoints: loadPoints - 1 })),
  ],
  ['a load that does not add up', CHECK, 'sprint_results_load_adds_up', result(() => ({ loadPoints: 99 }))],
  [
    'a prompt asked by a post that there is not',
    FOREIGN_KEY,
    'prompts_post_id_posts_id_fk',
    (tx, saved) =>
      tx.write.prompts.insert([
        { sprintId: saved.sprint.id, userId: 'U-ana', day: '2026-11-03', postId: 'nobody' },
      ]),
  ],
  [
    'a post sent nowhere',
    CHECK,
    'posts_sent_stands',
    async (tx, saved) => {
      const post = aPost(saved.sprint.id);
      await tx.write.posts.add([post]);
      await tx.write.posts.update(post.id, { state: 'sent', sentVersion: 1 });
    },
  ],
  [
    'a post sent in a version that nobody wanted',
    CHECK,
    'posts_versions_in_order',
    async (tx, saved) => {
      const post = aPost(saved.sprint.id);
      await tx.write.posts.add([post]);
      await tx.write.posts.update(post.id, { state: 'pending', sentVersion: 2 });
    },
  ],
  [
    'a post about nothing',
    CHECK,
    'posts_subject_complete',
    (tx, saved) => tx.write.posts.add([aPost(saved.sprint.id, { subject: { kind: 'verdict' } })]),
  ],
  [
    'a post of which only a part of what it is about is given',
    CHECK,
    'posts_subject_complete',
    (tx, { sprint }) =>
      tx.write.posts.add([aPost(sprint.id, { subject: { kind: 'plan', sprintId: sprint.id } })]),
  ],
  [
    'a post of a kind that is not declared',
    CHECK,
    'posts_subject_complete',
    (tx, { sprint }) =>
      tx.write.posts.add([aPost(sprint.id, { subject: { kind: 'rumour', sprintId: sprint.id } })]),
  ],
];

export function constraintCases(database: () => Database): void {
  it.each(REFUSED)('refuse %s', async (_what, sqlState, constraint, work) => {
    const saved = await savedSprint(database());
    const error: unknown = await database()
      .store.transaction((tx) => work(tx, saved))
      .catch((refusal: unknown) => refusal);
    expect(sqlErrorOf(error)).toEqual({ sqlState, constraint });
  });

  it('allow open sprints of one team one after the other, and of two teams at once', async () => {
    const { team: first } = await savedSprint(database());
    await savedSprint(database());
    await database().store.transaction((tx) =>
      tx.write.sprints.insert(aSprint(first.id, { startsOn: '2026-11-14', endsOn: '2026-11-27' })),
    );
    expect(await database().store.read((read) => read.openSprintsOf(first.id))).toHaveLength(2);
  });

  it('allow a chain of corrections', async () => {
    const { sprint: ofCard } = await savedSprint(database());
    const answered = aCard(ofCard.id, 1);
    const first = anAnswer(answered.id);
    const second = anAnswer(answered.id, { supersedesId: first.id });
    const third = anAnswer(answered.id, { supersedesId: second.id });
    await database().store.transaction(async (tx) => {
      await tx.write.cards.insert([answered]);
      await tx.write.cards.insertFacts([first, second, third]);
      expect((await tx.read.recordsOf(ofCard.id)).facts).toHaveLength(3);
    });
  });

  it('know the rising from the level and the falling', async () => {
    const rows = await database()
      .session.select({
        rising: sql<boolean>`loadline.is_rising('{0,0.5,1}')`,
        single: sql<boolean>`loadline.is_rising('{7}')`,
        level: sql<boolean>`loadline.is_rising('{1,2,2}')`,
        falling: sql<boolean>`loadline.is_rising('{1,2,1.5,3}')`,
      })
      .from(sql`(values (1)) as one`);
    expect(rows).toEqual([{ rising: true, single: true, level: false, falling: false }]);
  });
}
