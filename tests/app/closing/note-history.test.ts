import { describe, expect, test } from 'vitest';
import type { RangeAdvice } from '../../../src/app/advice/advice.ts';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { cancelSprint, closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import type { NoteHistory } from '../../../src/app/closing/note-history.ts';
import type { VerdictContent } from '../../../src/app/closing/verdict-content.ts';
import { nameBaseline } from '../../../src/app/history/name-baseline.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { commitmentPast } from '../../../src/app/history/team-history.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { setMeasures } from '../../../src/app/team/set-measures.ts';
import { commitmentRange } from '../../../src/forecast/commitment-range.ts';
import type { ControlChart } from '../../../src/forecast/control-chart.ts';
import type { CoachingNoteId } from '../../../src/sprint/coaching-note.ts';
import { undefinedBecause } from '../../../src/sprint/undefined-value.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, PEOPLE } from '../../support/app-harness.ts';
import { typedMeasures } from '../../support/typed-measures.ts';
import { aPastSprint, finishing, importPast, missing, pastSprintsOf } from '../past-sprints.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then; 10 points committed.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

const BASE = aPastSprint().ratios;
const keeping = (share: number): Partial<PastSprint> => ({
  ...missing(10, Math.round(20 * share) / 2),
  ratios: { ...BASE, keptShare: share },
});

/** Closes the sprint with card 1 finished, 5 of 10 points, after these past ones. */
async function closedAfter(
  past: readonly Partial<PastSprint>[],
  thresholds: Parameters<typeof typedMeasures>[1] = {},
) {
  const h = harness();
  const team = await h.setUpTeam();
  await setMeasures(h.deps, ana, { teamId: team.id, ...typedMeasures({}, thresholds) });
  const imported = past.length > 0 ? await importPast(h, team, pastSprintsOf(past)) : [];
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-02T09:15:00Z');
  await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
  // The first question that counts.
  await h.pass('2026-11-03T09:15:00Z');
  await h.pass('2026-11-13T17:00:00Z');
  return { h, team, sprint, imported };
}

function lastVerdict(h: Harness): VerdictContent {
  const verdicts = h
    .messagesTo(CHANNEL)
    .flatMap((content) => (content.kind === 'verdict' ? [content.verdict] : []));
  return verdicts.at(-1) as VerdictContent;
}

function historyOf(h: Harness, id: CoachingNoteId): NoteHistory {
  return lastVerdict(h).history.notes.find((note) => note.id === id) as NoteHistory;
}

describe('the reading of a note', () => {
  test('is ordinary variation where the team’s own sprints vary as much', async () => {
    const { h } = await closedAfter([1, 0.4, 0.9, 0.5, 1, 0.4, 0.9, 0.5].map(keeping));
    const { chart } = historyOf(h, 'kept-share-low');
    expect((chart as ControlChart).latest).toMatchObject({ value: 0.5, reading: 'ordinary variation' });
    expect(chart).toMatchObject({ values: 9 });
  });

  test('is a signal where this sprint lies outside of what is usual', async () => {
    const { h } = await closedAfter([0.9, 1, 0.9, 1, 0.9, 1, 0.9, 1, 0.9, 1].map(keeping));
    expect((historyOf(h, 'kept-share-low').chart as ControlChart).latest).toMatchObject({
      reading: 'signal',
      kinds: ['below the limits'],
    });
  });

  test('isn’t known below eight sprints, and says so', async () => {
    const { h } = await closedAfter([keeping(1), keeping(0.5)]);
    expect(historyOf(h, 'kept-share-low')).toEqual({
      id: 'kept-share-low',
      chart: {
        undefined: { code: 'no-signal-yet', needed: 8, known: 3 },
      },
      crossed: { sprints: 2, of: 3 },
    });
  });

  test('counts crossings in the latest eight sprints that have the number, this one included', async () => {
    const none = { ...keeping(1), ratios: { ...BASE, keptShare: undefinedBecause('no-commitment') } };
    const { h } = await closedAfter([
      ...[0.1, 0.1, 0.1].map(keeping),
      ...[0.7, 1, 0.8].map(keeping),
      none,
      ...[0.79, 1, 1, 1].map(keeping),
    ]);
    // Of the seven before this one with the number, 0.7 and 0.79 lie below 80%.
    expect(historyOf(h, 'kept-share-low').crossed).toEqual({ sprints: 3, of: 8 });
  });

  test('is there for every note that is about a number, and for no other', async () => {
    const { h } = await closedAfter([]);
    const { summary, history } = lastVerdict(h);
    expect(summary.notes.map(({ id }) => id)).toEqual([
      'kept-share-low',
      'estimate-accuracy-high',
      'answer-rate-low',
    ]);
    expect(history.notes.map(({ id }) => id)).toEqual(summary.notes.map(({ id }) => id));
    expect(historyOf(h, 'answer-rate-low').crossed).toEqual({ sprints: 1, of: 1 });
  });

  test('of the answer rate goes by the sprints in which prompts were counted', async () => {
    const { h, team } = await closedAfter([keeping(1), keeping(1)]);
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await h.pass('2026-11-17T09:15:00Z');
    await h.pass('2026-11-20T17:00:00Z');
    expect(historyOf(h, 'answer-rate-low').crossed).toEqual({ sprints: 2, of: 2 });
  });

  test('of a mark of the velocity growth goes by the velocities beside the baseline', async () => {
    const past = [1, 3, 6, 7].map((points) => missing(10, points));
    const { h, imported } = await closedAfter([missing(10, 2), ...past], {
      velocityGrowthFirstMark: '240',
      velocityGrowthLongRangeMark: '500',
    });
    // 5 beside 2 is 250%; 3, 3.5 and 2.5 times are past 240%, 0.5 and 1.5 times are not.
    expect(historyOf(h, 'velocity-growth-first-mark').crossed).toEqual({ sprints: 3, of: 6 });
    // Beside 1 it is 500%, and so are 6 and 7.
    await nameBaseline(h.deps, ana, {
      place: CHANNEL,
      sprint: { sprintId: imported[1]?.sprintId ?? '' },
    });
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    await closeSprint(h.deps, ana, { place: CHANNEL });
    await h.drain();
    expect(historyOf(h, 'velocity-growth-long-range-mark').crossed).toEqual({ sprints: 3, of: 6 });
  });
});

describe('the range to try next', () => {
  const past = [finishing(10, 0), missing(10, 8), finishing(10, 2), missing(12, 9)];

  test('is made from the sprints up to this one, this one included', async () => {
    const { h, team } = await closedAfter(past);
    const expected = commitmentRange(
      [
        ...commitmentPast(pastSprintsOf(past)),
        {
          commitmentPoints: 10,
          pulledInPoints: 0,
          surprisePoints: 0,
          velocityPoints: 5,
          committedFinishedPoints: 5,
          workingDays: 10,
          memberDays: 30,
        },
      ],
      { workingDays: 10, memberDays: 30, memberDaysWhenAllThere: 30 },
      team.thresholds,
    );
    const { rangeToTry } = lastVerdict(h).history;
    expect(rangeToTry).toMatchObject({ sprints: 5 });
    const ends = ({ lowPoints, highPoints }: { lowPoints: unknown; highPoints: unknown }) => [
      lowPoints,
      highPoints,
    ];
    expect(ends(rangeToTry as never)).toEqual(ends(expected as never));
  });

  test('is the same in the verdict, in the answer and in the preview of the next plan, days off included', async () => {
    const { h, team, sprint } = await closedAfter(past);
    await h.write(async (tx) => {
      const people = await tx.read.membersOf(team.id);
      const daysOff = { full: ['2026-11-16', '2026-11-17'], half: ['2026-11-18'] };
      const members = people.map((one) => (one.userId === PEOPLE.chi ? { ...one, daysOff } : one));
      await tx.write.teams.saveMembers(team.id, members);
      await tx.write.posts.refresh((await tx.read.postAbout(sprint.id, 'verdict'))?.id ?? '');
    });
    await h.drain();
    const { range: asked } = (await askAdvice(
      h.deps,
      ana,
      { place: CHANNEL },
      { about: 'range' },
    )) as RangeAdvice;
    const days = { startsOn: '2026-11-16', endsOn: '2026-11-27' };
    const preview = await previewPlan(h.deps, ana, h.planInput(team, { name: 'Harbour 13', ...days }));
    const told = [lastVerdict(h).history.rangeToTry, asked, preview.range.range].map((range) => {
      if (range === undefined || 'undefined' in range) throw new Error('there is a range');
      return { low: range.lowPoints, high: range.highPoints, scaledTo: range.model.scaledTo };
    });
    // Three members on ten days, less two and a half.
    expect(told[0]?.scaledTo).toEqual({ measuredBy: 'member-days', comingTime: 27.5 });
    expect(told[1]).toEqual(told[0]);
    expect(told[2]).toEqual(told[0]);
  });

  test('says what is missing where there are too few', async () => {
    const { h } = await closedAfter([keeping(1)]);
    expect(lastVerdict(h).history.rangeToTry).toEqual({
      undefined: { code: 'few-sprints', needed: 3, known: 2, having: 'commitment' },
    });
  });

  test('is not there when no note asks for it', async () => {
    const h = harness();
    const { sprint } = await h.plan(await h.setUpTeam());
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' }, 3: { left: '0' } });
    await h.answer('chi', sprint.id, '2026-11-02', { 2: { left: '0' } });
    await h.pass('2026-11-13T17:00:00Z');
    expect(lastVerdict(h).history.rangeToTry).toBeUndefined();
  });
});

describe('what a post says of history', () => {
  test('stays the same when it is brought up to date after a later sprint has closed', async () => {
    const { h, team, sprint } = await closedAfter([1, 0.4, 0.9, 0.5, 1, 0.4, 0.9, 0.5].map(keeping));
    const before = JSON.stringify(lastVerdict(h).history);
    h.set('2026-11-16T08:00:00Z');
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await h.pass('2026-11-20T17:00:00Z');
    await h.write(async (tx) => {
      await tx.write.posts.refresh((await tx.read.postAbout(sprint.id, 'verdict'))?.id ?? '');
    });
    await h.drain();
    const again = h
      .messagesTo(CHANNEL)
      .flatMap((content) => (content.kind === 'verdict' ? [content.verdict] : []))
      .find((verdict) => verdict.sprint.id === sprint.id);
    expect(JSON.stringify(again?.history)).toBe(before);
  });

  test('stays the same while the sprint is open again, and of a cancelled one there is none', async () => {
    const { h, sprint } = await closedAfter([1, 0.4, 0.9, 0.5, 1, 0.4, 0.9, 0.5].map(keeping));
    const before = JSON.stringify(lastVerdict(h).history);
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    await h.drain();
    expect(lastVerdict(h).reopened).toBe('open');
    expect(JSON.stringify(lastVerdict(h).history)).toBe(before);
    await cancelSprint(h.deps, ana, { sprintId: sprint.id, reason: '' });
    await h.drain();
    expect(lastVerdict(h).history).toEqual({ notes: [], rangeToTry: undefined });
  });
});
