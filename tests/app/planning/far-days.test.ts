/** A day thousands of years ahead is a slip of the pen, and beyond the year 9999 no day can be written as others are. */
import { describe, expect, test } from 'vitest';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { saveDaysOff } from '../../../src/app/days-off/days-off-form.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { actorOf, CHANNEL, harnessForEach, problemsOf, refusalOf } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const WORDS = 'That is more than 10 years ahead; is the year right?';
const TOO_FAR = { code: 'too-far-ahead', years: 10 };

describe('a day more than ten years ahead', () => {
  test.each([
    ['9999-12-20', '9999-12-31'],
    ['2036-10-31', '2036-11-07'],
  ])('begins no sprint, and no question about one: %s', async (startsOn, endsOn) => {
    const h = harness();
    const team = await h.setUpTeam();
    const planned = previewPlan(h.deps, ana, h.planInput(team, { startsOn, endsOn }));
    expect((await problemsOf(planned)).startsOn).toBe(WORDS);
    const asked = askAdvice(h.deps, ana, { place: CHANNEL }, { about: 'range', startsOn, endsOn });
    expect(await problemsOf(asked)).toEqual({ startsOn: WORDS });
  });

  test('is no day off, typed or in the form', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const said = sayDaysOff(h.deps, ana, { place: CHANNEL, words: '9999-12-31' });
    expect(await refusalOf(said, 'bad-argument')).toMatchObject({ problem: TOO_FAR });
    const input = { teamId: team.id, whose: 'own', from: '9999-12-31', to: '', isHalf: false, takeBack: [] };
    const saved = saveDaysOff(h.deps, ana, { ...input, weekdays: undefined } as never);
    expect(await refusalOf(saved, 'bad-argument')).toMatchObject({ problem: TOO_FAR });
  });

  test('is fine when it is nine years', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team, { startsOn: '2035-11-05', endsOn: '2035-11-16' });
    expect(sprint.startsOn).toBe('2035-11-05');
  });
});
