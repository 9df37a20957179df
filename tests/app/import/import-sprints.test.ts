import { describe, expect, test } from 'vitest';
import { reopenSprint } from '../../../src/app/end-sprint.ts';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import type {
  ImportOutcome,
  ImportPreview,
  SprintsImported,
} from '../../../src/app/import/import-sprints.ts';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import type { PastSprint } from '../../../src/app/past-sprint.ts';
import { planForm } from '../../../src/app/plan-form.ts';
import type { Team } from '../../../src/app/team.ts';
import { pastSprints } from '../../../src/app/team-history.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';

// Friday noon in Lisbon, which is on UTC since the Sunday before.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

const HEADER = 'name,first day,last day,commitment,pulled in,surprise,finished,points worked';
const GOOD = `${HEADER}\nHarbour 1,2026-01-05,2026-01-16,20,2,1,18,21\nHarbour 2,2026-01-19,2026-01-30,21.5,0,0,21.5,20`;

type Files = Readonly<Record<string, string>>;

function give(h: Harness, team: Team, files: Files, seen?: string): Promise<ImportOutcome> {
  const all = Object.entries(files).map(([fileName, text]) => ({ fileName, text }));
  return importSprints(h.deps, ana, { teamId: team.id, files: all, seen });
}

async function previewed(h: Harness, team: Team, files: Files): Promise<ImportPreview> {
  const outcome = await give(h, team, files);
  if (outcome.kind !== 'preview') throw new Error('imported without a preview');
  return outcome.preview;
}

async function imported(h: Harness, team: Team, files: Files): Promise<SprintsImported> {
  const { fingerprint, problems } = await previewed(h, team, files);
  expect(problems).toEqual([]);
  const outcome = await give(h, team, files, fingerprint);
  if (outcome.kind !== 'imported') throw new Error('only previewed');
  return outcome.imported;
}

async function team() {
  const h = harness();
  return { h, team: await h.setUpTeam() };
}

/** `line: words` of everything that is wrong. */
async function wrongWith(files: Files | string): Promise<string[]> {
  const { h, team: into } = await team();
  const given = typeof files === 'string' ? { 'sprints.csv': files } : files;
  const { problems, sprints } = await previewed(h, into, given);
  expect(sprints).toEqual([]);
  return problems.map(({ lineNumber, problem }) => `${lineNumber}: ${problem}`);
}

const past = (h: Harness, of: Team): Promise<PastSprint[]> => h.read((tx) => pastSprints(tx, of));

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

  test('is needed anew when the content has changed since', async () => {
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
    expect(warnings.join(' ')).toMatch(
      /More than one sprint is called A;.*not said of A, a,.*a has no working day/,
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
        keptShare: { undefined: 'The import doesn’t say how much of the commitment was finished.' },
        pullInRatio: 2 / 20,
        surpriseRatio: 1 / 20,
        planShare: 20 / 23,
        estimateAccuracy: { undefined: 'The import doesn’t hold the cards.' },
        onScaleShare: { undefined: 'The import doesn’t hold the cards.' },
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

  test('lead the plan form on, and can not be opened again', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: `${HEADER}\nHarbour 41,2026-10-12,2026-10-23,20,0,0,20,20` });
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    expect(draft).toMatchObject({ name: 'Harbour 42', startsOn: '2026-10-30', endsOn: '2026-11-10' });
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
  test('the same file is told to be there already, and changes nothing', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    const before = await past(h, into);
    const again = await previewed(h, into, { a: GOOD });
    expect(again).toMatchObject({
      sprints: [],
      problems: [],
      leftOut: [{ why: 'there already' }, { why: 'there already' }],
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
    expect(problems).toMatchObject([
      { lineNumber: 2, problem: expect.stringContaining('shares days with Harbour 1') },
    ]);
  });
});

describe('cancelled and running sprints', () => {
  test('are left out and said to be, with their cards, and whatever their numbers are', async () => {
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

describe('every bad line of sprints is named, with how to mend it', () => {
  test.each([
    ['an empty name', ',2026-01-05,2026-01-16,20', '“name” is empty'],
    ['no day', 'A,soon,2026-01-16,20', '“soon” in “first day” can’t be read as a day'],
    ['a day that does not exist', 'A,2026-02-30,2026-03-01,20', 'doesn’t exist'],
    ['a day that can be read in two ways', 'A,1/2/2026,2026-02-16,20', 'like 2026-11-02'],
    ['days in the wrong order', 'A,2026-01-16,2026-01-05,20', 'comes before the first day'],
    ['a slip in the year', 'A,1026-01-05,1026-01-16,20', 'is the year right?'],
    ['more than 92 days', 'A,2026-01-01,2026-04-03,20', '93 days; 92 is the most'],
    ['a last day that has not come', 'A,2026-10-19,2026-10-31,20', 'is not over yet'],
    ['a last day that is not over', 'A,2026-10-19,2026-10-30,20', 'is not over yet'],
    ['a commitment that is not given', 'A,2026-01-05,2026-01-16,', '“commitment” is empty'],
    ['a quarter of a point', 'A,2026-01-05,2026-01-16,20.25', 'multiple of 0.5'],
    ['points below 0', 'A,2026-01-05,2026-01-16,-1', 'multiple of 0.5'],
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
    ['a closing day that has not come', '2026-10-31', 'has not come yet'],
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

const SPRINTS = 'name,first day,last day,commitment\nA,2026-01-05,2026-01-16,8';
const CARDS =
  'sprint,card,title,estimate,came in,came in on\nA,1,Lamp,5,,\nA,2,Bell,3,,\nA,3,Buoy,2,pulled in,2026-01-08';
const ANSWERS =
  'sprint,card,day,answer,worked,left,surprise\nA,1,2026-01-05,1,2,3,0\nA,1,2026-01-06,1,1,4,2\nA,1,2026-01-07,,4,0,\nA,3,2026-01-08,1,2,0,0';
const CHANGES = 'sprint,card,day,change,reason\nA,2,2026-01-09,dropped,no longer wanted';
const WHOLE = { 'sprints.csv': SPRINTS, 'cards.csv': CARDS, 'answers.csv': ANSWERS, 'changes.csv': CHANGES };

describe('cards with their answers', () => {
  test('are recorded as if the sprint had been run here: cards, trace, ratios', async () => {
    const { h, team: into } = await team();
    expect(await imported(h, into, WHOLE)).toMatchObject({ cards: 3, answers: 4 });
    const [only] = await past(h, into);
    expect(only).toMatchObject({
      commitmentPoints: 8,
      pulledInPoints: 2,
      surprisePoints: 2,
      velocityPoints: 7,
      workedPoints: 9,
      committedFinishedPoints: 5,
      cards: [
        { estimatePoints: 5, surprisePoints: 2 },
        // 7 of the 10 working days were left on Thursday the 8th, that day included.
        { estimatePoints: 2, surprisePoints: 0, pulledIn: { workingDaysLeft: 7, finished: true } },
      ],
    });
    expect(only?.trace).toHaveLength(11);
    expect(only?.trace[2]).toEqual({ cardPoints: 8, finishedPoints: 0, underwayPoints: (5 * 3) / 7 });
    const { cards, facts } = await h.records(only?.sprintId ?? '');
    expect(cards.map(({ number, key, title, ownerIds }) => [number, key, title, ownerIds])).toEqual([
      [1, '1', 'Lamp', []],
      [2, '2', 'Bell', []],
      [3, '3', 'Buoy', []],
    ]);
    expect(new Set(facts.map(({ memberId }) => memberId))).toEqual(new Set(['import-1']));
    expect(facts.map(({ kind }) => kind)).toEqual(['answer', 'answer', 'answer', 'drop', 'answer']);
  });

  test('without answers have their end from their own lines; how it went is then unknown', async () => {
    const { h, team: into } = await team();
    const cards =
      'sprint,key,title,estimate,surprise,worked,left,state\nA,LP-1,Lamp,5,2,7,0,finished\nA,LP-2,Bell,3,,,,open\nA,LP-3,Buoy,2,,,,dropped';
    await imported(h, into, { 'sprints.csv': SPRINTS.replace(',8', ',10'), 'cards.csv': cards });
    expect(await past(h, into)).toMatchObject([
      {
        velocityPoints: 5,
        surprisePoints: 2,
        workedPoints: 7,
        trace: [],
        cards: [{ surprisePoints: 2 }, { estimatePoints: 3 }],
      },
    ]);
  });

  const without = (name: keyof typeof WHOLE): Files => {
    const { [name]: _left, ...rest } = WHOLE;
    return rest;
  };
  const changed = (name: keyof typeof WHOLE, from: string, to: string): Files => {
    if (!WHOLE[name].includes(from)) throw new Error(`${name} does not hold ${from}`);
    return { ...WHOLE, [name]: WHOLE[name].replace(from, to) };
  };

  test.each<[string, Files, string]>([
    ['cards without sprints', without('sprints.csv'), 'goes with a file of sprints'],
    ['answers without cards', without('cards.csv'), 'goes with a file of cards'],
    [
      'a sprint that is not there',
      changed('cards.csv', 'A,2', 'Z,2'),
      '3: there is no sprint “Z” in the file of sprints.',
    ],
    ['a card that is not there', changed('answers.csv', 'A,3', 'A,9'), '5: A has no card “9”'],
    ['a number twice', changed('cards.csv', 'A,2', 'A,1'), '3: card 1 of A stands on line 2 already'],
    [
      'a card pulled in on no day',
      changed('cards.csv', '2026-01-08', ''),
      '4: the card was pulled in, so “came in on” must say',
    ],
    [
      'a planned card that came in late',
      changed('cards.csv', '5,,', '5,,2026-01-06'),
      '2: a planned card comes in on the sprint’s first day',
    ],
    [
      'an answer outside of the sprint',
      changed('answers.csv', 'A,1,2026-01-05', 'A,1,2026-01-04'),
      '2: 2026-01-04 is not a day of A',
    ],
    [
      'an answer before the card came in',
      changed('answers.csv', '2026-01-08', '2026-01-07'),
      '5: the card came in on 2026-01-08',
    ],
    [
      'an answer after the drop',
      changed('changes.csv', 'A,2,2026-01-09', 'A,1,2026-01-06'),
      '4: the card was dropped on 2026-01-06',
    ],
    [
      'a second drop',
      changed('changes.csv', 'A,2', 'A,2,2026-01-08,dropped,\nA,2'),
      'dropped on line 2 already',
    ],
    [
      'an answer’s number twice',
      changed('answers.csv', 'A,1,2026-01-06,1', 'A,1,2026-01-05,1'),
      '3: answer 1 about this card',
    ],
    [
      'surprise that is no growth',
      changed('answers.csv', '1,4,2', '1,3,2'),
      '3: worked 1 + left 3 − left before 3 makes a growth of 1, of which 2 can’t be surprise work; 1 can.',
    ],
    ['more than a card can have left', changed('answers.csv', '1,4,2', '1,1000,2'), '3: “1000” in “left”'],
    [
      'no change that is known',
      changed('changes.csv', 'dropped', 'eaten'),
      '2: “eaten” in “change” is not known; write “dropped” or “reopened”',
    ],
    [
      'sums that are not those of the cards',
      changed('sprints.csv', ',8', ',9'),
      '2: “commitment” is 9, its cards add up to 8.',
    ],
  ])('are refused with %s', async (_name, files, words) => {
    expect((await wrongWith(files)).join('\n')).toContain(words);
  });

  const ended = (columns: string, cells: string): Files => ({
    ...WHOLE,
    'cards.csv': `sprint,card,title,estimate,${columns}\nA,1,Lamp,5,${cells}\nA,2,Bell,3${columns.replace(/[^,]+/g, '').replace(/^/, ',')}`,
    'answers.csv': ANSWERS.split('\n').slice(0, 4).join('\n'),
  });

  test.each<[string, string, string, string]>([
    [
      'whose own numbers don’t add up',
      'surprise,drift,worked,left',
      '2,0,8,0',
      'estimate + surprise + drift is 7, but worked + left is 8',
    ],
    [
      'that say another surprise',
      'surprise',
      '1',
      '“surprise” is 1, but by what else is said of the card it is 2 points',
    ],
    [
      'that say another end',
      'state',
      'open',
      '“state” is open, but by what else is said of the card it is finished',
    ],
    [
      'that say another day',
      'finished on',
      '2026-01-08',
      '“finished on” is 2026-01-08, but by what else is said of the card it is 2026-01-07',
    ],
  ])('are refused %s', async (_name, columns, cells, words) => {
    expect((await wrongWith(ended(columns, cells))).join('\n')).toContain(words);
  });

  test('are not complained of when only their sprint’s line is bad', async () => {
    expect(await wrongWith(changed('sprints.csv', ',8', ',x'))).toHaveLength(1);
  });

  test('tell sprints of one name apart by the first day', async () => {
    const { h, team: into } = await team();
    const sprints = `${SPRINTS.replace(',8', ',1')}\nA,2026-01-19,2026-01-30,2`;
    const fine =
      'sprint,sprint first day,title,estimate,state\nA,2026-01-19,Lamp,2,open\nA,2026-01-05,Bell,1,open';
    expect((await previewed(h, into, { s: sprints, c: fine })).problems).toEqual([]);
    const unclear = 'sprint,title,estimate,state\nA,Lamp,2,open';
    const { problems } = await previewed(h, into, { s: sprints, c: unclear });
    expect(problems[0]?.problem).toContain('say in “sprint first day” which one is meant');
  });
});

describe('an export', () => {
  test('marks running and cancelled sprints, and of imported sums writes what is known', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    await h.plan(into);
    const { files, running, cancelled, lines } = await exportSprints(h.deps, ana, CHANNEL);
    expect({ running, cancelled, lines }).toEqual({
      running: 1,
      cancelled: 0,
      lines: { sprints: 3, cards: 3, answers: 0, changes: 0 },
    });
    const text = Buffer.from(files[0]?.bytes ?? []).toString();
    const [, first, , last] = text.split('\r\n');
    expect(first).toBe(
      'Harbour 1,2026-01-05,2026-01-16,20,2,1,18,21,,,closed,2026-01-16,,,,no,,,10,23,,,0.1,0.05,0.8695652173913043,0.8571428571428571,1',
    );
    expect(last).toContain('running');
  });

  test('of a team without a sprint is refused in words', async () => {
    const { h } = await team();
    await refusalOf(exportSprints(h.deps, ana, CHANNEL), 'nothing-to-export');
  });

  test('names no person, also where somebody was mentioned', async () => {
    const { h, team: into } = await team();
    const { sprint } = await h.plan(into, {
      goal: 'Ask <@UCHI> first',
      cards: 'Lamp for <@UBEN|ben>, 3, @Ben',
    });
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '2', note: 'with <@UANA>' } });
    const { files } = await exportSprints(h.deps, ana, CHANNEL);
    const text = files.map(({ bytes }) => Buffer.from(bytes).toString()).join('');
    expect(text).toContain('Ask somebody first');
    expect(text).toContain('with somebody');
    expect(text).not.toMatch(/UANA|UBEN|UCHI|Ben Ode/);
  });

  test('puts the answers of a day together, and numbers them where the ledger would tell them in another way', async () => {
    const { h, team: into } = await team();
    const { sprint } = await h.plan(into, { cards: 'Lamp, 5, @Ben @Chi\nBell, 5, @Ben @Chi' });
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', {
      1: { left: '4', worked: '1' },
      2: { left: '8', worked: '0', surprise: '3' },
    });
    await h.answer('chi', sprint.id, '2026-11-02', {
      1: { left: '3', worked: '1' },
      2: { left: '5', worked: '0', surprise: '0' },
    });
    const { files } = await exportSprints(h.deps, ana, CHANNEL);
    const text = Buffer.from(files[2]?.bytes ?? []).toString();
    expect(text.split('\r\n').slice(1, -1)).toEqual([
      'Harbour 12,2026-11-02,1,2026-11-02,1,2,3,0,0,',
      // +3 of surprise and −3 of drift: as one answer its growth would be 0, and the surprise gone.
      'Harbour 12,2026-11-02,2,2026-11-02,1,0,8,3,0,',
      'Harbour 12,2026-11-02,2,2026-11-02,2,0,5,0,-3,',
    ]);
  });
});
