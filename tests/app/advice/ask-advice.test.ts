import { describe, expect, test } from 'vitest';
import type { Advice, AdviceQuestion } from '../../../src/app/advice/advice.ts';
import { adviceChart, hasChart } from '../../../src/app/advice/advice-chart.ts';
import { askAdvice, shareAdvice } from '../../../src/app/advice/ask-advice.ts';
import { cancelSprint } from '../../../src/app/closing/end-sprint.ts';
import type { Team } from '../../../src/app/team/team.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  type Harness,
  harnessForEach,
  PEOPLE,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';
import { finishing, importPast, pastSprintsOf } from '../past-sprints.ts';

// Friday noon in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');
const dayo = actorOf('dayo');

const QUESTIONS: readonly AdviceQuestion[] = [
  { about: 'odds' },
  { about: 'range' },
  { about: 'forecast', backlogPoints: 120, growthPoints: 0 },
  { about: 'history' },
];
const CARDS = [
  { estimatePoints: 3, surprisePoints: 0 },
  { estimatePoints: 8, surprisePoints: 2.5 },
];

type About = AdviceQuestion['about'];
type AdviceAbout<A extends About> = Extract<Advice, { readonly question: { readonly about: A } }>;

async function withTeam(sprints = 0): Promise<{ h: Harness; team: Team }> {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  const pulledIn = Array.from({ length: sprints }, (_, i) => 3.5 + (i % 3) / 2);
  const past = pastSprintsOf(pulledIn.map((points) => ({ ...finishing(20, points), cards: CARDS })));
  await importPast(h, team, past);
  return { h, team };
}

async function ask<Q extends AdviceQuestion>(h: Harness, question: Q): Promise<AdviceAbout<Q['about']>> {
  return (await askAdvice(h.deps, ben, { place: CHANNEL }, question)) as AdviceAbout<Q['about']>;
}

/** Without the functions that a range holds, which are never equal. */
function plain(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

describe('a planning question', () => {
  test('is answered to members and to the product owner, in the channel, in direct messages and from a button', async () => {
    const { h, team } = await withTeam(1);
    for (const actor of [ben, dayo]) {
      for (const reference of [
        { place: CHANNEL },
        { place: directMessagesOf(actor === ben ? 'ben' : 'dayo') },
        { teamId: team.id },
      ]) {
        expect(await askAdvice(h.deps, actor, reference, { about: 'odds' })).toMatchObject({
          team: { id: team.id, name: 'Tugboats', channelId: 'C1', timeZone: 'Europe/Lisbon' },
          on: '2026-10-30',
        });
      }
    }
  });

  test('says on how many sprints its answer rests, and how many of them were imported', async () => {
    const { h, team } = await withTeam(2);
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    await h.pass('2026-11-13T17:00:00Z');
    expect((await h.sprint(sprint.id)).state).toBe('closed');
    for (const question of QUESTIONS) {
      expect(await ask(h, question)).toMatchObject({ question, sprints: 3, importedSprints: 2 });
    }
  });

  test('is never answered from a cancelled sprint or a running one', async () => {
    const { h, team } = await withTeam(0);
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    expect(await ask(h, { about: 'history' })).toMatchObject({ sprints: 0 });
    await cancelSprint(h.deps, actorOf('ana'), { sprintId: sprint.id, reason: '' });
    expect(await ask(h, { about: 'history' })).toMatchObject({ sprints: 0, past: [] });
  });

  test('is answered in words, and without a chart, while nothing is known', async () => {
    const { h } = await withTeam(0);
    const missing = {
      odds: { odds: { undefined: { code: 'no-closed-card' } } },
      range: { range: { undefined: { code: 'few-sprints', needed: 3, known: 0, having: 'commitment' } } },
      forecast: { forecast: { undefined: { code: 'few-sprints', needed: 3, known: 0, having: 'closed' } } },
      history: { past: [], growth: undefined, velocityBaseline: undefined },
      kept: { bodies: [], done: [] },
    };
    for (const question of QUESTIONS) {
      const advice = await ask(h, question);
      expect(advice).toMatchObject(missing[question.about]);
      expect([hasChart(advice), await adviceChart(h.deps, advice)]).toEqual([false, undefined]);
    }
    expect(h.charts.advice).toEqual([]);
  });

  test('comes with a chart of its own once enough is known', async () => {
    const { h } = await withTeam(4);
    for (const question of QUESTIONS) {
      const advice = await ask(h, question);
      expect((await adviceChart(h.deps, advice))?.fileName).toBe(`${question.about}.png`);
      expect(h.charts.advice.at(-1)).toBe(advice);
    }
  });

  test('about history has no chart of a single sprint', async () => {
    const { h } = await withTeam(1);
    expect(hasChart(await ask(h, { about: 'history' }))).toBe(false);
  });
});

describe('the range', () => {
  test('is for the next free days, as long as the latest sprint, with nobody said to be away', async () => {
    const { h, team } = await withTeam(4);
    const { sprint } = await h.plan(team);
    const { coming } = await ask(h, { about: 'range' });
    expect(sprint.endsOn).toBe('2026-11-13');
    expect(coming).toEqual({
      startsOn: '2026-11-16',
      endsOn: '2026-11-27',
      workingDays: 10,
      members: 3,
      memberDays: 30,
      awayDays: undefined,
    });
  });

  test('is for the days that were asked for; a last day that was not is found by the usual length', async () => {
    const { h } = await withTeam(4);
    const { coming } = await ask(h, {
      about: 'range',
      startsOn: '2026-12-21',
      endsOn: '2026-12-31',
      awayDays: 7.5,
    });
    expect(coming).toEqual({
      startsOn: '2026-12-21',
      endsOn: '2026-12-31',
      workingDays: 9,
      members: 3,
      memberDays: 27,
      awayDays: 7.5,
    });
    const open = await ask(h, { about: 'range', startsOn: '2026-12-07' });
    expect(open.coming).toMatchObject({ startsOn: '2026-12-07', endsOn: '2026-12-18' });
  });

  test('takes sprints that were imported without their member-days for those of the team of that day', async () => {
    const { h, team } = await withTeam();
    const past = [3.5, 4, 4.5, 4].map((points) => ({ ...finishing(20, points), memberDays: undefined }));
    await importPast(h, team, pastSprintsOf(past));
    const rangeWith = async (...memberIds: string[]) => {
      await h.setUpTeam({ memberIds });
      const { range } = await ask(h, { about: 'range' });
      if ('undefined' in range) throw new Error(range.undefined.code);
      return range;
    };
    h.set('2026-11-02T10:00:00Z');
    const three = await rangeWith(PEOPLE.ana, PEOPLE.ben, PEOPLE.chi);
    const four = await rangeWith(...Object.values(PEOPLE));
    const two = await rangeWith(PEOPLE.ana, PEOPLE.ben);
    expect((four.highPoints as number) / (three.highPoints as number)).toBeCloseTo(4 / 3, 1);
    expect((two.highPoints as number) / (three.highPoints as number)).toBeCloseTo(2 / 3, 1);
    expect(two.missing).toContainEqual({
      ...{ code: 'past-members-unknown', sprints: 4, of: 4 },
      taken: 'members-then',
    });
  });

  test('counts the members of today, not those who have left', async () => {
    const { h } = await withTeam(4);
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.ben], productOwnerId: PEOPLE.dayo });
    expect((await ask(h, { about: 'range' })).coming.members).toBe(2);
  });

  test.each([
    [{ startsOn: '2026-02-30' }, 'startsOn', /“2026-02-30” isn’t a day/],
    [{ endsOn: 'soon' }, 'endsOn', /“soon” isn’t a day/],
    [{ startsOn: '2026-11-27', endsOn: '2026-11-16' }, 'endsOn', /comes before the first day/],
    [{ endsOn: '2026-10-29' }, 'endsOn', /comes before the first day/],
    // Days of three thousand years would be counted one by one.
    [{ startsOn: '2026-11-02', endsOn: '5026-11-02' }, 'endsOn', /92 days at most; this one lasts 1,095/],
    [{ startsOn: '2026-10-19', endsOn: '2026-10-29' }, 'endsOn', /over: Thu 29 Oct has gone by/],
    [
      { startsOn: '2026-11-02', endsOn: '2026-11-13', awayDays: 30.5 },
      'awayDays',
      /3 members × 10 working days = 30/,
    ],
    [{ points: 0 }, 'points', /^Give a commitment above 0, [\d,]+ points at most/],
    [{ points: Number.NaN }, 'points', /in whole or half points/],
    [{ awayDays: -1 }, 'awayDays', /whole or half days/],
    [{ awayDays: 2.25 }, 'awayDays', /whole or half days/],
    [{ awayDays: Number.NaN }, 'awayDays', /whole or half days/],
  ])('refuses %j and names the field', async (given, field, message) => {
    const { h, team } = await withTeam(0);
    const question: AdviceQuestion = { about: 'range', ...given };
    const problems = await problemsOf(askAdvice(h.deps, ben, { place: CHANNEL }, question));
    expect(problems).toEqual({ [field]: expect.stringMatching(message) });
    expect(await problemsOf(shareAdvice(h.deps, ben, { teamId: team.id, question }))).toEqual(problems);
    expect(await h.owedKinds()).toEqual([]);
  });

  test('reads days as they are typed, also the first one of a sprint that is running', async () => {
    const { h } = await withTeam(0);
    const coming = async (startsOn: string, endsOn: string) => {
      const answered = await ask(h, { about: 'range', startsOn, endsOn });
      expect(answered.question).toMatchObject({ startsOn: answered.coming.startsOn });
      return `${answered.coming.startsOn} ${answered.coming.endsOn}`;
    };
    expect(await coming('30 Nov', '11 Dec')).toBe('2026-11-30 2026-12-11');
    expect(await coming('26 Oct', '4 Jan')).toBe('2026-10-26 2027-01-04');
    expect(await coming('Monday', 'Friday')).toMatch(/^2026-11-\d\d 2026-11-\d\d$/);
  });

  test('takes a sprint that ends today, and everybody away on all of its days', async () => {
    const { h } = await withTeam(0);
    const question = { about: 'range', startsOn: '2026-10-19', endsOn: '2026-10-30', awayDays: 30 } as const;
    expect((await ask(h, question)).coming).toMatchObject({ workingDays: 10, awayDays: 30 });
  });
});

describe('the forecast', () => {
  test('begins with the first sprint that is not planned yet, in the team’s rhythm', async () => {
    const { h, team } = await withTeam(4);
    const question = { about: 'forecast', backlogPoints: 120, growthPoints: 0 } as const;
    expect(await ask(h, question)).toMatchObject({ startsOn: '2026-10-30', sprintLengthDays: 14 });
    await h.plan(team);
    expect(await ask(h, question)).toMatchObject({ startsOn: '2026-11-16', sprintLengthDays: 14 });
  });

  test('takes longer for work that grows', async () => {
    const { h } = await withTeam(6);
    const pessimistic = async (growthPoints: number): Promise<string> => {
      const { forecast } = await ask(h, { about: 'forecast', backlogPoints: 120, growthPoints });
      const date = 'undefined' in forecast ? undefined : forecast.dates[2];
      return date && 'on' in date ? date.on : 'none';
    };
    const [settled, growing] = [await pessimistic(0), await pessimistic(3)];
    expect(settled).toMatch(/^2027-/);
    expect(growing > settled).toBe(true);
  });

  test.each([
    [0, 0, ['backlogPoints']],
    [-5, 0, ['backlogPoints']],
    [0.25, 0, ['backlogPoints']],
    [20_000.5, 0, ['backlogPoints']],
    [Number.POSITIVE_INFINITY, Number.NaN, ['backlogPoints', 'growthPoints']],
    [100, -0.5, ['growthPoints']],
    [100, 20_000.5, ['growthPoints']],
  ])('refuses %d points growing by %d', async (backlogPoints, growthPoints, fields) => {
    const { h } = await withTeam(0);
    const question = { about: 'forecast', backlogPoints, growthPoints } as const;
    const problems = await problemsOf(askAdvice(h.deps, ben, { place: CHANNEL }, question));
    expect(Object.keys(problems)).toEqual(fields);
  });

  test.each(['2027-02-30', 'soon', '2026-10-29'])('refuses the day %s', async (byDay) => {
    const { h } = await withTeam(3);
    const question = { about: 'forecast', backlogPoints: 40, growthPoints: 0, byDay } as const;
    const problems = await problemsOf(askAdvice(h.deps, ben, { place: CHANNEL }, question));
    expect(Object.keys(problems)).toEqual(['byDay']);
  });

  test('tells the chance by a day that was asked about', async () => {
    const { h } = await withTeam(6);
    const question = { about: 'forecast', backlogPoints: 40, growthPoints: 0, byDay: '2027-03-31' } as const;
    const { byDay } = await ask(h, question);
    expect(byDay).toMatchObject({ on: '2027-03-31', amounts: [{ chance: 0.85 }, { chance: 0.5 }] });
  });

  test('tells how much is done by a day without an amount of work, and asks for one of the two', async () => {
    const { h } = await withTeam(6);
    const asked = { about: 'forecast', growthPoints: 0, byDay: '31 March' } as const;
    const { byDay: amounts } = await ask(h, asked);
    const { byDay } = await ask(h, { ...asked, backlogPoints: 40 });
    expect(amounts).toEqual({ ...byDay, chance: undefined });
    const nothing = askAdvice(h.deps, ben, { place: CHANNEL }, { about: 'forecast' });
    expect(await problemsOf(nothing)).toEqual({
      backlogPoints: 'Say how many points are left to do, or by which day you ask.',
    });
  });

  test.each([0, 101])('refuses a share of %d percent', async (sharePercent) => {
    const { h } = await withTeam(3);
    const question = { about: 'forecast', backlogPoints: 40, sharePercent } as const;
    const problems = await problemsOf(askAdvice(h.deps, ben, { place: CHANNEL }, question));
    expect(Object.keys(problems)).toEqual(['sharePercent']);
  });

  test('refuses growth whose ends are reversed', async () => {
    const { h } = await withTeam(3);
    const question = { about: 'forecast', backlogPoints: 40, growthPoints: 8, growthMostPoints: 2 } as const;
    const problems = await problemsOf(askAdvice(h.deps, ben, { place: CHANNEL }, question));
    expect(problems).toHaveProperty('growthPoints');
  });

  test('takes as much as 20,000 points, and as little as half a point', async () => {
    const { h } = await withTeam(3);
    for (const backlogPoints of [0.5, 20_000]) {
      const { forecast } = await ask(h, { about: 'forecast', backlogPoints, growthPoints: 0 });
      expect(forecast).toMatchObject({ sprintsUsed: 3 });
    }
  });
});

describe('the history', () => {
  test('measures velocity growth by the same sprint as the verdicts do, named or not', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const [, second] = await importPast(
      h,
      team,
      pastSprintsOf([finishing(0, 0), finishing(8, 0), finishing(20, 0)]),
    );
    const growth = async () => {
      const { ratios, velocityBaseline } = await ask(h, { about: 'history' });
      const last = ratios.find(({ ratio }) => ratio === 'velocityGrowth')?.values.at(-1);
      const measured = await h.read(async (read) =>
        read.baselineOf((await read.teamById(team.id)) as Team, 'a running sprint'),
      );
      return {
        last,
        baselineSprintId: velocityBaseline?.sprintId,
        byVerdicts: 20 / (measured?.velocityPoints ?? 0),
      };
    };
    expect(await growth()).toEqual({ last: 2.5, baselineSprintId: second?.sprintId, byVerdicts: 2.5 });
    const [, , third] = (await ask(h, { about: 'history' })).past;
    await h.write((tx) => tx.write.teams.save({ ...team, baselineSprintId: third?.sprintId }));
    expect(await growth()).toEqual({ last: 1, baselineSprintId: third?.sprintId, byVerdicts: 1 });
  });
});

describe('a shared answer', () => {
  test('is posted in the team’s channel as of the day on which it was asked, with its chart', async () => {
    const { h, team } = await withTeam(4);
    const question = { about: 'range', startsOn: '2026-11-02', endsOn: '2026-11-13', awayDays: 4 } as const;
    await shareAdvice(h.deps, dayo, { teamId: team.id, question });
    expect(await h.owedKinds()).toEqual(['shared-advice']);
    // It may be held up over midnight.
    await h.pass('2026-10-31T00:30:00Z');
    // Nobody asks in a post, so it holds nothing of who may do what next.
    const { askerIsFacilitator, ...asked } = await ask(h, question);
    expect(askerIsFacilitator).toBe(false);
    const posted = { kind: 'shared-advice', advice: { ...asked, on: '2026-10-30' }, byUserId: PEOPLE.dayo };
    expect(plain(h.messagesTo(CHANNEL))).toEqual(plain([posted]));
    expect(h.messenger.messages[0]?.image?.fileName).toBe('range.png');
    expect(h.charts.burndowns).toEqual([]);
  });

  test('is posted without a chart where there is nothing to draw', async () => {
    const { h, team } = await withTeam(0);
    for (const question of QUESTIONS) await shareAdvice(h.deps, ben, { teamId: team.id, question });
    await h.drain();
    expect(h.kindsTo(CHANNEL)).toEqual(['shared-advice', 'shared-advice', 'shared-advice', 'shared-advice']);
    expect(h.messenger.messages.map(({ image }) => image)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  test('is still posted when the members meanwhile are fewer than the days they were said to be away', async () => {
    const { h, team } = await withTeam(4);
    const question = { about: 'range', startsOn: '2026-11-02', endsOn: '2026-11-13', awayDays: 28 } as const;
    await shareAdvice(h.deps, ben, { teamId: team.id, question });
    h.messenger.failNext({ on: 'post', kind: 'not-sent' });
    await expect(h.drain()).rejects.toMatchObject({ kind: 'not-sent' });
    await h.setUpTeam({ memberIds: [PEOPLE.ana], productOwnerId: undefined });
    expect(await h.read((read) => read.countUnsentPosts())).toBe(0);
  });

  test('is refused to who may not read the team’s numbers', async () => {
    const { h, team } = await withTeam(0);
    await h.setUpTeam({ productOwnerId: undefined });
    const sharing = shareAdvice(h.deps, dayo, { teamId: team.id, question: { about: 'odds' } });
    expect(await refusalOf(sharing, 'not-a-member')).toMatchObject({ teamName: 'Tugboats' });
  });
});
