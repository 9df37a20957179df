import { describe, expect, test } from 'vitest';
import { cancelSprint, closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import type { VerdictContent } from '../../../src/app/closing/verdict-content.ts';
import { endExperiment, listExperiments } from '../../../src/app/experiments/end-experiment.ts';
import { tryExperiment, tryForm } from '../../../src/app/experiments/try-experiment.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, refusalOf } from '../../support/app-harness.ts';
import { aPastSprint, importPast, missing, pastSprintsOf } from '../past-sprints.ts';

// Sprints of one week each in November 2026, in Lisbon, which is on UTC then; 10 points committed, of which 5 get finished.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const WEEKS = [
  ['2026-11-02', '2026-11-06'],
  ['2026-11-09', '2026-11-13'],
  ['2026-11-16', '2026-11-20'],
  ['2026-11-23', '2026-11-27'],
] as const;

const BASE = aPastSprint().ratios;
const keeping = (share: number): Partial<PastSprint> => ({
  ...missing(10, Math.round(20 * share) / 2),
  ratios: { ...BASE, keptShare: share },
});

async function teamWith(past: readonly Partial<PastSprint>[] = []) {
  const h = harness();
  const team = await h.setUpTeam();
  if (past.length > 0) await importPast(h, team, pastSprintsOf(past));
  const trying = (text: string) =>
    tryExperiment(h.deps, ana, { teamId: team.id, text, ratio: 'keptShare', direction: 'up' });
  /** Plans the sprint of a week; card 1 is finished on its first day. */
  const begin = async (week: number) => {
    const [startsOn, endsOn] = WEEKS[week] as (typeof WEEKS)[number];
    h.set(`${startsOn}T08:00:00Z`);
    const { sprint } = await h.plan(team, { name: `Harbour ${week}`, startsOn, endsOn });
    await h.pass(`${startsOn}T09:15:00Z`);
    await h.answer('ben', sprint.id, startsOn, { 1: { left: '0' } });
    return sprint;
  };
  const play = async (week: number) => {
    const sprint = await begin(week);
    await h.pass(`${sprint.endsOn}T17:00:00Z`);
    return sprint;
  };
  return { h, team, trying, begin, play };
}

function verdicts(h: Harness): VerdictContent[] {
  return h.messagesTo(CHANNEL).flatMap((content) => (content.kind === 'verdict' ? [content.verdict] : []));
}

const textsOf = ({ experiments }: VerdictContent) => experiments.map(({ experiment }) => experiment.text);

describe('what a team tries', () => {
  test('is in the verdicts from the next one on, until it is decided what becomes of it', async () => {
    const { h, trying, play } = await teamWith();
    await play(0);
    await trying(' Two on\na card ');
    await play(1);
    h.set('2026-11-13T17:30:00Z');
    await endExperiment(h.deps, ana, { place: CHANNEL, reference: '1', outcome: 'keep' });
    await play(2);
    expect(verdicts(h).map(textsOf)).toEqual([[], ['Two on a card'], []]);
  });

  test('that is kept while a sprint runs is in that sprint’s verdict', async () => {
    const { h, trying, begin } = await teamWith();
    await begin(0);
    await trying('Two on a card');
    await h.pass('2026-11-06T17:00:00Z');
    expect(verdicts(h)[0]?.experiments).toMatchObject([{ before: undefined, now: 0.5 }]);
  });

  test('is compared with the sprint that had closed last when it began, however many come after', async () => {
    const { h, trying, play } = await teamWith([keeping(0.9), keeping(0.7)]);
    await trying('Two on a card');
    await play(0);
    await play(1);
    for (const { experiments } of verdicts(h)) {
      expect(experiments).toMatchObject([{ before: 0.7, now: 0.5, beyondOrdinary: undefined }]);
    }
  });

  test('is compared with a sprint that is open for corrections, by its corrected numbers', async () => {
    const { h, trying, play } = await teamWith();
    const first = await play(0);
    h.set('2026-11-06T18:00:00Z');
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    await trying('Two on a card');
    await h.answer('chi', first.id, '2026-11-06', { 2: { left: '0' } });
    await closeSprint(h.deps, ana, { sprintId: first.id });
    await h.drain();
    expect(verdicts(h)[0]?.experiments).toEqual([]);
    await play(1);
    expect(verdicts(h)[1]?.experiments).toMatchObject([{ before: 0.8, now: 0.5 }]);
  });

  test.each([
    ['ordinary variation', [1, 0.4, 0.9, 0.5, 1, 0.4, 0.9, 0.5], false],
    ['more than that', [0.9, 1, 0.9, 1, 0.9, 1, 0.9, 1, 0.9, 1], true],
    ['unknown below eight sprints', [0.9, 1, 0.9, 1, 0.9, 1], undefined],
  ])('is %s by the control chart of the team’s own sprints', async (_, past, beyondOrdinary) => {
    const { h, trying, play } = await teamWith(past.map(keeping));
    await trying('Two on a card');
    await play(0);
    expect(verdicts(h)[0]?.experiments[0]?.beyondOrdinary).toBe(beyondOrdinary);
  });

  test('is in no verdict of a sprint that was cancelled', async () => {
    const { h, trying, begin } = await teamWith();
    await trying('Two on a card');
    const { id: sprintId } = await begin(0);
    const verdict = await cancelSprint(h.deps, ana, { sprintId, reason: '' });
    expect(verdict.experiments).toEqual([]);
  });

  test('is refused without words, with too many, with another number, twice, and beyond ten at once', async () => {
    const { h, team, trying } = await teamWith();
    const codesOf = async (attempt: Promise<unknown>) =>
      (await refusalOf(attempt, 'bad-input')).problems.map(
        ({ field, problem }) => `${field} ${problem.code}`,
      );
    expect(await codesOf(trying(' '))).toEqual(['text try-text-missing']);
    expect(await codesOf(trying('x'.repeat(201)))).toEqual(['text try-text-length']);
    const wrong = { teamId: team.id, text: 'x', ratio: 'happiness', direction: 'sideways' };
    expect(await codesOf(tryExperiment(h.deps, ana, wrong))).toEqual([
      'ratio try-ratio',
      'direction try-direction',
    ]);
    await trying('Two on a card');
    expect(await codesOf(trying('two on a CARD'))).toEqual(['text try-already']);
    for (let i = 2; i <= 10; i += 1) await trying(`Thing ${i}`);
    expect(await codesOf(trying('One more'))).toEqual(['text try-many']);
    expect((await tryForm(h.deps, ana, { place: CHANNEL })).open).toHaveLength(10);
  });
});

describe('the question what becomes of it', () => {
  const asked = (h: Harness) =>
    h
      .messagesTo('ana')
      .flatMap((content) => (content.kind === 'experiment-question' ? [content.result] : []));

  test('comes once, after three sprints, to the facilitator, with what the number was and is', async () => {
    const { h, trying, play } = await teamWith([keeping(0.9)]);
    const { experiment } = await trying('Two on a card');
    await play(0);
    await play(1);
    expect(asked(h)).toEqual([]);
    await play(2);
    await play(3);
    expect(asked(h)).toMatchObject([{ experiment: { id: experiment.id }, before: 0.9, now: 0.5 }]);
  });

  test('says what was decided, wherever that was done', async () => {
    const { h, trying, play } = await teamWith();
    await trying('Two on a card');
    for (const week of [0, 1, 2]) await play(week);
    expect(asked(h)).toMatchObject([{ experiment: { ended: undefined } }]);
    await endExperiment(h.deps, ana, { place: CHANNEL, reference: '', outcome: 'drop' });
    await h.drain();
    expect(asked(h)).toMatchObject([{ experiment: { ended: { how: 'drop' } } }]);
  });

  test('does not come when it was decided before', async () => {
    const { h, trying, play } = await teamWith();
    await trying('Two on a card');
    await play(0);
    await play(1);
    await endExperiment(h.deps, ana, { place: CHANNEL, reference: '', outcome: 'drop' });
    await play(2);
    expect(asked(h)).toEqual([]);
  });
});

describe('the decision', () => {
  test('names it by its number, by its text or the beginning of it, or not at all when there is one', async () => {
    const { h, trying } = await teamWith();
    for (const text of ['Two on a card', 'Two reviews', 'Small cards']) await trying(text);
    const end = (reference: string) =>
      endExperiment(h.deps, ana, { place: CHANNEL, reference, outcome: 'drop' });
    for (const reference of ['', 'two', '4', 'Large cards']) {
      const { open } = await refusalOf(end(reference), 'no-such-experiment');
      expect(open).toEqual(['Two on a card', 'Two reviews', 'Small cards']);
    }
    expect((await end('2')).experiment.text).toBe('Two reviews');
    expect((await end('TWO')).experiment.text).toBe('Two on a card');
    expect((await end('')).experiment.text).toBe('Small cards');
    const { experiments } = await listExperiments(h.deps, actorOf('ben'), CHANNEL);
    expect(experiments.map(({ text, ended }) => [text, ended?.how])).toEqual([
      ['Two on a card', 'drop'],
      ['Two reviews', 'drop'],
      ['Small cards', 'drop'],
    ]);
  });

  test('to change it ends it in the moment in which another takes its place, which may have the same words', async () => {
    const { h, team, trying } = await teamWith();
    const { experiment } = await trying('Two on a card');
    const form = await tryForm(h.deps, ana, { experimentId: experiment.id });
    expect(form.changing).toMatchObject({ text: 'Two on a card', ratio: 'keptShare', direction: 'up' });
    expect((await listExperiments(h.deps, ana, CHANNEL)).experiments).toMatchObject([{ ended: undefined }]);
    const other = { teamId: team.id, text: 'Two on a card', ratio: 'finishShare', direction: 'up' };
    const change = () => tryExperiment(h.deps, ana, { ...other, changes: experiment.id });
    await change();
    expect((await listExperiments(h.deps, ana, CHANNEL)).experiments).toMatchObject([
      { ratio: 'keptShare', ended: { how: 'change', by: ana.userId } },
      { ratio: 'finishShare', ended: undefined },
    ]);
    expect((await refusalOf(change(), 'experiment-over')).text).toBe('Two on a card');
    await refusalOf(tryForm(h.deps, ana, { experimentId: experiment.id }), 'experiment-over');
    await refusalOf(
      tryExperiment(h.deps, ana, { ...other, text: 'x', changes: 'of-another-team' }),
      'no-such-experiment',
    );
    await refusalOf(tryForm(h.deps, actorOf('ben'), { experimentId: experiment.id }), 'not-a-facilitator');
    await refusalOf(
      tryForm(h.deps, actorOf('ana', 'W2'), { experimentId: experiment.id }),
      'no-team-of-yours',
    );
  });

  test('is made once, by a facilitator of the team', async () => {
    const { h, trying } = await teamWith();
    const { experiment } = await trying('Two on a card');
    const end = (actor = ana) =>
      endExperiment(h.deps, actor, { experimentId: experiment.id, outcome: 'change' });
    await refusalOf(end(actorOf('ben')), 'not-a-facilitator');
    await refusalOf(end(actorOf('ana', 'W2')), 'no-team-of-yours');
    expect((await end()).experiment.ended).toMatchObject({ how: 'change', by: ana.userId });
    expect((await refusalOf(end(), 'experiment-over')).text).toBe('Two on a card');
  });
});
