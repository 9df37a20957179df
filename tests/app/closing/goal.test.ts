import { describe, expect, test } from 'vitest';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { goalForm, recordGoal } from '../../../src/app/closing/record-goal.ts';
import { sayWeekdays } from '../../../src/app/days-off/say-weekdays.ts';
import { editSprint } from '../../../src/app/planning/edit-sprint.ts';
import type { PlanInput } from '../../../src/app/planning/plan-input.ts';
import type { SetupInput } from '../../../src/app/team/set-up-team.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  type Harness,
  harnessForEach,
  PEOPLE,
  type PersonName,
  refusalOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ASKED = '2026-11-13T16:00:00Z';
const CLOSING = '2026-11-13T17:00:00Z';

async function planned(setup: Partial<SetupInput> = {}, plan: Partial<PlanInput> = {}) {
  const h = harness();
  const team = await h.setUpTeam(setup);
  const { sprint } = await h.plan(team, plan);
  return { h, team, sprint };
}

/** The people who have the question, as it is now. */
function asked(h: Harness) {
  return (['ana', 'ben', 'chi', 'dayo'] as const).flatMap((who: PersonName) =>
    h
      .messagesTo(who)
      .flatMap((content) => (content.kind === 'goal-question' ? [[who, content] as const] : [])),
  );
}

const namesOf = (h: Harness): PersonName[] => asked(h).map(([who]) => who);

describe('the question whether the sprint goal was met', () => {
  test('comes once, an hour before closing, to the product owner', async () => {
    const { h } = await planned({ productOwnerId: PEOPLE.dayo });
    await h.pass('2026-11-13T15:59:00Z');
    expect(namesOf(h)).toEqual([]);
    for (const at of [ASKED, '2026-11-13T16:01:00Z', CLOSING]) await h.pass(at);
    expect(namesOf(h)).toEqual(['dayo']);
  });

  test('comes to the first facilitator by name where there is no product owner', async () => {
    const { h } = await planned({ facilitatorIds: [PEOPLE.chi, PEOPLE.ana] });
    await h.pass(ASKED);
    expect(namesOf(h)).toEqual(['ana']);
  });

  test('passes over those who are off on the day, and comes to nobody when all are', async () => {
    const { h, team } = await planned({
      productOwnerId: PEOPLE.ben,
      facilitatorIds: [PEOPLE.ana, PEOPLE.chi],
    });
    await sayWeekdays(h.deps, actorOf('ben'), { place: CHANNEL, words: 'mon tue wed thu' });
    await sayWeekdays(h.deps, actorOf('ana'), { place: CHANNEL, words: 'mon tue wed thu' });
    await h.pass(ASKED);
    expect(namesOf(h)).toEqual(['chi']);
    await h.pass(CLOSING);
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await sayWeekdays(h.deps, actorOf('chi'), { place: CHANNEL, words: 'mon tue wed thu' });
    await h.pass('2026-11-20T16:00:00Z');
    expect(namesOf(h)).toEqual(['chi']);
  });

  test('is not asked of a sprint without a goal, nor when it is known', async () => {
    const { h, team } = await planned({}, { goal: ' ' });
    await h.pass(ASKED);
    await h.pass(CLOSING);
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await h.pass('2026-11-17T09:15:00Z');
    await recordGoal(h.deps, actorOf('ana'), { place: CHANNEL, line: 'no' });
    await h.pass('2026-11-20T16:00:00Z');
    expect(namesOf(h)).toEqual([]);
  });

  test('is not asked again when the sprint is extended after it', async () => {
    const { h, sprint } = await planned();
    await h.pass(ASKED);
    await editSprint(h.deps, actorOf('ana'), { sprintId: sprint.id, edit: { endsOn: '2026-11-16' } });
    await h.pass('2026-11-16T16:00:00Z');
    expect(namesOf(h)).toEqual(['ana']);
  });

  test('says what was recorded once somebody has answered, and the verdict shows it with its sentence', async () => {
    const { h, sprint } = await planned({ productOwnerId: PEOPLE.ben });
    await h.pass(ASKED);
    await recordGoal(h.deps, actorOf('ana'), {
      sprintId: sprint.id,
      met: 'partly',
      note: '  Two of\nthree piers ',
    });
    await h.pass(CLOSING);
    expect(asked(h)[0]?.[1].outcome).toMatchObject({ met: 'partly', note: 'Two of three piers' });
    const [verdict] = h
      .messagesTo(CHANNEL)
      .flatMap((content) => (content.kind === 'verdict' ? [content] : []));
    expect(verdict?.verdict.goalOutcome).toMatchObject({ met: 'partly', note: 'Two of three piers' });
  });

  test('may be answered after closing: the verdict is brought up to date, and its numbers stay', async () => {
    const { h, sprint } = await planned();
    await h.pass(ASKED);
    await h.pass(CLOSING);
    const verdicts = () =>
      h.messagesTo(CHANNEL).flatMap((content) => (content.kind === 'verdict' ? [content.verdict] : []));
    const [before] = verdicts();
    expect(before?.goalOutcome).toBeUndefined();
    await recordGoal(h.deps, actorOf('ana'), { sprintId: sprint.id, met: 'yes', note: '' });
    await h.drain();
    expect(verdicts()).toHaveLength(1);
    expect(verdicts()[0]?.goalOutcome?.met).toBe('yes');
    expect(verdicts()[0]?.summary).toEqual(before?.summary);
  });

  test('of one sprint is answered for that one, though the next is under way', async () => {
    const { h, team, sprint } = await planned();
    await h.pass(ASKED);
    await h.pass(CLOSING);
    const next = await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await h.pass('2026-11-16T09:15:00Z');
    await recordGoal(h.deps, actorOf('ana'), { sprintId: sprint.id, met: 'no', note: '' });
    expect((await h.sprint(sprint.id)).goalOutcome?.met).toBe('no');
    expect((await h.sprint(next.sprint.id)).goalOutcome).toBeUndefined();
  });
});

describe('the form', () => {
  test('begins with what was said before, for the product owner in direct messages as well', async () => {
    const { h, sprint } = await planned({ productOwnerId: PEOPLE.dayo });
    await h.pass('2026-11-03T09:15:00Z');
    await recordGoal(h.deps, actorOf('dayo'), { sprintId: sprint.id, met: 'yes', note: 'It berths' });
    const form = await goalForm(h.deps, actorOf('dayo'), { place: directMessagesOf('dayo') });
    expect(form).toMatchObject({ heading: { sprint: { id: sprint.id } }, outcome: { note: 'It berths' } });
  });

  test('refuses members, other words, sentences that are too long, and sprints that are not there', async () => {
    const { h, sprint } = await planned();
    const { id: sprintId } = sprint;
    const ana = actorOf('ana');
    await refusalOf(goalForm(h.deps, ana, { place: CHANNEL }), 'no-sprint-running');
    await h.pass('2026-11-03T09:15:00Z');
    const { facilitatorIds } = await refusalOf(
      goalForm(h.deps, actorOf('ben'), { sprintId }),
      'not-a-goal-keeper',
    );
    expect(facilitatorIds).toEqual([PEOPLE.ana]);
    const wrong = await refusalOf(
      recordGoal(h.deps, ana, { sprintId, met: 'mostly', note: '' }),
      'bad-argument',
    );
    expect(wrong.problem).toEqual({ code: 'goal-word' });
    const long = await refusalOf(
      recordGoal(h.deps, ana, { sprintId, met: 'yes', note: 'x'.repeat(301) }),
      'bad-argument',
    );
    expect(long.problem).toEqual({ code: 'note-length', most: 300 });
    await refusalOf(goalForm(h.deps, actorOf('ana', 'W2'), { sprintId }), 'no-team-of-yours');
    await closeSprint(h.deps, ana, { sprintId });
    expect((await goalForm(h.deps, ana, { place: CHANNEL })).heading.sprint.id).toBe(sprintId);
  });
});
