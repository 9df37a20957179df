import { describe, expect, test } from 'vitest';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import { actorOf, CHANNEL, harnessForEach } from '../../support/app-harness.ts';
import {
  type Files,
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

  test('keep their links, and go out with them again', async () => {
    const { h, team: into } = await team();
    const cards = CARDS.replace('title,', 'title,url,')
      .replace('Lamp,', 'Lamp,https://tracker.example/1,')
      .replace('Bell,', 'Bell,,')
      .replace('Buoy,', 'Buoy,,');
    await imported(h, into, { ...WHOLE, 'cards.csv': cards });
    const [only] = await past(h, into);
    const records = await h.records(only?.sprintId ?? '');
    expect(records.cards.map(({ link }) => link)).toEqual([
      'https://tracker.example/1',
      undefined,
      undefined,
    ]);
    const { files } = await exportSprints(h.deps, actorOf('ana'), CHANNEL);
    const bytes = files.find(({ fileName }) => fileName === 'cards.csv')?.bytes;
    expect(Buffer.from(bytes ?? []).toString()).toContain('Lamp,https://tracker.example/1,5');
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
    ['a number twice', changed('cards.csv', 'A,2', 'A,1'), '3: card 1 of A is already on line 2'],
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
      '2: 2026-01-04 isn’t a day of A',
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
      'already dropped on line 2',
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
      'a link that is no web address',
      { ...WHOLE, 'cards.csv': 'sprint,title,link,estimate\nA,Lamp,ftp://tracker.example,8' },
      '2: “link” must be a web address',
    ],
    [
      'no change that is known',
      changed('changes.csv', 'dropped', 'eaten'),
      '2: “eaten” in “change” isn’t known; write “dropped”, “reopened”, “blocked” or “moving”',
    ],
    [
      'sums that are not those of the cards',
      changed('sprints.csv', ',8', ',9'),
      '2: “commitment” is 9 but its cards add up to 8.',
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
    expect(problems[0]?.problem).toEqual({ code: 'several-sprints', sprint: 'A' });
  });
});
