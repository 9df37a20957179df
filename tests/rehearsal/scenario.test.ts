import { describe, expect, it, test } from 'vitest';
import { parseScenario, readScenario, ScenarioError, unreadFields } from '../../src/rehearsal/scenario.ts';

const SPRINT = { name: 'Harbour 1', startsOn: '2026-11-02', endsOn: '2026-11-03', cards: [] };
const GOOD = {
  team: { name: 'Quayside', timeZone: 'Europe/Lisbon' },
  members: [{ id: 'ines', name: 'Ines' }],
  sprints: [SPRINT],
};

function problemsOf(scenario: unknown): readonly string[] {
  const text = typeof scenario === 'string' ? scenario : JSON.stringify(scenario);
  try {
    parseScenario(text, 'harbour.json');
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
  return [];
}

const withEvent = (event: object) => ({ ...GOOD, sprints: [{ ...SPRINT, events: [event] }] });

describe('a scenario file', () => {
  test('needs a name, a zone, members, and the days and cards of each sprint; the rest has usual values', () => {
    expect(parseScenario(JSON.stringify(GOOD), 'harbour.json')).toMatchObject({
      team: { promptAt: '09:15', workingDays: [1, 2, 3, 4, 5], thresholds: {} },
      sprints: [{ goal: '', events: [] }],
    });
  });

  test('may begin with the mark that some editors put before the text', () => {
    expect(problemsOf(`\uFEFF${JSON.stringify(GOOD)}`)).toEqual([]);
  });

  test('that is no JSON is refused with the place where reading stopped', () => {
    expect(problemsOf('{"team": {')).toEqual([expect.stringMatching(/^It is not JSON: .*position \d+/)]);
  });

  test('is refused with every problem at once, each by its place in the file', () => {
    const { name: _name, ...nameless } = GOOD.team;
    const card = { key: 'quay-1', estimate: 'five' };
    expect(
      problemsOf({
        ...GOOD,
        team: nameless,
        sprints: [{ ...SPRINT, startsOn: '2026-13-02', cards: [card] }],
      }),
    ).toEqual([
      'team.name: is missing',
      'sprints.0.startsOn: must be a date that exists, written like 2026-11-04',
      'sprints.0.cards.0.title: is missing',
      'sprints.0.cards.0.estimate: must be a number',
    ]);
  });

  const withTeam = (team: object) => ({ ...GOOD, team: { ...GOOD.team, ...team } });

  test.each([
    ['a list in place of the whole', [], 'the file: must be an object, in curly brackets'],
    ['a name that is empty', withTeam({ name: '' }), 'team.name: must not be empty'],
    ['a time that is no text', withTeam({ promptAt: 9 }), 'team.promptAt: must be a text'],
    ['no working day', withTeam({ workingDays: [] }), 'team.workingDays: must have at least one entry'],
    ...[0, 8, 1.5, 'Monday', null].map((day): [string, object, string] => [
      `the working day ${day}`,
      withTeam({ workingDays: [1, day] }),
      'team.workingDays.1: must be a number from 1 for Monday to 7 for Sunday',
    ]),
    [
      'thresholds in a list',
      withTeam({ thresholds: [0.8] }),
      'team.thresholds: must be an object, in curly brackets',
    ],
    [
      'a threshold in words',
      withTeam({ thresholds: { keptShareAtLeast: 'most' } }),
      'team.thresholds.keptShareAtLeast: must be a number',
    ],
    ['nobody', { ...GOOD, members: [] }, 'members: must have at least one entry'],
    ['members in an object', { ...GOOD, members: {} }, 'members: must be a list, in square brackets'],
    ['no sprint', { ...GOOD, sprints: [] }, 'sprints: must have at least one entry'],
    [
      'an answer about no card',
      withEvent({ on: '2026-11-02', by: 'ines', answer: [] }),
      'sprints.0.events.0.answer: must have at least one entry',
    ],
    [
      'somebody not away',
      withEvent({ on: '2026-11-02', by: 'ines', away: false }),
      'sprints.0.events.0.away: must be true, or be left out',
    ],
  ])('is refused with a word on how to correct it for %s', (_what, scenario, problem) => {
    expect(problemsOf(scenario)).toEqual([problem]);
  });

  test.each(['Mars/Olympus', '+02:00', 'Lisbon'])('is refused for the time zone “%s”', (timeZone) => {
    expect(problemsOf({ ...GOOD, team: { ...GOOD.team, timeZone } })).toEqual([
      `team.timeZone: there is no time zone “${timeZone}”; write one like Europe/Lisbon`,
    ]);
  });

  test('is refused when two members have one id', () => {
    const member = { id: 'ines', name: 'Ines' };
    expect(problemsOf({ ...GOOD, members: [member, { ...member, name: 'Other' }] })).toEqual([
      expect.stringContaining('two members with the id ines'),
    ]);
  });

  test.each([
    ['nothing', { by: 'ines' }, 'it is none'],
    ['two things', { by: 'ines', away: true, reopen: { card: 'quay-1' } }, 'it is reopen and away'],
    ['something by nobody', { away: true }, 'must say who does it'],
  ])('is refused for an event that says %s', (_what, event, words) => {
    expect(problemsOf(withEvent({ on: '2026-11-02', ...event }))).toEqual([expect.stringContaining(words)]);
  });

  test('may have a cancellation by nobody, for the facilitator cancels', () => {
    expect(problemsOf(withEvent({ on: '2026-11-02', cancel: true }))).toEqual([]);
  });

  test('that is not there is refused like one that can’t be played', async () => {
    await expect(readScenario('no-such-file.json')).rejects.toMatchObject({
      code: 'bad-scenario',
      problems: [expect.stringMatching(/^It can’t be read: /)],
    });
  });
});

describe('fields that are not known', () => {
  it('are named by their place, and do not stop the play', () => {
    const [sprint] = GOOD.sprints;
    const heard: string[] = [];
    const file = { ...GOOD, comment: 'a trial', sprints: [{ ...sprint, gaol: 'typed in haste' }] };
    parseScenario(JSON.stringify(file), 'harbour.json', (paths) => heard.push(...paths));
    expect(heard.sort()).toEqual(['comment', 'sprints.0.gaol']);
  });

  it('are none in a file that holds only known ones', () => {
    expect(unreadFields(GOOD, parseScenario(JSON.stringify(GOOD), 'harbour.json'))).toEqual([]);
  });
});
