import { describe, expect, test } from 'vitest';
import { reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { planForm } from '../../../src/app/planning/plan-form.ts';
import { importWarning } from '../../../src/words/import-problems.ts';
import { actorOf, CHANNEL, harnessForEach, problemsOf, refusalOf } from '../../support/app-harness.ts';
import {
  type Files,
  GOOD,
  give,
  HEADER,
  imported,
  past,
  previewed,
  teamOf,
  wrongWith as wrongWithFiles,
} from './giving-files.ts';

// Friday noon in Lisbon, which is on UTC since the Sunday before.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const team = () => teamOf(harness());
const wrongWith = (files: Files | string) => wrongWithFiles(harness(), files);
const ana = actorOf('ana');

describe('a first look', () => {
  test('shows what would be imported, and imports nothing', async () => {
    const { h, team: into } = await team();
    expect(await previewed(h, into, { 'sprints.csv': GOOD })).toMatchObject({
      sprints: [
        {
          name: 'Harbour 1',
          startsOn: '2026-01-05',
          endsOn: '2026-01-16',
          commitmentPoints: 20,
          velocityPoints: 18,
        },
        { name: 'Harbour 2', commitmentPoints: 21.5, velocityPoints: 21.5, cards: 0 },
      ],
      cards: 0,
      leftOut: [],
      problems: [],
    });
    expect(await past(h, into)).toEqual([]);
  });

  test('is needed again when the content has changed since', async () => {
    const { h, team: into } = await team();
    const { fingerprint } = await previewed(h, into, { 'sprints.csv': GOOD });
    const outcome = await give(h, into, { 'sprints.csv': GOOD.replace('21.5,20', '21.5,19') }, fingerprint);
    expect(outcome.kind).toBe('preview');
    expect(await past(h, into)).toEqual([]);
  });

  test('of nothing asks for a file', async () => {
    const { h, team: into } = await team();
    expect(await problemsOf(give(h, into, { a: ' \n' }))).toEqual({
      files: expect.stringContaining('nothing was given'),
    });
  });

  test('warns of what may be a slip', async () => {
    const { h, team: into } = await team();
    const text = 'name,first day,last day,commitment\nA,2026-01-05,2026-01-16,20\na,2026-01-17,2026-01-18,5';
    const { warnings } = await previewed(h, into, { 'sprints.csv': text });
    expect(warnings.map(importWarning).join(' ')).toMatch(
      /More than one sprint is called A;.*what was finished in A and a,.*a has no working day/,
    );
  });
});

describe('sprints alone', () => {
  test('become closed sprints with what their line says, and nothing made up', async () => {
    const { h, team: into } = await team();
    expect(await imported(h, into, { 'sprints.csv': GOOD })).toMatchObject({ knownSprints: 2, cards: 0 });
    const [first] = await past(h, into);
    expect(first).toMatchObject({
      name: 'Harbour 1',
      importedAt: new Date('2026-10-30T12:00:00Z'),
      workingDays: 10,
      memberDays: undefined,
      commitmentPoints: 20,
      pulledInPoints: 2,
      surprisePoints: 1,
      velocityPoints: 18,
      workedPoints: 21,
      // 18 finished of 20 + 2: how many of the 20 nobody said.
      committedFinishedPoints: undefined,
      trace: [],
      cards: [],
      ratios: {
        keptShare: { undefined: { code: 'finished-commitment-not-imported' } },
        pullInRatio: 2 / 20,
        surpriseRatio: 1 / 20,
        planShare: 20 / 23,
        estimateAccuracy: { undefined: { code: 'cards-not-imported' } },
        onScaleShare: { undefined: { code: 'cards-not-imported' } },
        finishShare: 18 / 21,
      },
    });
  });

  test('need no more than four columns; what is not said has a reason in place of a number', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: 'name,first day,last day,commitment\nHarbour 1,2026-01-05,2026-01-16,20' });
    const [only] = await past(h, into);
    expect(only).toMatchObject({ pulledInPoints: undefined, velocityPoints: undefined });
    for (const ratio of Object.values(only?.ratios ?? {})) expect(ratio).toHaveProperty('undefined');
  });

  test.each([
    ['nothing was pulled in', '20,0,18', 18],
    ['all of both was finished', '20,2,22', 20],
    ['nothing was finished', '20,2,0', 0],
    ['there was no commitment', '0,5,3', 0],
    ['it does not follow', '20,2,18', undefined],
  ])('say how much of the commitment was finished where it follows: %s', async (_name, numbers, expected) => {
    const { h, team: into } = await team();
    const text = `name,first day,last day,commitment,pulled in,finished\nA,2026-01-05,2026-01-16,${numbers}`;
    await imported(h, into, { a: text });
    expect((await past(h, into))[0]?.committedFinishedPoints).toBe(expected);
  });

  test('may come from a spreadsheet that writes semicolons, decimal commas, its own dates and its own names', async () => {
    const { h, team: into } = await team();
    const text =
      '\uFEFFSprint;Start date;End-Date;Committed;Velocity\r\nHarbour 1;05.01.2026;16.1.2026;20,5;18,0\r\n';
    await imported(h, into, { a: text });
    expect(await past(h, into)).toMatchObject([
      { startsOn: '2026-01-05', endsOn: '2026-01-16', commitmentPoints: 20.5, velocityPoints: 18 },
    ]);
  });

  test('may have the names of months in their days', async () => {
    const { h, team: into } = await team();
    const text = 'name,first day,last day,commitment\nHarbour 1,5-Jan-2026,"Jan 16, 2026",20\n';
    await imported(h, into, { a: text });
    expect(await past(h, into)).toMatchObject([{ startsOn: '2026-01-05', endsOn: '2026-01-16' }]);
  });

  test('lead the plan form on, and can not be opened again', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: `${HEADER}\nHarbour 41,2026-10-12,2026-10-23,20,0,0,20,20` });
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    expect(draft).toMatchObject({ name: 'Harbour 42', startsOn: '2026-10-30', endsOn: '2026-11-12' });
    await refusalOf(reopenSprint(h.deps, ana, { place: CHANNEL }), 'no-sprint-to-reopen');
    const [{ sprintId } = { sprintId: '' }] = await past(h, into);
    await refusalOf(reopenSprint(h.deps, ana, { sprintId }), 'no-sprint-to-reopen');
  });

  test('cause no post', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    await h.pass('2026-11-02T09:15:00Z');
    expect(h.messenger.messages).toEqual([]);
  });
});

describe('a second time', () => {
  test('the same file is said to be there already, and changes nothing', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    const before = await past(h, into);
    const again = await previewed(h, into, { a: GOOD });
    expect(again).toMatchObject({
      sprints: [],
      problems: [],
      leftOut: [{ why: 'known' }, { why: 'known' }],
    });
    expect((await give(h, into, { a: GOOD }, again.fingerprint)).kind).toBe('preview');
    expect(await past(h, into)).toEqual(before);
  });

  test('a longer file brings what is new', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    const longer = `${GOOD}\nHarbour 3,2026-02-02,2026-02-13,20,0,0,20,20`;
    expect(await imported(h, into, { a: longer })).toMatchObject({
      sprints: [{ name: 'Harbour 3' }],
      knownSprints: 3,
    });
  });

  test('a sprint that shares days with one that is there is refused', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    const { problems } = await previewed(h, into, { a: `${HEADER}\nOther,2026-01-16,2026-01-17,1,0,0,1,1` });
    expect(problems).toMatchObject([{ lineNumber: 2, problem: { code: 'days-taken', sprint: 'Harbour 1' } }]);
  });
});

describe('cancelled and running sprints', () => {
  test('are left out and said to be, with their cards, with any numbers', async () => {
    const { h, team: into } = await team();
    const files = {
      'sprints.csv':
        'name,first day,last day,commitment,state\nA,2026-01-05,2026-01-16,20x,cancelled\nB,2026-10-26,2026-11-06,5,running\nC,2026-01-19,2026-01-30,3,closed',
      'cards.csv': 'sprint,title,estimate,state\nA,Lamp,20,open\nB,Bell,5,open\nC,Buoy,3,finished',
    };
    expect(await imported(h, into, files)).toMatchObject({
      sprints: [{ name: 'C' }],
      cards: 1,
      leftOut: [
        { name: 'A', why: 'cancelled' },
        { name: 'B', why: 'running' },
      ],
    });
    expect((await past(h, into)).map(({ name }) => name)).toEqual(['C']);
  });
});

describe('every bad line of sprints is named, with how to correct it', () => {
  test.each([
    ['an empty name', ',2026-01-05,2026-01-16,20', '“name” is empty'],
    ['no day', 'A,soon,2026-01-16,20', '“soon” in “first day” can’t be read as a day'],
    ['a day that does not exist', 'A,2026-02-30,2026-03-01,20', 'doesn’t exist'],
    ['a day that can be read in two ways', 'A,1/2/2026,2026-02-16,20', 'like 2026-11-02'],
    ['days in the wrong order', 'A,2026-01-16,2026-01-05,20', 'comes before the first day'],
    ['a slip in the year', 'A,1026-01-05,1026-01-16,20', 'is the year right?'],
    ['more than 92 days', 'A,2026-01-01,2026-04-03,20', '93 days; 92 is the most'],
    ['a last day that has not come', 'A,2026-10-19,2026-10-31,20', 'isn’t over yet'],
    ['a last day that is not over', 'A,2026-10-19,2026-10-30,20', 'isn’t over yet'],
    ['a commitment that is not given', 'A,2026-01-05,2026-01-16,', '“commitment” is empty'],
    ['a quarter of a point', 'A,2026-01-05,2026-01-16,20.25', 'multiple of 0.5'],
    ['points below 0', 'A,2026-01-05,2026-01-16,-1', 'out of bounds: write points from 0'],
    ['points with a sign for thousands', 'A,2026-01-05,2026-01-16,"1,000"', 'multiple of 0.5'],
    ['more points than can be kept', 'A,2026-01-05,2026-01-16,100000000', 'multiple of 0.5'],
    [
      'more finished than there was',
      'A,2026-01-05,2026-01-16,20,2,0,22.5',
      'commitment and pulled-in work are 22 together',
    ],
    ['a name that is too long', `${'a'.repeat(81)},2026-01-05,2026-01-16,20`, '80 is the most'],
  ])('%s', async (_name, line, words) => {
    expect(await wrongWith(`${HEADER}\n${line}`)).toEqual([expect.stringContaining(`2: `)]);
    expect((await wrongWith(`${HEADER}\n${line}`))[0]).toContain(words);
  });

  test.each([
    ['more of the commitment than there was', 'A,2026-01-05,2026-01-16,20,21,25', 'more than the commitment'],
    [
      'more of the commitment than was finished',
      'A,2026-01-05,2026-01-16,20,19,18',
      'more than was finished at all',
    ],
  ])('%s', async (_name, line, words) => {
    const header = 'name,first day,last day,commitment,finished of commitment,finished';
    expect((await wrongWith(`${header}\n${line}`))[0]).toContain(words);
  });

  test.each([
    ['a closing day before the first', '2026-01-04', 'before its first day'],
    ['a closing day that has not come anywhere', '2026-11-01', 'is still to come'],
  ])('%s', async (_name, closedOn, words) => {
    const text = `name,first day,last day,commitment,closed on\nA,2026-01-05,2026-01-16,20,${closedOn}`;
    expect((await wrongWith(text))[0]).toContain(words);
  });

  test('all of them at once, by number, and nothing is imported', async () => {
    const text = `${GOOD}\n,2026-02-02,2026-02-13,1\n\nB,x,y,z\nC,2026-01-30,2026-02-13,1\nHarbour 1,2026-01-05,2026-01-16,20`;
    expect((await wrongWith(text)).map((words) => words.split(':')[0])).toEqual([
      '4',
      '6',
      '6',
      '6',
      '7',
      '8',
    ]);
  });

  test('sprints may follow each other on the day on which the first was closed early, not before', async () => {
    const header = 'name,first day,last day,commitment,closed on\nA,2026-01-05,2026-01-16,20,2026-01-09';
    const { h, team: into } = await team();
    const fine = await previewed(h, into, { a: `${header}\nB,2026-01-09,2026-01-20,5,` });
    expect(fine.problems).toEqual([]);
    expect((await wrongWith(`${header}\nB,2026-01-08,2026-01-20,5,`))[0]).toContain('“closed on”');
  });

  test('more than 1,000 sprints are too many at once', async () => {
    const lines = Array.from({ length: 1_001 }, (_, i) => `A${i},2026-01-05,2026-01-05,1`);
    expect(await wrongWith(`${HEADER}\n${lines.join('\n')}`)).toEqual([
      expect.stringContaining('1,001 sprints'),
    ]);
  });
});
