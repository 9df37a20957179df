/** Days off and away that a plan names count in the sprint until somebody records them, and never twice. */
import { describe, expect, test } from 'vitest';
import { recordAway, recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { daysOnlyNamed, memberDaysIn } from '../../../src/app/clock/member-days.ts';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { editSprint } from '../../../src/app/planning/edit-sprint.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { askWhatIf } from '../../../src/app/watching/what-if.ts';
import { correctionWords } from '../../../src/words/plan-changes.ts';
import { statusSentences } from '../../../src/words/status.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, problemsOf } from '../../support/app-harness.ts';
import { importPast, missing, pastSprintsOf } from '../past-sprints.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026: three members, 30 member-days.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const [ana, ben, chi] = [actorOf('ana'), actorOf('ben'), actorOf('chi')];

/** Finished evenly over ten evenings. */
function watched(cardPoints: number, points: number): Partial<PastSprint> {
  const trace = Array.from({ length: 11 }, (_, i) => ({
    cardPoints,
    finishedPoints: Math.round(2 * points * (i / 10)) / 2,
    underwayPoints: 0,
  }));
  return { ...missing(cardPoints, points), trace };
}

async function planned(awayDays: string, history = 0) {
  const h = harness();
  const team = await h.setUpTeam();
  const past = Array.from({ length: history }, (_, i) => watched(12, 6 + (i % 5)));
  if (history > 0) await importPast(h, team, pastSprintsOf(past));
  return { h, ...(await h.plan(team, { awayDays })) };
}

function off(h: Harness, who: typeof ana, words: string) {
  return sayDaysOff(h.deps, who, { place: CHANNEL, words });
}

function status(h: Harness) {
  return sprintStatus(h.deps, ana, CHANNEL);
}

async function memberDaysLeft(h: Harness, sprintId: string): Promise<number> {
  const asked = { sprintId, without: '1', awayDays: '', morePoints: '' };
  return (await askWhatIf(h.deps, ana, asked)).memberDaysLeft;
}

async function memberDaysAtClosing(h: Harness, sprintId: string): Promise<number | undefined> {
  await closeSprint(h.deps, ana, { sprintId });
  const { team, past } = await h.write(async (tx) => {
    const found = await tx.read.sprintById(sprintId);
    const team = await tx.read.teamById(found?.teamId ?? '');
    if (!team) throw new Error('the team is set up');
    return { team, past: await pastSprints(tx, team) };
  });
  expect(team.name).toBe('Tugboats');
  return past.find((one) => one.sprintId === sprintId)?.memberDays;
}

describe('days off and away that the plan names', () => {
  test('are taken off in the preview, those that are recorded already among them', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await off(h, ben, '3 Nov to 4 Nov');
    const { time, range } = await previewPlan(h.deps, ana, h.planInput(team, { awayDays: '6' }));
    expect(time).toMatchObject({ memberDays: 24, namedDays: 6, onlyNamedDays: 4 });
    expect(range.coming).toMatchObject({ memberDays: 28, awayDays: 4 });
  });

  test('hold the team’s holidays, each once for every member', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await off(h, ana, 'team 6 Nov');
    const { time } = await previewPlan(h.deps, ana, h.planInput(team, { awayDays: '5' }));
    expect(time).toMatchObject({ memberDays: 25, onlyNamedDays: 2 });
  });

  test('count in the status, spread over the sprint, until somebody records them', async () => {
    const { h, sprint } = await planned('6');
    await h.pass('2026-11-06T18:00:00Z');
    expect((await status(h)).onlyNamedDays).toBe(6);
    // Of 30 days 24 are left, and four of ten have gone by.
    expect(await memberDaysLeft(h, sprint.id)).toBe(14.5);
    await off(h, ben, '9 Nov to 12 Nov');
    expect(await status(h)).toMatchObject({ onlyNamedDays: 2 });
    await off(h, chi, '10 Nov to 11 Nov');
    expect(await status(h)).toMatchObject({ onlyNamedDays: 0 });
    expect(await memberDaysLeft(h, sprint.id)).toBe(12);
  });

  test('are told in the status as long as nobody has recorded them', async () => {
    const { h } = await planned('6');
    await h.pass('2026-11-03T09:15:00Z');
    const words =
      'The plan names 6 days off or away that nobody has entered with `/loadline off`; they count as spread over the whole sprint.';
    expect(statusSentences(await status(h))).toContain(words);
    await off(h, ben, '9 Nov to 13 Nov');
    expect(statusSentences(await status(h))).toContain(
      'The plan names 1 day off or away that nobody has entered with `/loadline off`; it counts as spread over the whole sprint.',
    );
    await off(h, chi, '9 Nov');
    expect(statusSentences(await status(h)).join()).not.toContain('The plan names');
  });

  test.each(['2026-11-02T09:15:00Z', '2026-11-09T09:15:00Z'])('lower the chances on %s', async (on) => {
    const chances: number[] = [];
    const { h, sprint } = await planned('', 6);
    await h.pass(on);
    await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: on.slice(0, 10) });
    for (const awayDays of [undefined, 15]) {
      await h.write(async (tx) => tx.write.sprints.update({ ...(await h.sprint(sprint.id)), awayDays }));
      const { load } = await status(h);
      if (load.from !== 'projection') throw new Error('there is history');
      chances.push(load.reading.allFinishedChance);
    }
    expect(chances[1]).toBeLessThan(chances[0] as number);
  });

  test('are part of the member-days that the sprint leaves to history, days said on the day among them', async () => {
    const { h, sprint } = await planned('6');
    await off(h, ben, '3 Nov to 4 Nov');
    await h.pass('2026-11-05T09:15:00Z');
    await recordAway(h.deps, chi, { sprintId: sprint.id, day: '2026-11-05' });
    await h.pass('2026-11-13T16:00:00Z');
    expect(await memberDaysAtClosing(h, sprint.id)).toBe(24);
  });

  test('are corrected while the sprint runs, and the change is kept and listed', async () => {
    const { h, sprint } = await planned('6');
    await h.pass('2026-11-06T18:00:00Z');
    const { heading, changes } = await editSprint(h.deps, ana, {
      sprintId: sprint.id,
      edit: { awayDays: ' 8.5 ' },
    });
    expect(changes).toMatchObject([{ part: 'awayDays', was: '6', became: '8.5', changedBy: ana.userId }]);
    expect(heading.sprint).toMatchObject({ endsOn: '2026-11-13', closesAt: sprint.closesAt });
    expect((await status(h)).onlyNamedDays).toBe(8.5);
    expect(correctionWords(changes[0] as (typeof changes)[0], [], 'plain')).toBe(
      'days off and away 8.5 instead of 6',
    );
  });

  test('are taken out again with an empty field or 0, and stay as they are without one', async () => {
    const { h, sprint } = await planned('6');
    const edit = (awayDays: string | undefined) =>
      editSprint(h.deps, ana, { sprintId: sprint.id, edit: { goal: 'A berth by phone', awayDays } });
    expect((await edit(undefined)).changes).toMatchObject([{ part: 'goal' }]);
    expect((await edit('')).changes).toMatchObject([{ part: 'awayDays', was: '6', became: '' }]);
    expect((await edit('0')).changes).toEqual([]);
    await h.pass('2026-11-06T18:00:00Z');
    expect((await status(h)).onlyNamedDays).toBe(0);
  });

  test.each([
    ['some', /^Give the days off and away of all members together/],
    ['30.5', / = 30, so no more than that can be off or away; you gave 30\.5\.$/],
  ])('of “%s” are refused in a running sprint as at planning', async (awayDays, why) => {
    const { h, sprint } = await planned('6');
    const refused = await problemsOf(editSprint(h.deps, ana, { sprintId: sprint.id, edit: { awayDays } }));
    expect(refused).toEqual({ awayDays: expect.stringMatching(why) });
    expect((await h.sprint(sprint.id)).awayDays).toBe(6);
  });

  test('stand in nobody’s way when the team has become smaller since', async () => {
    const { h, sprint } = await planned('');
    await h.write(async (tx) => tx.write.sprints.update({ ...(await h.sprint(sprint.id)), awayDays: 35 }));
    const edit = { goal: 'A berth by phone', awayDays: '35' };
    const { changes } = await editSprint(h.deps, ana, { sprintId: sprint.id, edit });
    expect(changes).toMatchObject([{ part: 'goal' }]);
  });

  test('make room for those that are recorded beyond them', async () => {
    const { h, sprint } = await planned('2');
    await off(h, ben, '3 Nov to 5 Nov');
    await h.pass('2026-11-13T16:00:00Z');
    expect(await memberDaysAtClosing(h, sprint.id)).toBe(27);
  });
});

test('a sprint that was closed early keeps as much of the days named as of its time', async () => {
  const h = harness();
  const team = await h.setUpTeam();
  const members = await h.read((read) => read.membersOf(team.id));
  const sprint = { startsOn: '2026-11-02', endsOn: '2026-11-13', awayDays: 6 };
  const firstWeek = ['2026-11-02', '2026-11-03', '2026-11-04', '2026-11-05', '2026-11-06'];
  expect(memberDaysIn(team, sprint, members, firstWeek)).toBe(12);
  expect(daysOnlyNamed(team, sprint, members)).toBe(6);
  expect(daysOnlyNamed(team, { ...sprint, awayDays: 40 }, members)).toBe(30);
});
