import { describe, expect, it, test } from 'vitest';
import { cancelSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { tryExperiment } from '../../../src/app/experiments/try-experiment.ts';
import { dueSprint, retroSheet, shareRetro } from '../../../src/app/retro/retro-sheet.ts';
import type { Sprint } from '../../../src/app/team/team.ts';
import { sprint } from '../../slack/views/view-examples.ts';
import { actorOf, CHANNEL, harnessForEach, refusalOf } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const ben = actorOf('ben');

describe('the sprint that a retrospective is due for', () => {
  const of = (name: string, startsOn: string, endsOn: string, more: Partial<Sprint> = {}): Sprint => ({
    ...sprint,
    ...{ name, startsOn, endsOn, state: 'closed' },
    ...more,
  });
  const one = of('1', '2026-11-02', '2026-11-06');
  const two = of('2', '2026-11-09', '2026-11-13');
  const running = of('3', '2026-11-16', '2026-11-20', { state: 'open' });
  const imported = new Date('2026-11-01T12:00:00Z');

  it.each<[what: string, sprints: Sprint[], today: string, due: string | undefined]>([
    ['the one that closed last, while another runs', [one, two, running], '2026-11-18', '2'],
    ['the running one on its last day', [one, two, running], '2026-11-20', '3'],
    ['a reopened one', [one, { ...two, state: 'open' }], '2026-11-16', '2'],
    ['the running one, when none has closed', [running], '2026-11-17', '3'],
    ['none before the first one begins', [running], '2026-11-13', undefined],
    ['no cancelled one', [one, { ...two, state: 'cancelled' }], '2026-11-18', '1'],
    ['no imported one', [one, { ...two, importedAt: imported }], '2026-11-18', '1'],
    [
      'the imported one that ended last, when there are no others',
      [{ ...one, importedAt: imported }],
      '2026-11-18',
      '1',
    ],
  ])('is %s', (_, sprints, today, due) => {
    expect(dueSprint(sprints, today)?.name).toBe(due);
  });
});

/** A sprint of one week in November 2026 in Lisbon, which is on UTC then: a card grew, one was finished, one was not. */
async function played() {
  const h = harness();
  const team = await h.setUpTeam();
  await tryExperiment(h.deps, ana, {
    teamId: team.id,
    text: 'Small cards',
    ratio: 'keptShare',
    direction: 'up',
  });
  h.set('2026-11-02T08:00:00Z');
  const { sprint } = await h.plan(team, { startsOn: '2026-11-02', endsOn: '2026-11-06' });
  await h.pass('2026-11-02T09:15:00Z');
  await h.answer('ben', sprint.id, '2026-11-02', {
    1: { left: '9', surprise: '1', note: 'private: long night' },
  });
  await h.pass('2026-11-03T09:15:00Z');
  await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '0' } });
  return { h, team, sprint };
}

describe('the retrospective sheet', () => {
  test('has the verdict, the days, and what is being tried with its number', async () => {
    const { h, sprint } = await played();
    await h.pass('2026-11-06T17:00:00Z');
    const sheet = await retroSheet(h.deps, ben, { place: CHANNEL, sprintName: '' });
    expect(sheet.sprint.id).toBe(sprint.id);
    expect(sheet.verdict?.summary.verdict.verdict).toBe('missed');
    expect(sheet.timeline.map(({ day, events }) => [day, events.map(({ kind }) => kind)])).toEqual([
      ['2026-11-02', ['grew']],
      ['2026-11-03', ['finished']],
    ]);
    expect(sheet.experiments).toMatchObject([{ experiment: { text: 'Small cards' }, result: { now: 0.5 } }]);
    expect(sheet.questions).toHaveLength(2);
    expect(JSON.stringify(sheet.timeline)).not.toContain('long night');
  });

  test('is there while the sprint runs, without a verdict and what is unfinished', async () => {
    const { h } = await played();
    const sheet = await retroSheet(h.deps, ben, { place: CHANNEL, sprintName: ' harbour  12 ' });
    expect(sheet.verdict).toBeUndefined();
    expect(sheet.experiments).toMatchObject([{ result: undefined }]);
    expect(sheet.questions.map(({ code }) => code)).toEqual(['surprise-one-card', 'estimates-one-card']);
  });

  test('keeps its verdict when the sprint is open again, and has none of a cancelled one', async () => {
    const { h, sprint } = await played();
    await h.pass('2026-11-06T17:00:00Z');
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    expect((await retroSheet(h.deps, ana, { sprintId: sprint.id })).verdict).toBeDefined();
    await cancelSprint(h.deps, ana, { sprintId: sprint.id, reason: '' });
    expect((await retroSheet(h.deps, ana, { sprintId: sprint.id })).verdict).toBeUndefined();
  });

  test('is refused of a sprint that is not there, has not begun, or when there is none', async () => {
    const { h, team } = await played();
    const of = (sprintName: string) => retroSheet(h.deps, ana, { place: CHANNEL, sprintName });
    await refusalOf(of('Harbour 99'), 'no-closed-sprint');
    await h.pass('2026-11-06T17:00:00Z');
    expect(await refusalOf(of('Harbour 99'), 'no-such-sprint')).toEqual({
      reference: 'Harbour 99',
      known: ['Harbour 12'],
    });
    await h.plan(team, { name: 'Later', startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await refusalOf(of('Later'), 'sprint-not-begun');
  });

  test('goes to the channel with who shared it', async () => {
    const { h, sprint } = await played();
    await h.pass('2026-11-06T17:00:00Z');
    await shareRetro(h.deps, ben, { sprintId: sprint.id });
    await h.drain();
    expect(h.messagesTo(CHANNEL).at(-1)).toMatchObject({
      kind: 'shared-retro',
      byUserId: ben.userId,
      retro: { sprint: { id: sprint.id } },
    });
  });
});
