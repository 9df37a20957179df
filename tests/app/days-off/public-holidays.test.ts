import { describe, expect, test } from 'vitest';
import { importDaysOff } from '../../../src/app/days-off/import-days-off.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-01-01T08:00:00Z');
const ana = actorOf('ana');

async function holidaysOf(h: Harness, place: string, actor = ana) {
  const team = await h.setUpTeam();
  const source = { holidaysOf: place };
  const input = { teamId: team.id, whose: 'team' as const, source, takesFree: false, seen: undefined };
  const outcome = await importDaysOff(h.deps, actor, input);
  if (outcome.kind !== 'preview') throw new Error('it saved');
  return outcome.preview;
}

/** Of 2026; a year is looked ahead, so that 1 January comes twice. */
const daysOf2026 = ({ days }: { readonly days: readonly { readonly day: string }[] }) =>
  days.flatMap(({ day }) => (day < '2027' ? [day.slice(5)] : []));

describe('public holidays', () => {
  // The days of 2026 as the governments publish them, from memory; those on a weekend are no working days.
  test.each([
    ['DE-BY', ['01-01', '01-06', '04-03', '04-06', '05-01', '05-14', '05-25', '06-04', '12-25']],
    ['Germany, Berlin', ['01-01', '04-03', '04-06', '05-01', '05-14', '05-25', '12-25']],
    ['GB-ENG', ['01-01', '04-03', '04-06', '05-04', '05-25', '08-31', '12-25', '12-28']],
    ['France', ['01-01', '04-06', '05-01', '05-08', '05-14', '05-25', '07-14', '11-11', '12-25']],
  ])('of %s in 2026', async (place, expected) => {
    expect(daysOf2026(await holidaysOf(harness(), place))).toEqual(expected);
  });

  test('on a weekend, or off already, are said to change nothing, once each', async () => {
    const h = harness();
    await h.setUpTeam();
    await sayDaysOff(h.deps, ana, { place: CHANNEL, words: 'team 1 May' });
    const { leftOut, name, regions } = await holidaysOf(h, 'DE-BY');
    expect(name).toBe('Germany, Bayern');
    expect(regions).toEqual([]);
    expect(leftOut.map(({ why, days }) => [why, days])).toContainEqual(['off-already', ['2026-05-01']]);
    expect(leftOut.filter(({ why }) => why === 'no-working-day').flatMap(({ days }) => days)).toEqual([
      '2026-10-03',
      '2026-11-01',
      '2026-12-26',
    ]);
  });

  test('of a country that has parts name these, and of nowhere are refused with an example', async () => {
    const h = harness();
    expect((await holidaysOf(h, 'DE')).regions).toContain('BY (Bayern)');
    await expect(holidaysOf(h, 'Atlantis')).rejects.toMatchObject({
      details: { problems: [{ field: 'holidays', problem: { code: 'off-no-country', typed: 'Atlantis' } }] },
    });
    await expect(holidaysOf(h, 'DE-XX')).rejects.toMatchObject({
      details: { problems: [{ field: 'holidays', problem: { code: 'off-no-region', typed: 'DE-XX' } }] },
    });
  });

  test('are a facilitator’s to take', async () => {
    await expect(holidaysOf(harness(), 'DE', actorOf('ben'))).rejects.toMatchObject({
      code: 'not-a-facilitator',
    });
  });
});
