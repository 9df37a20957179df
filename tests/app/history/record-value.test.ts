import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { recordValue, recordValueLine, valueForm } from '../../../src/app/history/record-value.ts';
import { setMeasures } from '../../../src/app/team/set-measures.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  harnessForEach,
  PEOPLE,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { typedMeasures } from '../../support/typed-measures.ts';
import { importPast, pastSprintsOf, withVelocity } from '../past-sprints.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
/** Dayo is the product owner, and no member. */
const dayo = actorOf('dayo');

const THREE = [withVelocity(10), withVelocity(20), withVelocity(30)];

async function withPast(past: readonly Partial<PastSprint>[] = THREE) {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  const sprints = await importPast(h, team, pastSprintsOf(past));
  const record = (value: string, sprintName?: string) =>
    recordValue(h.deps, dayo, {
      place: CHANNEL,
      value,
      sprint: sprintName === undefined ? undefined : { sprintName },
    });
  const values = async () =>
    (await h.read((read) => read.pastSprintsOf(team.id))).map(({ recordedValue }) => recordedValue);
  return { h, team, sprints, record, values };
}

describe('a value', () => {
  test('is recorded for the latest closed sprint by the product owner, and by a facilitator', async () => {
    const { h, record, values } = await withPast();
    expect(await record('1,200')).toMatchObject({
      sprint: { name: 'Harbour 3', recordedValue: 1200 },
      value: 1200,
      previousValue: undefined,
    });
    expect(await values()).toEqual([undefined, undefined, 1200]);
    const corrected = await recordValue(h.deps, ana, { place: CHANNEL, value: '-3', sprint: undefined });
    expect(corrected).toMatchObject({ value: -3, previousValue: 1200 });
    expect(await values()).toEqual([undefined, undefined, -3]);
  });

  test('is recorded in the product owner’s direct messages as well', async () => {
    const { h, values } = await withPast();
    await recordValueLine(h.deps, dayo, { place: directMessagesOf('dayo'), line: '7' });
    expect(await values()).toEqual([undefined, undefined, 7]);
  });

  test('recorded again with the same number adds nothing to the record', async () => {
    const { h, record, sprints } = await withPast();
    await record('5');
    h.set('2026-10-31T12:00:00Z');
    expect(await record('5')).toMatchObject({ value: 5, previousValue: 5 });
    await record('6');
    const rows = await rowsOf(
      h.database,
      sql`select version, value, recorded_by from loadline.recorded_values
        where sprint_id = ${sprints[2]?.sprintId} order by version`,
    );
    expect(rows).toEqual([
      { version: 1, value: 5, recorded_by: PEOPLE.dayo },
      { version: 2, value: 6, recorded_by: PEOPLE.dayo },
    ]);
  });

  test('of two who record at once the later counts, and neither is lost', async () => {
    const { h, values, sprints } = await withPast();
    const sprint = { sprintId: sprints[0]?.sprintId ?? '' };
    const [one, other] = await Promise.all([
      recordValue(h.deps, dayo, { place: CHANNEL, value: '5', sprint }),
      recordValue(h.deps, ana, { place: CHANNEL, value: '6', sprint }),
    ]);
    expect(new Set([one.previousValue, other.previousValue])).toContain(undefined);
    const [recorded] = await values();
    expect(recorded).toBe(one.previousValue === undefined ? 6 : 5);
  });

  test.each([
    ['Harbour 1', 0],
    ['  harbour   2 ', 1],
    ['HARBOUR 3', 2],
  ])('is recorded for the sprint named “%s”, in any case and spacing', async (name, place) => {
    const { record, values } = await withPast();
    await record('5', name);
    expect((await values())[place]).toBe(5);
  });

  test('is refused for a sprint that is not there, one that runs, and one that was cancelled', async () => {
    const { h, team, record, values } = await withPast();
    await h.plan(team, { name: 'Harbour 12' });
    expect(await refusalOf(record('5', 'Harbour 99'), 'no-such-sprint')).toEqual({
      reference: 'Harbour 99',
      known: ['Harbour 3', 'Harbour 2', 'Harbour 1'],
    });
    expect(await refusalOf(record('5', 'Harbour 12'), 'sprint-not-closed')).toEqual({
      sprintName: 'Harbour 12',
      state: 'open',
    });
    expect(await values()).toEqual([undefined, undefined, undefined]);
  });

  test('that is no number is refused at its field, and nothing is recorded', async () => {
    const { record, values } = await withPast();
    expect(await problemsOf(record('1.200'))).toEqual({
      recordedValue: expect.stringContaining('1200 or 1.2'),
    });
    expect(await values()).toEqual([undefined, undefined, undefined]);
  });

  test('waits for the first closed sprint', async () => {
    const { h, team, record } = await withPast([]);
    expect(await refusalOf(record('5'), 'no-closed-sprint')).toEqual({
      teamName: 'Tugboats',
      withVelocity: false,
    });
    await refusalOf(valueForm(h.deps, dayo, { place: CHANNEL }), 'no-closed-sprint');
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    // A sprint that ran here counts like an imported one.
    expect(await record('5')).toMatchObject({ sprint: { sprintId: sprint.id } });
  });

  test('waits while a sprint is reopened, and counts when it has closed again', async () => {
    const { h, team, record, values } = await withPast([]);
    await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    await record('5');
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    await refusalOf(record('6', 'Harbour 12'), 'sprint-not-closed');
    await closeSprint(h.deps, ana, { place: CHANNEL });
    expect(await values()).toEqual([5]);
  });

  test('is none of a member’s business, nor a stranger’s', async () => {
    const { h, sprints, values } = await withPast();
    const input = { place: CHANNEL, value: '5', sprint: { sprintId: sprints[0]?.sprintId ?? '' } };
    expect(await refusalOf(recordValue(h.deps, actorOf('ben'), input), 'not-a-value-keeper')).toEqual({
      teamName: 'Tugboats',
      productOwnerId: PEOPLE.dayo,
      facilitatorIds: [PEOPLE.ana],
    });
    await refusalOf(valueForm(h.deps, actorOf('ben'), { place: CHANNEL }), 'not-a-value-keeper');
    await h.setUpTeam({ productOwnerId: undefined });
    await refusalOf(recordValue(h.deps, dayo, input), 'not-a-member');
    expect(await values()).toEqual([undefined, undefined, undefined]);
  });

  test('is refused for a sprint of another team, though its id is real', async () => {
    const { h, sprints } = await withPast();
    const other = await h.setUpTeam({ channelId: 'C2', memberIds: [PEOPLE.ben] });
    await importPast(h, other, pastSprintsOf(THREE));
    const sprint = { sprintId: sprints[0]?.sprintId ?? '' };
    await refusalOf(recordValue(h.deps, ana, { teamId: other.id, value: '5', sprint }), 'no-such-sprint');
  });
});

describe('a value in words', () => {
  test.each([
    ['1200', 'Harbour 3', 1200],
    ['Harbour 1: 1200', 'Harbour 1', 1200],
    ['harbour 2:€ 1.200,50', 'Harbour 2', 1200.5],
    ['Harbour 1 = -4', 'Harbour 1', -4],
    [': 5', 'Harbour 3', 5],
  ])('“%s” is for %s', async (line, name, value) => {
    const { h } = await withPast();
    const recorded = await recordValueLine(h.deps, dayo, { place: CHANNEL, line });
    expect([recorded.sprint.name, recorded.value]).toEqual([name, value]);
  });

  test('a sprint’s name may hold a colon itself', async () => {
    const { h } = await withPast([{ name: 'Harbour: ebb', ...withVelocity(5) }]);
    const recorded = await recordValueLine(h.deps, dayo, { place: CHANNEL, line: 'Harbour: ebb: 7' });
    expect(recorded).toMatchObject({ sprint: { name: 'Harbour: ebb' }, value: 7 });
  });

  test('without the colon shows how it is written, with what was typed', async () => {
    const { h, values } = await withPast();
    const attempt = recordValueLine(h.deps, dayo, { place: CHANNEL, line: 'Harbour 1 1200' });
    expect(await refusalOf(attempt, 'bad-argument')).toMatchObject({
      command: 'value',
      example: 'Harbour 1: 1200',
    });
    expect(await values()).toEqual([undefined, undefined, undefined]);
  });
});

describe('growth', () => {
  test('of value is shown beside that of velocity, both measured by the first sprint with both', async () => {
    const { record } = await withPast();
    await record('100', 'Harbour 2');
    const { growth, measuredBy } = await record('300', 'Harbour 3');
    expect(measuredBy?.name).toBe('Harbour 2');
    expect(growth).toEqual({ valueGrowth: 3, velocityGrowth: 1.5, valuePerPointGrowth: 2 });
  });

  test('begins at the named baseline sprint at the earliest', async () => {
    const { h, team, sprints, record } = await withPast();
    await h.write((tx) => tx.write.teams.save({ ...team, baselineSprintId: sprints[1]?.sprintId }));
    await record('100', 'Harbour 1');
    const { measuredBy } = await record('50', 'Harbour 2');
    expect(measuredBy?.name).toBe('Harbour 2');
  });

  test('has a reason where there is none', async () => {
    const { record } = await withPast([withVelocity(undefined), withVelocity(10), withVelocity(0)]);
    expect((await record('-5', 'Harbour 2')).measuredBy).toBeUndefined();
    await record('5', 'Harbour 2');
    expect((await record('5', 'Harbour 1')).growth.valueGrowth).toEqual({
      undefined: { code: 'velocity-unknown' },
    });
    const { growth } = await record('10', 'Harbour 3');
    expect([growth.valueGrowth, growth.velocityGrowth]).toEqual([2, 0]);
    expect(growth.valuePerPointGrowth).toHaveProperty('undefined');
  });
});

describe('the form', () => {
  test('offers the latest 24 closed sprints, the latest first, with their present values', async () => {
    const many = Array.from({ length: 30 }, (_, i) => ({
      ...withVelocity(undefined),
      recordedValue: i === 28 ? 12.5 : undefined,
    }));
    const { h } = await withPast(many);
    const { sprints } = await valueForm(h.deps, dayo, { place: CHANNEL });
    expect(sprints).toHaveLength(24);
    expect(sprints.slice(0, 2)).toMatchObject([
      { name: 'Harbour 30', recordedValue: undefined },
      { name: 'Harbour 29', recordedValue: 12.5 },
    ]);
    expect(sprints.at(-1)?.name).toBe('Harbour 7');
  });
});

describe('the question for it', () => {
  /** Closed on Friday 13 November, with another sprint from the Monday after it on. */
  async function closed(valueAfterDays: string) {
    const h = harness();
    const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
    await setMeasures(h.deps, ana, { teamId: team.id, ...typedMeasures({ valueAfterDays }) });
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-27' });
    const asked = () => h.messagesTo('dayo').filter(({ kind }) => kind === 'value-question');
    return { h, team, sprint, asked };
  }

  test('comes to the product owner on the chosen working day after the sprint, at prompt time, once', async () => {
    const { h, asked } = await closed('4');
    for (const day of ['16', '17', '18']) await h.pass(`2026-11-${day}T09:15:00Z`);
    expect(asked()).toEqual([]);
    await h.pass('2026-11-19T09:14:00Z');
    expect(asked()).toEqual([]);
    for (const day of ['19', '20', '23']) await h.pass(`2026-11-${day}T09:15:00Z`);
    expect(asked()).toMatchObject([{ heading: { sprint: { name: 'Harbour 12' } }, value: undefined }]);
  });

  test('begins its form with that sprint, and shows what was recorded, then corrected', async () => {
    const { h, sprint, asked } = await closed('1');
    await h.pass('2026-11-16T09:15:00Z');
    expect((await valueForm(h.deps, dayo, { sprintId: sprint.id })).initial).toBe(sprint.id);
    for (const value of ['200', '250']) {
      await recordValue(h.deps, dayo, { place: CHANNEL, value, sprint: { sprintId: sprint.id } });
      await h.drain();
      expect(asked()).toMatchObject([{ value: Number(value) }]);
    }
  });

  test.each([
    ['a value is recorded', '2'],
    ['the team doesn’t want it', ''],
  ])('isn’t asked where %s', async (_, valueAfterDays) => {
    const { h, asked } = await closed(valueAfterDays);
    if (valueAfterDays !== '') {
      await recordValue(h.deps, dayo, { place: CHANNEL, value: '5', sprint: undefined });
    }
    for (const day of ['16', '17', '18', '19']) await h.pass(`2026-11-${day}T09:15:00Z`);
    expect(asked()).toEqual([]);
  });

  test('is left out once it is more than five working days late', async () => {
    const { h, asked } = await closed('1');
    await h.pass('2026-11-24T09:15:00Z');
    expect(asked()).toEqual([]);
  });
});
