import { describe, expect, test } from 'vitest';
import { type DaysOffImportInput, importDaysOff } from '../../../src/app/days-off/import-days-off.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import type { Refusal } from '../../../src/app/refusal.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { calendarText, eventText } from '../../calendars/calendar-text.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach } from '../../support/app-harness.ts';
import { allRows } from '../../workspaces/two-workspaces.ts';

// Monday 2 to Friday 13 November 2026, in Lisbon, which is on UTC then. Asked at 09:15, closing at 17:00.
const harness = harnessForEach('2026-11-02T08:00:00Z');
const ana = actorOf('ana');
const ben = actorOf('ben');

const on = (title: string, ...lines: readonly string[]) => eventText(title, ...lines, `SUMMARY:${title}`);
const allDay = (title: string, day: string, ...lines: readonly string[]) =>
  on(title, `DTSTART;VALUE=DATE:${day}`, ...lines);
const timed = (title: string, day: string, from: string, to: string) =>
  on(title, `DTSTART:${day}T${from}00`, `DTEND:${day}T${to}00`);

type Given = Partial<Omit<DaysOffImportInput, 'source'>> & { readonly events: readonly string[] };

async function given(h: Harness, team: Team, actor: typeof ana, { events, ...over }: Given) {
  return importDaysOff(h.deps, actor, {
    teamId: team.id,
    whose: 'team',
    source: { fileName: 'off.ics', text: calendarText(...events) },
    takesFree: false,
    seen: undefined,
    ...over,
  });
}

async function previewed(h: Harness, team: Team, actor: typeof ana, input: Given) {
  const outcome = await given(h, team, actor, input);
  if (outcome.kind !== 'preview') throw new Error('it saved');
  return outcome.preview;
}

const HOLIDAYS = [allDay('Harbour day', '20261112'), timed('Eve', '20261110', '1300', '1700')];

describe('days off from a calendar file', () => {
  test('are shown first, and saved when these very days were shown', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const preview = await previewed(h, team, ana, { events: HOLIDAYS });
    expect(preview.days).toEqual([
      { day: '2026-11-10', isHalf: true, titles: ['Eve'] },
      { day: '2026-11-12', isHalf: false, titles: ['Harbour day'] },
    ]);
    expect((await h.deps.store.read((read) => read.teamById(team.id)))?.daysOff.full).toEqual([]);
    const other = await given(h, team, ana, { events: HOLIDAYS.slice(0, 1), seen: preview.fingerprint });
    expect(other.kind).toBe('preview');
    const outcome = await given(h, team, ana, { events: HOLIDAYS, seen: preview.fingerprint });
    expect(outcome).toMatchObject({
      kind: 'saved',
      saved: {
        ofTeam: [
          { from: '2026-11-10', isHalf: true },
          { from: '2026-11-12', isHalf: false },
        ],
      },
    });
    expect((await h.deps.store.read((read) => read.teamById(team.id)))?.daysOff).toEqual({
      full: ['2026-11-12'],
      half: ['2026-11-10'],
    });
  });

  test('of one’s own count for oneself, and nothing but days is stored', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const events = [allDay('Operation', '20261112')];
    const { fingerprint } = await previewed(h, team, ben, { events, whose: 'own' });
    const outcome = await given(h, team, ben, { events, whose: 'own', seen: fingerprint });
    expect(outcome).toMatchObject({ kind: 'saved', saved: { own: [{ from: '2026-11-12' }], ofTeam: [] } });
    const stored = await allRows(h.database);
    expect(JSON.stringify(stored)).toContain('2026-11-12');
    expect(JSON.stringify(stored)).not.toContain('Operation');
  });

  test('of the team are a facilitator’s to give, and own ones those of somebody who does its work', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await expect(given(h, team, ben, { events: HOLIDAYS })).rejects.toMatchObject({
      code: 'not-a-facilitator',
    });
  });

  test('a file that is no calendar is refused with its name', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const refused = importDaysOff(h.deps, ana, {
      teamId: team.id,
      whose: 'team',
      source: { fileName: 'cards.csv', text: 'title,estimate' },
      takesFree: false,
      seen: undefined,
    });
    await expect(refused).rejects.toMatchObject({
      code: 'file-unreadable',
      details: { field: 'file', fileName: 'cards.csv', why: 'not a calendar' },
    } satisfies Partial<Refusal>);
  });

  test('an event covers the day from three quarters of 09:00 to 17:00, half of it from a third, and less than that nothing', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { days, leftOut } = await previewed(h, team, ana, {
      events: [
        timed('two hours', '20261109', '1000', '1200'),
        timed('until noon', '20261110', '0700', '1200'),
        timed('after lunch', '20261111', '1300', '2300'),
        timed('most of it', '20261112', '1000', '1600'),
        timed('in the night', '20261113', '2000', '2300'),
        timed('morning', '20261116', '0900', '1200'),
        timed('afternoon', '20261116', '1230', '1700'),
        timed('three days', '20261117', '1200', '1201').replace('DTEND:20261117', 'DTEND:20261119'),
      ],
    });
    expect(days.map(({ day, isHalf }) => [day, isHalf])).toEqual([
      ['2026-11-10', true],
      ['2026-11-11', true],
      ['2026-11-12', false],
      ['2026-11-16', false],
      ['2026-11-17', true],
      ['2026-11-18', false],
      ['2026-11-19', true],
    ]);
    expect(leftOut.map(({ why, title }) => [why, title])).toEqual([
      ['too-short', 'two hours'],
      ['too-short', 'in the night'],
    ]);
  });

  test('says what is left out and why, once for each event', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await sayDaysOff(h.deps, ana, { place: CHANNEL, words: 'team 11 Nov' });
    const events = [
      allDay('Called off', '20261110', 'STATUS:CANCELLED'),
      allDay('Birthday', '20261112', 'TRANSP:TRANSPARENT'),
      allDay('Fog', '20261111'),
      allDay('Regatta', '20261113', 'DTEND;VALUE=DATE:20261117'),
      on('Stand-up', 'DTSTART:20261102T091500', 'DURATION:PT15M', 'RRULE:FREQ=WEEKLY;COUNT=3'),
      on('Never begins'),
      allDay('Last year', '20251224'),
    ];
    const { days, leftOut, outside } = await previewed(h, team, ana, { events });
    expect(days.map(({ day }) => day)).toEqual(['2026-11-13', '2026-11-16']);
    expect(leftOut).toEqual([
      { why: 'cancelled', title: 'Called off', days: ['2026-11-10'] },
      { why: 'free', title: 'Birthday', days: ['2026-11-12'] },
      { why: 'too-short', title: 'Stand-up', days: ['2026-11-02', '2026-11-09', '2026-11-16'] },
      { why: 'off-already', title: 'Fog', days: ['2026-11-11'] },
      { why: 'no-working-day', title: 'Regatta', days: ['2026-11-14', '2026-11-15'] },
      { why: 'unreadable', title: 'Never begins', days: [] },
    ]);
    expect(outside).toBe(1);
    const free = await previewed(h, team, ana, { events, takesFree: true });
    expect(free.days.map(({ day }) => day)).toEqual(['2026-11-12', '2026-11-13', '2026-11-16']);
  });

  test('reach from the first day of a sprint that is open to a year after it, whatever the file holds', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team, { startsOn: '2026-11-02', endsOn: '2026-11-13', cards: 'Buoy, 3, @Ben' });
    h.set('2026-11-05T08:00:00Z');
    const events = [allDay('Since ever', '19000101', 'DTEND;VALUE=DATE:99991231')];
    const { days, from, to } = await previewed(h, team, ana, { events });
    expect([from, to]).toEqual(['2026-11-02', '2027-11-02']);
    expect([days[0]?.day, days.at(-1)?.day]).toEqual(['2026-11-02', '2027-11-02']);
  });
});
