import { describe, expect, test } from 'vitest';
import { recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { statesOf } from '../../../src/app/cards/card-line.ts';
import { pullCards, pullForm } from '../../../src/app/cards/pull-cards.ts';
import { isDayOver, sprintTime } from '../../../src/app/clock/sprint-time.ts';
import { cancelSprint, closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import type { PastSprint, TracePoint } from '../../../src/app/history/past-sprint.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { setUpTeam } from '../../../src/app/team/set-up-team.ts';
import type { RecordedFact, SprintCard, Team } from '../../../src/app/team/team.ts';
import type { LoadOutlook, ProjectionReading } from '../../../src/app/watching/load-outlook.ts';
import { loadedSprint } from '../../../src/app/watching/load-outlook.ts';
import { sprintProjection } from '../../../src/app/watching/sprint-projection.ts';
import { shareStatus, sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { askWhatIf } from '../../../src/app/watching/what-if.ts';
import { loadReading } from '../../../src/forecast/load-signal.ts';
import type { Reason } from '../../../src/sprint/undefined-value.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, PEOPLE } from '../../support/app-harness.ts';
import { importPast, missing, pastSprintsOf } from '../past-sprints.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then; 10 points committed.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');
const ana = actorOf('ana');

/** Goes evenly from nothing finished to so much, on the evening of each of ten working days. */
function evenTrace(cardPoints: number, finishedPoints: number): TracePoint[] {
  return Array.from({ length: 11 }, (_, i) => ({
    cardPoints,
    finishedPoints: (Math.round((2 * finishedPoints * i) / 10) as number) / 2,
    underwayPoints: 0,
  }));
}

const finishing = (points: number): Partial<PastSprint> => ({
  ...missing(10, points),
  trace: evenTrace(10, points),
});

/** Ben said once that nothing had changed. */
async function running(past: readonly Partial<PastSprint>[] = [], cards?: string) {
  const begun = await unanswered(past, cards);
  await recordUnchanged(begun.h.deps, ben, { sprintId: begun.sprint.id, day: '2026-11-05' });
  return begun;
}

async function unanswered(past: readonly Partial<PastSprint>[] = [], cards?: string) {
  const h = harness();
  const team = await h.setUpTeam();
  if (past.length > 0) await importPast(h, team, pastSprintsOf(past));
  const { sprint } = await h.plan(team, cards === undefined ? {} : { cards });
  await h.pass('2026-11-06T09:15:00Z');
  return { h, team, sprint };
}

async function loadOf(h: Harness): Promise<LoadOutlook> {
  return (await sprintStatus(h.deps, ben, CHANNEL)).load;
}

async function readingOf(h: Harness): Promise<ProjectionReading> {
  const load = await loadOf(h);
  if (load.from !== 'projection') throw new Error(`no projection: ${JSON.stringify(load)}`);
  return load.reading;
}

describe('the load signal', () => {
  test('comes from the projection as soon as the team has three closed sprints with known numbers', async () => {
    const { h } = await running(Array.from({ length: 3 }, () => finishing(5)));
    expect(await readingOf(h)).toMatchObject({ ownSprints: 3, signal: 'heavy', othersLend: false });
  });

  test('is the plain pace before, and says how many sprints there are', async () => {
    const { h, sprint } = await running([finishing(5), finishing(5)]);
    await h.answer('ben', sprint.id, '2026-11-05', { 1: { left: '1' }, 3: { left: '0' } });
    expect(await loadOf(h)).toEqual({
      from: 'pace',
      // Left 1 + 3 of 10, 6 worked in four days, six days to go.
      pace: { signal: 'light', projectedLeftPoints: 4 - 1.5 * 6, daysGone: 4, isEarly: true },
      ownSprints: 2,
      neededSprints: 3,
    });
  });

  test.each([
    [0, { from: 'pace', pace: { signal: 'heavy' } }],
    [3, { from: 'projection' }],
  ])(
    'is none where nobody has answered for days, with %d past sprints, until somebody says that nothing changed',
    async (sprints, said) => {
      const { h, sprint } = await unanswered(Array.from({ length: sprints }, () => finishing(5)));
      expect(await loadOf(h)).toEqual({ from: 'nothing', because: { code: 'nobody-answered' } });
      await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: '2026-11-05' });
      expect(await loadOf(h)).toMatchObject(said);
    },
  );

  test('sprints of which nobody knows what was finished do not count', async () => {
    const past = [finishing(5), finishing(5), { ...finishing(5), velocityPoints: undefined }];
    const { h, sprint } = await running(past);
    await h.answer('ben', sprint.id, '2026-11-05', { 1: { left: '1' } });
    expect(await loadOf(h)).toMatchObject({ from: 'pace', ownSprints: 2 });
  });

  test('an import without a day-by-day record counts', async () => {
    const { h } = await running(Array.from({ length: 4 }, () => missing(10, 9)));
    expect(await readingOf(h)).toMatchObject({ ownSprints: 4 });
  });

  test('goes with what past sprints did from the same moment on', async () => {
    const late = (points: number): Partial<PastSprint> => ({
      ...missing(10, points),
      trace: Array.from({ length: 11 }, (_, i) => ({
        cardPoints: 10,
        finishedPoints: i < 8 ? 0 : points,
        underwayPoints: 0,
      })),
    });
    const { h } = await running(Array.from({ length: 12 }, () => late(10)));
    // Nothing is finished after four of ten days, as it always was.
    expect(await readingOf(h)).toMatchObject({ signal: 'light', medianPoints: 10 });
  });

  test('knows that only whole cards are finished: of 13 and 7 points 80% takes both', async () => {
    const past = [16, 17, 18, 19, 20, 18].map((points) => ({
      ...missing(20, points),
      trace: evenTrace(20, points),
    }));
    const { h } = await running(past, 'Fog horn, 13, @Ben\nNew lamp, 7, @Chi');
    const reading = await readingOf(h);
    expect(reading.isAllNeeded).toBe(true);
    expect(reading.keepingChance).toBeCloseTo(reading.allFinishedChance, 12);
    expect(reading.signal).toBe('heavy');
  });

  test('lets other teams of the workspace lend, and says so', async () => {
    const { h, team } = await running(Array.from({ length: 3 }, () => finishing(5)));
    const alone = await readingOf(h);
    await setUpTeam(h.deps, ana, {
      channelId: 'C2',
      name: 'Pilots',
      timeZone: 'Europe/Lisbon',
      promptAt: '09:15',
      workingDays: [1, 2, 3, 4, 5],
      memberIds: [PEOPLE.ana],
      facilitatorIds: [PEOPLE.ana],
      productOwnerId: undefined,
    });
    const other = (await h.read((read) => read.teamByChannel(team.workspaceId, 'C2'))) as Team;
    await importPast(h, other, pastSprintsOf(Array.from({ length: 9 }, () => finishing(10))));
    const lent = await readingOf(h);
    expect(lent).toMatchObject({ ownSprints: 3, othersLend: true });
    expect(lent.allFinishedChance).toBeGreaterThan(alone.allFinishedChance);
  });

  test('counts today once half of those asked have met it', async () => {
    const { h, sprint } = await running(Array.from({ length: 5 }, () => finishing(10)));
    const morning = await readingOf(h);
    await h.answer('ben', sprint.id, '2026-11-06', {});
    // An evening later with still nothing finished.
    expect((await readingOf(h)).medianPoints).toBeLessThanOrEqual(morning.medianPoints);
    const days = { timeZone: 'Europe/Lisbon', workingDays: [1, 2, 3, 4, 5], daysOff: NO_DAYS_OFF };
    const gone = (asked: number, answered: number) =>
      sprintTime(days, sprint, [], '2026-11-06', isDayOver({ asked, answered })).gone;
    expect([gone(5, 0), gone(5, 2), gone(5, 3), gone(0, 0), gone(2, 1)]).toEqual([4, 4, 5, 4, 5]);
  });

  test('knows who will be off: less time to come slows the pace, and less time gone brings the moment back', async () => {
    const { h, team, sprint } = await running();
    const timeOn = async (day: string) =>
      sprintTime(team, sprint, await h.read((read) => read.membersOf(team.id)), day, true);
    // All three of the team are there on all ten days.
    expect(await timeOn('2026-11-06')).toMatchObject({ gone: 5, evenDaysLeft: 5, elapsedShare: 0.5 });
    const pace = async () => {
      const load = await loadOf(h);
      if (load.from !== 'pace' || load.pace.signal === undefined) throw new Error(JSON.stringify(load));
      return load.pace;
    };
    await h.answer('ben', sprint.id, '2026-11-06', { 1: { left: '0' }, 3: { left: '2' } });
    await h.answer('chi', sprint.id, '2026-11-06', { 2: { left: '3' } });
    // 5 points in five days, and five to come for the other 5.
    expect(await pace()).toMatchObject({ signal: 'on the line', projectedLeftPoints: 0 });
    await sayDaysOff(h.deps, ben, { place: CHANNEL, words: '9 Nov to 13 Nov' });
    await sayDaysOff(h.deps, actorOf('chi'), { place: CHANNEL, words: '9 Nov to 11 Nov half' });
    // 15 − 5 − 1.5 of the week's 15 member-days are left, beside 15 gone.
    expect(await timeOn('2026-11-06')).toMatchObject({ gone: 5, left: 5, elapsedShare: 15 / 23.5 });
    const slowed = await pace();
    expect(slowed.signal).toBe('heavy');
    expect(slowed.projectedLeftPoints).toBeCloseTo(5 - (5 * 8.5) / 15, 12);
  });

  test('counts a sprint as over in time when nobody is there any more, and each day the same when nobody ever is', async () => {
    const { h, team, sprint } = await running();
    const people = await h.read((read) => read.membersOf(team.id));
    const off = { full: ['09', '10', '11', '12', '13'].map((day) => `2026-11-${day}`), half: [] };
    const allOff = people.map((person) => ({ ...person, daysOff: off }));
    expect(sprintTime(team, sprint, allOff, '2026-11-06', true)).toMatchObject({
      gone: 5,
      evenDaysLeft: 0,
      elapsedShare: 1,
    });
    expect(sprintTime(team, sprint, [], '2026-11-04', true)).toMatchObject({
      gone: 3,
      evenDaysLeft: 7,
      elapsedShare: 0.3,
    });
  });

  test('is the same however often it is asked, and as shared', async () => {
    const { h, sprint } = await running([finishing(5), finishing(8), finishing(10), finishing(9)]);
    const once = await loadOf(h);
    expect(await loadOf(h)).toEqual(once);
    await shareStatus(h.deps, ben, { sprintId: sprint.id });
    await h.drain();
    expect(h.messagesTo(CHANNEL).at(-1)).toMatchObject({ kind: 'shared-status', status: { load: once } });
    expect((await pullForm(h.deps, ben, CHANNEL)).load).toEqual(once);
  });

  test('learns from sprints that the bot ran itself', async () => {
    const { h, sprint } = await running([finishing(5), finishing(5)]);
    await h.answer('ben', sprint.id, '2026-11-06', { 1: { left: '0' } });
    await h.pass('2026-11-13T17:00:00Z');
    const next = await h.plan({ id: sprint.teamId } as Team, {
      name: 'Harbour 13',
      startsOn: '2026-11-16',
      endsOn: '2026-11-27',
    });
    await h.pass('2026-11-18T09:15:00Z');
    await recordUnchanged(h.deps, ben, { sprintId: next.sprint.id, day: '2026-11-17' });
    expect(await readingOf(h)).toMatchObject({ ownSprints: 3 });
  });

  test('does not learn from a cancelled one', async () => {
    const { h, sprint } = await running([finishing(5), finishing(5)]);
    await cancelSprint(h.deps, ana, { place: CHANNEL, reason: '' });
    const next = await h.plan({ id: sprint.teamId } as Team, {
      name: 'Harbour 13',
      startsOn: '2026-11-16',
      endsOn: '2026-11-27',
    });
    await h.pass('2026-11-18T09:15:00Z');
    await h.answer('ben', next.sprint.id, '2026-11-17', { 1: { left: '1' } });
    expect(await loadOf(h)).toMatchObject({ from: 'pace', ownSprints: 2 });
  });
});

describe('where there is nothing to foresee, a reason says why', () => {
  const past = Array.from({ length: 4 }, () => finishing(8));
  const because = async (h: Harness): Promise<Reason | string> => {
    const load = await loadOf(h);
    return load.from === 'nothing' ? load.because : `${load.from}, not nothing`;
  };

  test('before the sprint begins', async () => {
    const { h } = await running(past);
    h.set('2026-11-01T12:00:00Z');
    expect(await because(h)).toEqual({ code: 'not-begun' });
  });

  test('with nothing in the sprint', async () => {
    const { h } = await running(past, '');
    expect(await because(h)).toEqual({ code: 'no-points' });
  });

  test('on the last evening, once the day is met, and while it waits to close', async () => {
    const { h, sprint } = await running(past);
    await h.pass('2026-11-13T09:15:00Z');
    expect((await loadOf(h)).from).toBe('projection');
    await h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '0' } });
    expect(await because(h)).toEqual({ code: 'last-day-over' });
    h.set('2026-11-14T12:00:00Z');
    expect(await because(h)).toEqual({ code: 'last-day-over' });
  });

  test('in a sprint without a working day', async () => {
    const h = harness();
    await h.plan(await h.setUpTeam(), { startsOn: '2026-11-07', endsOn: '2026-11-08' });
    h.set('2026-11-07T12:00:00Z');
    expect(await because(h)).toEqual({ code: 'no-working-day' });
  });

  test('in a reopened sprint', async () => {
    const { h } = await running(past);
    await closeSprint(h.deps, ana, { place: CHANNEL });
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    expect(await because(h)).toEqual({ code: 'corrections-only' });
  });
});

describe('a sprint’s first days', () => {
  const past = [6, 9, 10, 4, 10, 8, 7, 10].map(finishing);

  async function planned() {
    const h = harness();
    const team = await h.setUpTeam();
    await importPast(h, team, pastSprintsOf(past));
    const { set } = await previewPlan(h.deps, ana, h.planInput(team));
    if (!set) throw new Error('The preview tells no chance.');
    await h.plan(team);
    return { h, team, told: set.chance };
  }

  test('the first morning’s chances lie between those of the planning and those of the projection', async () => {
    const { h, team, told } = await planned();
    await h.pass('2026-11-02T09:15:00Z');
    const { keepingChance, allFinishedChance } = await readingOf(h);
    const states = await h.read(async (read) =>
      statesOf(await read.recordsOf((await read.openSprintsOf(team.id))[0]?.id ?? '')),
    );
    const projection = await h.deps.store.transaction((tx) =>
      sprintProjection(tx, team, states, { elapsedShare: 0 }),
    );
    const alone = loadReading(projection.distribution, loadedSprint(states, 0.8));
    expect(Math.abs(alone.keepingChance - told.kept)).toBeGreaterThan(0.01);
    expect(keepingChance).toBeCloseTo(0.5 * told.kept + 0.5 * alone.keepingChance, 9);
    expect(allFinishedChance).toBeCloseTo(0.5 * told.all + 0.5 * alone.allFinishedChance, 9);
  });

  test('what if begins with the chances of the status then too', async () => {
    const { h, team } = await planned();
    await h.pass('2026-11-03T09:15:00Z');
    const { keepingChance, allFinishedChance } = await readingOf(h);
    const [sprint] = await h.read((read) => read.openSprintsOf(team.id));
    const { chances } = await askWhatIf(h.deps, ben, {
      sprintId: sprint?.id ?? '',
      without: '',
      awayDays: '1',
      morePoints: '',
    });
    expect(chances?.now.kept).toBeCloseTo(keepingChance as number, 12);
    expect(chances?.now.all).toBeCloseTo(allFinishedChance, 12);
  });
});

describe('without a commitment', () => {
  test('there is no signal, but a projection of what was pulled in', async () => {
    const { h } = await running(
      Array.from({ length: 4 }, () => finishing(8)),
      '',
    );
    await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 8, @Ben' });
    const reading = await readingOf(h);
    expect(reading).toMatchObject({ signal: undefined, keepingChance: undefined, cardPoints: 8 });
    expect(reading.wide.high).toBeLessThanOrEqual(8);
  });
});

describe('the points that keep the commitment', () => {
  const cards: SprintCard[] = [
    ['planned', 20],
    ['planned', 15],
    ['pulled-in', 7],
  ].map(([origin, estimatePoints], i) => ({
    id: `card-${i + 1}`,
    sprintId: 'sprint',
    number: i + 1,
    key: String(i + 1),
    title: 'Fog horn',
    estimatePoints: estimatePoints as number,
    origin: origin as SprintCard['origin'],
    enteredOn: '2026-11-02',
    ownerIds: [PEOPLE.ben],
    addedBy: PEOPLE.ana,
  }));
  const about = (number: number) => ({
    id: `fact-${number}`,
    cardId: `card-${number}`,
    day: '2026-11-03',
    order: number,
    memberId: PEOPLE.ben,
    recordedAt: new Date(0),
    note: '',
    supersedesId: undefined,
  });
  const finish = (number: number): RecordedFact => ({
    ...about(number),
    kind: 'answer',
    workedPoints: undefined,
    leftPoints: 0,
    surprisePoints: 0,
  });
  const drop = (number: number): RecordedFact => ({ ...about(number), kind: 'drop' });
  const loaded = (count: number, ...facts: RecordedFact[]) =>
    loadedSprint(statesOf({ cards: cards.slice(0, count), facts }), 0.8);

  test('are the floor of the commitment less what is finished of it, without half a point of rounding', () => {
    // 0.8 × 35 is 28.000000000000004 in binary.
    expect(loaded(2)).toMatchObject({ missingPoints: 28, finishedPoints: 0, sizes: [20, 15] });
    expect(loaded(2, finish(2))).toMatchObject({ missingPoints: 13, finishedPoints: 15 });
    expect(loaded(2, finish(1), finish(2)).missingPoints).toBeLessThanOrEqual(0);
  });

  test('stay the same when a card is dropped, which can then not be finished', () => {
    expect(loaded(2, drop(1))).toMatchObject({ missingPoints: 28, open: [{ estimatePoints: 15 }] });
  });

  test('are not brought by pulled-in work', () => {
    expect(loaded(3, finish(3))).toMatchObject({ missingPoints: 28, finishedPoints: 7 });
    expect(loaded(3).open.map(({ isCommitted }) => isCommitted)).toEqual([true, true, false]);
  });

  test('are nearer on a card that was begun', () => {
    const begun: RecordedFact = { ...finish(1), workedPoints: 2, leftPoints: 18 } as RecordedFact;
    expect(loaded(2, begun).open.map(({ isBegun }) => isBegun)).toEqual([true, false]);
  });
});
