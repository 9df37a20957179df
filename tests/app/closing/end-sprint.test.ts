import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { answerForm } from '../../../src/app/answering/answer-form.ts';
import { answerInWords } from '../../../src/app/answering/answer-in-words.ts';
import { dropCard } from '../../../src/app/cards/change-cards.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { cancelSprint, closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import type { VerdictContent } from '../../../src/app/closing/verdict-content.ts';
import { editCard } from '../../../src/app/planning/edit-card.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  type Harness,
  harnessForEach,
  PEOPLE,
  refusalOf,
} from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const CLOSING = '2026-11-13T17:00:00Z';

async function running(cards?: string) {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team, cards === undefined ? {} : { cards });
  await h.pass('2026-11-02T09:15:00Z');
  return { h, team, sprint };
}

function verdictsIn(h: Harness): VerdictContent[] {
  return h.messagesTo(CHANNEL).flatMap((content) => (content.kind === 'verdict' ? [content.verdict] : []));
}

function resultsOf(h: Harness, sprintId: string) {
  return h.read((read) => read.latestResult(sprintId));
}

describe('closing by itself', () => {
  test('happens at the closing time, not before, and posts the verdict with its chart in the channel', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' }, 3: { left: '0' } });
    await h.pass('2026-11-13T16:59:59Z');
    expect((await h.sprint(sprint.id)).state).toBe('open');
    await h.pass(CLOSING);
    expect(await h.sprint(sprint.id)).toMatchObject({
      state: 'closed',
      closedAt: new Date(CLOSING),
      nextPromptAt: undefined,
      nextReminderAt: undefined,
      lastCallAt: undefined,
    });
    expect(verdictsIn(h)).toMatchObject([
      {
        cancelled: false,
        reopened: 'never',
        closedEarlyOn: undefined,
        reopenUntil: new Date('2026-11-16T17:00:00Z'),
        version: 1,
        // 7 of 10 points kept: below 80%.
        summary: { verdict: { verdict: 'missed' }, ratios: { keptShare: 0.7 } },
      },
    ]);
    const post = h.messenger.messages.find(({ content }) => content.kind === 'verdict');
    expect(post?.image).toMatchObject({ fileName: 'burndown.png', altText: 'Burndown of Harbour 12' });
    expect(h.charts.burndowns.at(-1)).toMatchObject({ today: undefined });
  });

  test('names cards that were planned for the next sprint and are finished by now, as long as that can be corrected', async () => {
    const { h, team, sprint } = await running();
    const { cards } = await h.records(sprint.id);
    const title = cards[0]?.title ?? '';
    const next = await h.plan(team, {
      name: 'Harbour 13',
      startsOn: '2026-11-16',
      endsOn: '2026-11-27',
      cards: `Buoys, 3, @Ben\n${title}, 2, @Ben\n${cards[1]?.title}, 3, @Ben`,
    });
    h.set('2026-11-13T12:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '0' } });
    await h.pass(CLOSING);
    const overtaken = () =>
      verdictsIn(h)
        .at(-1)
        ?.nextSprint?.overtaken.map(({ number }) => number);
    expect(overtaken()).toEqual([2]);
    h.set('2026-11-16T10:00:00Z');
    await editCard(h.deps, ana, { sprintId: next.sprint.id, reference: '2', edit: { estimate: '0' } });
    await h.write((tx) => tx.write.posts.refreshSent(sprint.id, 'verdict'));
    await h.drain();
    expect(overtaken()).toEqual([]);
  });

  test('names the sprint that follows, where it is planned already, and no other', async () => {
    const { h, team } = await running();
    const planned = (name: string, startsOn: string, endsOn: string) =>
      h.plan(team, { name, startsOn, endsOn, cards: 'Buoys, 3, @Ben' });
    await planned('Harbour 14', '2026-11-30', '2026-12-11');
    await planned('Harbour 13', '2026-11-16', '2026-11-27');
    await h.pass(CLOSING);
    expect(verdictsIn(h)).toMatchObject([{ nextSprint: { name: 'Harbour 13' } }]);
    await h.pass('2026-12-11T17:00:00Z');
    expect(verdictsIn(h).at(-1)).toMatchObject({ sprint: { name: 'Harbour 14' }, nextSprint: undefined });
  });

  test('happens once, however often the clock ticks and however many do', async () => {
    const { h, sprint } = await running();
    h.set(CLOSING);
    const claimed = await Promise.all([h.tick(), h.tick()]);
    await h.pass('2026-11-13T17:01:00Z');
    expect(claimed.reduce((a, b) => a + b)).toBe(1);
    expect(verdictsIn(h)).toHaveLength(1);
    expect((await resultsOf(h, sprint.id))?.version).toBe(1);
  });

  test('is caught up with after an outage, and asks nobody any more', async () => {
    const { h, sprint } = await running();
    const before = h.kindsTo('ben').length;
    await h.pass('2026-11-16T09:20:00Z');
    expect(await h.sprint(sprint.id)).toMatchObject({
      state: 'closed',
      closedAt: new Date('2026-11-16T09:20:00Z'),
    });
    expect(h.kindsTo('ben')).toHaveLength(before);
  });

  test('of a sprint without a commitment says “no plan”, with ratios that are undefined for a reason', async () => {
    const { h } = await running('');
    await pullCards(h.deps, actorOf('ben'), { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
    await h.pass(CLOSING);
    const [verdict] = verdictsIn(h);
    expect(verdict?.summary).toMatchObject({
      verdict: { verdict: 'no plan', failedTests: [] },
      totals: { commitmentPoints: 0, pulledInPoints: 3, loadPoints: 3 },
      ratios: {
        planShare: 0,
        keptShare: { undefined: { code: 'no-commitment' } },
        surpriseRatio: { undefined: { code: 'no-commitment' } },
        pullInRatio: { undefined: { code: 'no-commitment' } },
      },
    });
  });

  test('shows dropped cards with the reasons given', async () => {
    const { h, sprint } = await running();
    await dropCard(h.deps, actorOf('ben'), { place: CHANNEL, reference: '2', reason: 'not wanted' });
    await h.pass(CLOSING);
    const { cards } = await h.records(sprint.id);
    expect(verdictsIn(h)[0]?.dropReasons).toEqual(new Map([[cards[1]?.id, 'not wanted']]));
  });
});

describe('the numbers of a verdict', () => {
  test('stay as they were posted, though the team measures otherwise afterwards', async () => {
    const { h, team, sprint } = await running();
    await h.pass(CLOSING);
    const posted = verdictsIn(h)[0]?.summary;
    await h.write((tx) =>
      tx.write.teams.save({
        ...team,
        thresholds: { ...team.thresholds, keptShareAtLeast: 0, surpriseRatioAtMost: 1 },
      }),
    );
    expect((await resultsOf(h, sprint.id))?.summary).toEqual(posted);
    expect(posted?.verdict.verdict).toBe('missed');
  });

  test('of a team’s first sprint are its own baseline, and that of the next', async () => {
    const { h, team, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    await h.pass(CLOSING);
    expect(verdictsIn(h)[0]?.summary.ratios.velocityGrowth).toBe(1);
    h.set('2026-11-16T08:00:00Z');
    const next = await h.plan(team, {
      name: 'Harbour 13',
      startsOn: '2026-11-16',
      endsOn: '2026-11-16',
      cards: 'A, 8, @Ben\nB, 5, @Ben',
    });
    await h.answer('ben', next.sprint.id, '2026-11-16', { 1: { left: '0' }, 2: { left: '0' } });
    await h.pass('2026-11-16T17:00:00Z');
    // 13 points against 5.
    expect(verdictsIn(h)[1]?.summary.ratios.velocityGrowth).toBe(2.6);
  });
});

describe('closing before its time', () => {
  test('is for facilitators, and gives the verdict at once', async () => {
    const { h, sprint } = await running();
    await refusalOf(closeSprint(h.deps, actorOf('ben'), { place: CHANNEL }), 'not-a-facilitator');
    const verdict = await closeSprint(h.deps, ana, { place: CHANNEL });
    await h.drain();
    expect(verdict).toMatchObject({ sprint: { id: sprint.id, state: 'closed' }, version: 1 });
    expect(verdictsIn(h)).toHaveLength(1);
    await refusalOf(closeSprint(h.deps, ana, { sprintId: sprint.id }), 'sprint-over');
    await refusalOf(closeSprint(h.deps, ana, { place: CHANNEL }), 'no-sprint-running');
  });

  test('ends the burndown and what is told of the sprint on that day', async () => {
    const { h, sprint } = await running();
    await h.pass('2026-11-04T12:00:00Z');
    await closeSprint(h.deps, ana, { place: CHANNEL });
    await h.drain();
    const told = h.charts.burndowns.at(-1)?.days.filter(({ leftPoints }) => leftPoints !== undefined);
    expect(told?.map(({ day }) => day)).toEqual(['2026-11-02', '2026-11-03', '2026-11-04']);
    expect(verdictsIn(h)[0]?.closedEarlyOn).toBe('2026-11-04');
    const causes = verdictsIn(h)[0]?.causes.get('kept-share-low');
    expect(causes?.map(({ code }) => code)).not.toContain('days-off');
    // Somebody may still answer for a later day, which then shows.
    expect(await reopenSprint(h.deps, ana, { sprintId: sprint.id })).toMatchObject({ lastDay: '2026-11-04' });
    h.set('2026-11-05T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-05', { 1: { left: '0' } });
    await closeSprint(h.deps, ana, { place: CHANNEL });
    await h.drain();
    expect(h.charts.burndowns.at(-1)?.days.map(({ leftPoints }) => leftPoints !== undefined)).toEqual([
      true,
      true,
      true,
      true,
      ...Array.from({ length: 6 }, () => false),
    ]);
  });

  test('of a sprint that has not begun is refused: there is nothing to judge yet', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team);
    await refusalOf(closeSprint(h.deps, ana, { sprintId: sprint.id }), 'sprint-not-begun');
  });
});

describe('reopening', () => {
  test('until the next working day’s closing time brings the post up to date, takes corrections, and closes by itself again', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' }, 3: { left: '0' } });
    await h.pass(CLOSING);
    await h.pass('2026-11-16T16:59:00Z');
    const { until } = await reopenSprint(h.deps, ana, { place: CHANNEL });
    await h.drain();
    expect(until).toEqual(new Date('2026-11-16T17:00:00Z'));
    expect(verdictsIn(h)).toMatchObject([{ reopened: 'open', reopenUntil: undefined, version: 1 }]);

    const form = await answerForm(h.deps, actorOf('chi'), { place: CHANNEL });
    expect(form.day).toBe('2026-11-13');
    await h.answer('chi', sprint.id, '2026-11-13', { 2: { left: '0' } });
    await h.pass('2026-11-16T17:00:00Z');
    expect(verdictsIn(h)).toMatchObject([
      {
        reopened: 'closed-again',
        version: 2,
        reopenUntil: undefined,
        summary: { verdict: { verdict: 'kept' } },
      },
    ]);
    const post = h.messenger.messages.find(({ content }) => content.kind === 'verdict');
    expect(post?.updates).toBe(2);
  });

  test('keeps the numbers of the first closing on record beside those of the second', async () => {
    const { h, sprint } = await running();
    await h.pass(CLOSING);
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '0' } });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    const rows = await rowsOf(
      h.database,
      sql`select version, velocity_points::float as velocity from loadline.sprint_results order by version`,
    );
    expect(rows).toEqual([
      { version: 1, velocity: 0 },
      { version: 2, velocity: 5 },
    ]);
  });

  test('asks and reminds nobody', async () => {
    const { h, sprint } = await running();
    await h.pass('2026-11-05T17:00:00Z');
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    const before = h.kindsTo('ben').length;
    await h.pass('2026-11-06T09:15:00Z');
    await h.setUpTeam({ promptAt: '09:30' });
    await h.pass('2026-11-06T16:00:00Z');
    expect(before).toBeGreaterThan(0);
    expect(h.kindsTo('ben')).toEqual([]);
  });

  test('a second time counts from the first closing', async () => {
    const { h, sprint } = await running();
    await h.pass(CLOSING);
    h.set('2026-11-14T10:00:00Z');
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    const { until } = await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    expect(until).toEqual(new Date('2026-11-16T17:00:00Z'));
  });

  test('after closing time on the next working day is too late', async () => {
    const { h, sprint } = await running();
    await h.pass(CLOSING);
    h.set('2026-11-16T17:00:00Z');
    expect(await refusalOf(reopenSprint(h.deps, ana, { place: CHANNEL }), 'reopen-too-late')).toMatchObject({
      sprintName: 'Harbour 12',
    });
    expect((await h.sprint(sprint.id)).state).toBe('closed');
  });

  test('is for facilitators, and for a sprint that was closed', async () => {
    const { h, sprint } = await running();
    await refusalOf(reopenSprint(h.deps, ana, { place: CHANNEL }), 'no-sprint-to-reopen');
    await refusalOf(reopenSprint(h.deps, ana, { sprintId: sprint.id }), 'no-sprint-to-reopen');
    await h.pass(CLOSING);
    await refusalOf(reopenSprint(h.deps, actorOf('ben'), { place: CHANNEL }), 'not-a-facilitator');
  });

  test('finds the sprint that closed last, though one that follows it was cancelled since', async () => {
    const { h, team, sprint } = await running();
    await h.pass(CLOSING);
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await cancelSprint(h.deps, ana, { place: CHANNEL, reason: 'a mistake' });
    const { heading } = await reopenSprint(h.deps, ana, { place: CHANNEL });
    expect(heading.sprint.id).toBe(sprint.id);
  });

  test('is refused while another sprint is open on some of the same days', async () => {
    const { h, team, sprint } = await running();
    h.set('2026-11-06T12:00:00Z');
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-06', endsOn: '2026-11-20' });
    expect(await refusalOf(reopenSprint(h.deps, ana, { sprintId: sprint.id }), 'days-taken')).toEqual({
      sprintName: 'Harbour 12',
      otherName: 'Harbour 13',
    });
  });

  test('beside a sprint that runs already leaves people in that one, unless they name a day of the other', async () => {
    const { h, team, sprint } = await running();
    await h.pass(CLOSING);
    h.set('2026-11-14T08:00:00Z');
    const next = await h.plan(team, {
      name: 'Harbour 13',
      startsOn: '2026-11-14',
      endsOn: '2026-11-20',
      cards: 'Buoys, 3, @Ben',
    });
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    expect((await sprintStatus(h.deps, ana, CHANNEL)).sprint.id).toBe(next.sprint.id);
    await answerInWords(h.deps, actorOf('ben'), { text: '1', place: directMessagesOf('ben') });
    expect((await h.records(next.sprint.id)).facts).toHaveLength(1);
    const form = await answerForm(h.deps, actorOf('ben'), { place: CHANNEL, day: '2026-11-04' });
    expect(form.heading.sprint.id).toBe(sprint.id);
  });
});

describe('cancelling', () => {
  test('keeps the numbers, marks them, tells the channel why, and stops the clock', async () => {
    const { h, team, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    await cancelSprint(h.deps, ana, { place: CHANNEL, reason: ' the goal became obsolete ' });
    await h.drain();
    expect(h.messagesTo(CHANNEL).at(-1)).toMatchObject({
      kind: 'cancelled',
      byUserId: PEOPLE.ana,
      reason: 'the goal became obsolete',
      verdict: { cancelled: true, reopenUntil: undefined, summary: { totals: { velocityPoints: 5 } } },
    });
    expect(await resultsOf(h, sprint.id)).toMatchObject({ cancelled: true, version: 1 });
    expect(await h.read((read) => read.closedSprintsOf(team.id))).toEqual([]);
    await h.pass('2026-11-13T17:00:00Z');
    expect(verdictsIn(h)).toEqual([]);
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });

  test('is for facilitators, for good, and once', async () => {
    const { h, sprint } = await running();
    const cancel = (by = ana) => cancelSprint(h.deps, by, { sprintId: sprint.id, reason: '' });
    await refusalOf(cancel(actorOf('ben')), 'not-a-facilitator');
    await cancel();
    expect(await refusalOf(cancel(), 'sprint-over')).toMatchObject({ state: 'cancelled' });
    await refusalOf(reopenSprint(h.deps, ana, { sprintId: sprint.id }), 'no-sprint-to-reopen');
  });

  test('is possible before the sprint begins', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team);
    await cancelSprint(h.deps, ana, { place: CHANNEL, reason: '' });
    expect((await h.sprint(sprint.id)).state).toBe('cancelled');
  });

  test('of a reopened sprint brings the verdict that was posted up to date as well', async () => {
    const { h, sprint } = await running();
    await h.pass(CLOSING);
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await cancelSprint(h.deps, ana, { sprintId: sprint.id, reason: '' });
    await h.drain();
    expect(verdictsIn(h)).toMatchObject([{ cancelled: true, version: 2 }]);
    expect(h.kindsTo(CHANNEL).at(-1)).toBe('cancelled');
  });

  test('with a reason beyond 300 characters is refused', async () => {
    const { h } = await running();
    const attempt = cancelSprint(h.deps, ana, { place: CHANNEL, reason: 'x'.repeat(301) });
    expect(await refusalOf(attempt, 'bad-argument')).toMatchObject({ command: 'cancel' });
  });
});
