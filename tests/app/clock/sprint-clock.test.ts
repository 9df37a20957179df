import { afterEach, describe, expect, test } from 'vitest';
import { instantOf } from '../../../src/app/clock/local-time.ts';
import {
  firstPromptAt,
  lastCallAt,
  nextPromptAt,
  reminderAt,
  reopenUntil,
  sprintDays,
} from '../../../src/app/clock/sprint-clock.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';

const zoneBefore = process.env.TZ;

afterEach(() => {
  if (zoneBefore === undefined) delete process.env.TZ;
  else process.env.TZ = zoneBefore;
});

const LISBON = {
  timeZone: 'Europe/Lisbon',
  promptAt: '09:15',
  workingDays: [1, 2, 3, 4, 5],
  daysOff: NO_DAYS_OFF,
};

function span(startsOn: string, endsOn: string, timeZone: string, closesAt = '17:00') {
  return { startsOn, endsOn, closesAtInstant: instantOf(endsOn, closesAt, timeZone) };
}

/** Every prompt of a sprint, one after the other, as the clock comes to them. */
function allPrompts(team: typeof LISBON, startsOn: string, endsOn: string, closesAt?: string): string[] {
  const sprint = span(startsOn, endsOn, team.timeZone, closesAt);
  const prompts: string[] = [];
  let at = firstPromptAt(team, [], sprint, startsOn);
  while (at) {
    prompts.push(at.toISOString().replace(':00.000Z', 'Z'));
    at = nextPromptAt(team, [], sprint, at);
  }
  return prompts;
}

describe.each(['UTC', 'Pacific/Apia', 'Australia/Lord_Howe', 'America/New_York'])(
  'on a machine whose zone is %s',
  (machineZone) => {
    test.each<[string, typeof LISBON, string, string, string[]]>([
      [
        'a weekend asks nobody',
        LISBON,
        '2026-11-05',
        '2026-11-10',
        ['2026-11-05T09:15Z', '2026-11-06T09:15Z', '2026-11-09T09:15Z', '2026-11-10T09:15Z'],
      ],
      [
        'a team that works from Sunday to Thursday is asked on those days',
        { ...LISBON, timeZone: 'Asia/Kathmandu', workingDays: [7, 1, 2, 3, 4] },
        '2026-11-05',
        '2026-11-09',
        ['2026-11-05T03:30Z', '2026-11-08T03:30Z', '2026-11-09T03:30Z'],
      ],
      [
        'the local time stays through the end of summer time, which moves the instant', // IANA tz 2025c
        { ...LISBON, timeZone: 'Europe/Berlin' },
        '2026-10-22',
        '2026-10-27',
        ['2026-10-22T07:15Z', '2026-10-23T07:15Z', '2026-10-26T08:15Z', '2026-10-27T08:15Z'],
      ],
      [
        'a prompt time that is skipped comes with the offset before the gap', // RFC 5545, 3.3.5
        { timeZone: 'America/New_York', promptAt: '02:30', workingDays: [6, 7, 1], daysOff: NO_DAYS_OFF },
        '2026-03-07',
        '2026-03-09',
        ['2026-03-07T07:30Z', '2026-03-08T07:30Z', '2026-03-09T06:30Z'],
      ],
      [
        'a prompt time that is repeated comes once, the first time', // RFC 5545, 3.3.5
        { timeZone: 'America/New_York', promptAt: '01:30', workingDays: [6, 7, 1], daysOff: NO_DAYS_OFF },
        '2026-10-31',
        '2026-11-02',
        ['2026-10-31T05:30Z', '2026-11-01T05:30Z', '2026-11-02T06:30Z'],
      ],
      [
        'a clock that moves by half an hour', // IANA tz 2025c
        { timeZone: 'Australia/Lord_Howe', promptAt: '02:15', workingDays: [6, 7, 1], daysOff: NO_DAYS_OFF },
        '2026-10-03',
        '2026-10-05',
        ['2026-10-02T15:45Z', '2026-10-03T15:45Z', '2026-10-04T15:15Z'],
      ],
      [
        'a day that begins at one in the morning', // IANA tz 2025c: Cairo 2026-04-24
        { timeZone: 'Africa/Cairo', promptAt: '00:30', workingDays: [4, 5, 6], daysOff: NO_DAYS_OFF },
        '2026-04-23',
        '2026-04-25',
        ['2026-04-22T22:30Z', '2026-04-23T22:30Z', '2026-04-24T21:30Z'],
      ],
      [
        'a day that a zone skipped at the date line asks nobody', // IANA tz 2025c: Apia had no 2011-12-30
        { ...LISBON, timeZone: 'Pacific/Apia' },
        '2011-12-29',
        '2012-01-02',
        ['2011-12-29T19:15Z', '2012-01-01T19:15Z'],
      ],
    ])('%s', (_, team, startsOn, endsOn, expected) => {
      process.env.TZ = machineZone;
      expect(allPrompts(team, startsOn, endsOn)).toEqual(expected);
    });
  },
);

describe('a sprint without anybody to ask', () => {
  test('that lies on days off has no prompt at all', () => {
    expect(sprintDays(LISBON, { startsOn: '2026-11-07', endsOn: '2026-11-08' })).toEqual([]);
    expect(allPrompts(LISBON, '2026-11-07', '2026-11-08')).toEqual([]);
  });

  test('that closes at or before the prompt time asks nobody on its last day', () => {
    expect(allPrompts(LISBON, '2026-11-05', '2026-11-06', '09:15')).toEqual(['2026-11-05T09:15Z']);
  });
});

describe('the first prompt', () => {
  const sprint = span('2026-11-02', '2026-11-06', LISBON.timeZone);

  test('of a sprint that is planned ahead is on its first day', () => {
    expect(firstPromptAt(LISBON, [], sprint, '2026-10-30')).toEqual(new Date('2026-11-02T09:15Z'));
  });

  test('of a sprint that is planned in the middle of a day is today’s, though its time has gone by', () => {
    expect(firstPromptAt(LISBON, [], sprint, '2026-11-04')).toEqual(new Date('2026-11-04T09:15Z'));
  });

  test('does not exist once the last day is over', () => {
    expect(firstPromptAt(LISBON, [], sprint, '2026-11-07')).toBeUndefined();
  });

  test('the one that follows lies after the instant, not at it', () => {
    expect(nextPromptAt(LISBON, [], sprint, new Date('2026-11-04T09:14:59Z'))).toEqual(
      new Date('2026-11-04T09:15Z'),
    );
    expect(nextPromptAt(LISBON, [], sprint, new Date('2026-11-04T09:15Z'))).toEqual(
      new Date('2026-11-05T09:15Z'),
    );
    expect(nextPromptAt(LISBON, [], sprint, new Date('2026-11-06T09:15Z'))).toBeUndefined();
  });
});

describe('reminder, last call and reopening', () => {
  const sprint = span('2026-11-02', '2026-11-06', LISBON.timeZone);

  test('the reminder comes the team’s minutes after the prompt, unless the sprint closes before', () => {
    const team = { ...LISBON, reminderAfterMinutes: 180 };
    expect(reminderAt(team, sprint, new Date('2026-11-06T13:59Z'))).toEqual(new Date('2026-11-06T16:59Z'));
    expect(reminderAt(team, sprint, new Date('2026-11-06T14:00Z'))).toBeUndefined();
  });

  test('the last call comes an hour before closing', () => {
    expect(lastCallAt(sprint)).toEqual(new Date('2026-11-06T16:00Z'));
  });

  test('a sprint may be reopened until closing time on the next working day, Friday’s until Monday', () => {
    const closing = (closedAt: string) => ({
      closedAt: new Date(closedAt),
      closesAt: '17:00',
      importedAt: undefined,
    });
    expect(reopenUntil(LISBON, closing('2026-11-05T17:00Z'))).toEqual(new Date('2026-11-06T17:00Z'));
    expect(reopenUntil(LISBON, closing('2026-11-06T17:00Z'))).toEqual(new Date('2026-11-09T17:00Z'));
    // Closed early by hand: the day counts, not the hour.
    expect(reopenUntil(LISBON, closing('2026-11-06T10:30Z'))).toEqual(new Date('2026-11-09T17:00Z'));
    // Lisbon's clocks go back on Sunday 2026-10-25 (IANA tz 2025c); closing time is local.
    expect(reopenUntil(LISBON, closing('2026-10-23T16:00Z'))).toEqual(new Date('2026-10-26T17:00Z'));
  });

  test('a team’s days off are left out of the time for reopening, half days are not', () => {
    const team = { ...LISBON, daysOff: { full: ['2026-11-09'], half: ['2026-11-10'] } };
    const closed = { closedAt: new Date('2026-11-06T17:00Z'), closesAt: '17:00', importedAt: undefined };
    expect(reopenUntil(team, closed)).toEqual(new Date('2026-11-10T17:00Z'));
  });

  test('a sprint that is open, or that was imported, can’t be reopened at all', () => {
    const open = { closedAt: undefined, closesAt: '17:00', importedAt: undefined };
    expect(reopenUntil(LISBON, open)).toBeUndefined();
    const at = new Date('2026-11-06T17:00Z');
    expect(reopenUntil(LISBON, { ...open, closedAt: at, importedAt: at })).toBeUndefined();
  });
});
