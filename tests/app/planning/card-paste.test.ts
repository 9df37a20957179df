import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { KnownPerson } from '../../../src/app/planning/card-owners.ts';
import { formatCardLine, parseCardLine, parseCards } from '../../../src/app/planning/card-paste.ts';
import { alikeCards } from '../../../src/app/planning/plan-warnings.ts';
import { problemWords } from '../../../src/words/problems.ts';

const PEOPLE: readonly KnownPerson[] = [
  { userId: 'U1', name: 'Ana Lima' },
  { userId: 'U2', name: 'Ben Ode' },
  { userId: 'U3', name: 'Chi Wen' },
  { userId: 'U4', name: 'Ana Reis' },
  { userId: 'U5', name: 'Okoro, Dayo' },
];

/** Title, estimate and owners of a line, or what is wrong with it. */
function read(line: string): string | readonly unknown[] {
  const parsed = parseCardLine(line, PEOPLE);
  if ('code' in parsed) return problemWords(parsed);
  const { key, title, estimatePoints, ownerIds } = parsed;
  return [...(key === undefined ? [] : [key]), title, estimatePoints, ...ownerIds];
}

describe('columns are parted by tabs, semicolons or commas', () => {
  test.each<[string, unknown[]]>([
    ['Tide table, 5, @Ben', ['Tide table', 5, 'U2']],
    ['Tide table,5,@Ben', ['Tide table', 5, 'U2']],
    ['Tide table\t5\tBen Ode', ['Tide table', 5, 'U2']],
    ['Tide table; 5; @Ben', ['Tide table', 5, 'U2']],
    ['  Tide   table , 5 ', ['Tide table', 5]],
    ['Tide table, 5,', ['Tide table', 5]],
    ['Tide table\t5\t\t', ['Tide table', 5]],
  ])('%j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  test.each<[string, unknown[]]>([
    ['Sort by time, height, berth, 5, @Ben', ['Sort by time, height, berth', 5, 'U2']],
    ['Show 3, 5 and 8 days, 2', ['Show 3, 5 and 8 days', 2]],
    ['Mend login; it fails, 5, @Ben', ['Mend login; it fails', 5, 'U2']],
    ['Sort by time, height\t5\t@Ben', ['Sort by time, height', 5, 'U2']],
  ])('a title may hold what parts columns: %j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });
});

describe('a list has marks before its entries', () => {
  test.each([
    '- Tide table, 5, @Ben',
    '* Tide table, 5, @Ben',
    '• Tide table, 5, @Ben',
    '– Tide table, 5, @Ben',
    '1. Tide table, 5, @Ben',
    '12) Tide table, 5, @Ben',
    '(3) Tide table, 5, @Ben',
    '[ ] Tide table, 5, @Ben',
    '- [x] Tide table, 5, @Ben',
    '  - 2. Tide table, 5, @Ben',
    '- Tide table (5) @Ben',
    '•Tide table, 5, @Ben',
    '☐ Tide table, 5, @Ben',
    '✅ Tide table, 5, @Ben',
    '> Tide table, 5, @Ben',
    '1.2. Tide table, 5, @Ben',
    'a) Tide table, 5, @Ben',
  ])('%j', (line) => {
    expect(read(line)).toEqual(['Tide table', 5, 'U2']);
  });

  test.each<[string, unknown[]]>([
    ['-Tide table, 5', ['-Tide table', 5]],
    ['2 tide tables, 5', ['2 tide tables', 5]],
    ['"- Tide table", 5', ['- Tide table', 5]],
    ['2.5 hours of tides, 5', ['2.5 hours of tides', 5]],
    ['1.1 Tide table, 5', ['1.1 Tide table', 5]],
    ['A) Tide table, 5', ['A) Tide table', 5]],
  ])('what only looks like one is part of the title: %j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });
});

describe('an estimate may be in brackets or have its unit', () => {
  test.each([
    'Tide table (5)',
    'Tide table [5]',
    'Tide table {5}',
    'Tide table (5 pts)',
    'Tide table ( 5 points )',
    'Tide table - 5 pts',
    'Tide table: 5 points',
    'Tide table 5 story points',
    'Tide table – 5SP',
    '(5) Tide table',
    '[5 pts] Tide table',
    '5 points: Tide table',
    'Tide table, (5)',
    'Tide table, 5 pts',
    'Tide table\t5p',
    'Tide table 5 pts.',
    'Tide table, 5 pts.',
    'Tide table [5 pts.]',
    '- [x] Tide table — 5 pts',
  ])('%j', (line) => {
    expect(read(line)).toEqual(['Tide table', 5]);
  });

  test.each<[string, unknown[]]>([
    ['Tide table (0,5)', ['Tide table', 0.5]],
    ['Tide table, 0,5 pts', ['Tide table', 0.5]],
    ['Tide table (½)', ['Tide table', 0.5]],
    ['Tide table (5) @Ben', ['Tide table', 5, 'U2']],
    ['Tide table (5), Ben', ['Tide table', 5, 'U2']],
    ['Tide table, 5 @Ben', ['Tide table', 5, 'U2']],
    ['Tide table, 5 Ben', ['Tide table', 5, 'U2']],
    ['Tide table, 5 (Ben Ode)', ['Tide table', 5, 'U2']],
    ['Tide table, 0,5 - Ben', ['Tide table', 0.5, 'U2']],
    ['Tide table, 12, 5', ['Tide table, 12', 5]],
    ['Tide table, 0,5 @Ben @Chi', ['Tide table', 0.5, 'U2', 'U3']],
    ['Tide table, 5 pts <@U2>', ['Tide table', 5, 'U2']],
    ['Tide table (5) - <@U2|ben> <@U3>', ['Tide table', 5, 'U2', 'U3']],
    ['Tide table @Ben (5)', ['Tide table', 5, 'U2']],
    ['[5] Tide table @Ben', ['Tide table', 5, 'U2']],
    ['Sort by time, height (5) @Ben', ['Sort by time, height', 5, 'U2']],
    ['LP-7: Tide table (5)', ['LP-7', 'Tide table', 5]],
    ['Tide table (big) (5)', ['Tide table (big)', 5]],
    ['Berths (3), 5', ['Berths (3)', 5]],
    ['Tide table 5 @Ben', ['Tide table', 5, 'U2']],
    ['Tide table: 2.5 <@U2> <@U3>', ['Tide table', 2.5, 'U2', 'U3']],
    ['Tide table @Ben, 5', ['Tide table', 5, 'U2']],
    ['Tide table SP: 5', ['Tide table', 5]],
    ['Tide table, est. 5, Ben', ['Tide table', 5, 'U2']],
    ['Tide table (story points: 5) @Ben', ['Tide table', 5, 'U2']],
    ['Tide table [size=½]', ['Tide table', 0.5]],
    ['Room size: big, 5', ['Room size: big', 5]],
    ['Size 3, 5', ['Size 3', 5]],
  ])('%j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  test.each(['Tide table 5', 'Tide table - 5', 'Tide table (5) for ships', 'Sort 3 berths'])(
    '%j is not guessed',
    (line) => {
      expect(read(line)).toMatch(/^The estimate is missing\./);
    },
  );

  test('a question mark in its place is asked about', () => {
    expect(read('Tide table (5)\t?')).toMatch(/^“\?” isn’t an estimate/);
    expect(read('Tide table 5 @Ben\t?')).toMatch(/^“\?” isn’t an estimate/);
  });

  test('an owner behind it who is none is named', () => {
    expect(read('Tide table (5) @Zed')).toMatch(/^@Zed isn’t a member/);
  });
});

describe('rows of a table', () => {
  test.each<[string, unknown[]]>([
    ['| Tide table | 5 | @Ben |', ['Tide table', 5, 'U2']],
    ['|Tide table|5|', ['Tide table', 5]],
    ['Tide table | 5 | Ben Ode', ['Tide table', 5, 'U2']],
    ['| Tide table | 5 pts | <@U2|ben> |', ['Tide table', 5, 'U2']],
    ['| LP-7 | Tide table | 5 |', ['LP-7', 'Tide table', 5]],
    ['| 1 | Tide table | 5 | Ben |', ['Tide table', 5, 'U2']],
    ['1\tTide table\t5\tBen', ['Tide table', 5, 'U2']],
    ['Tide table\tBen Ode\t5', ['Tide table', 5, 'U2']],
    ['Tide table, @Ben, 5', ['Tide table', 5, 'U2']],
    ['Import | export, 5', ['Import | export', 5]],
    ['Talk to Ben, 5', ['Talk to Ben', 5]],
    ['Ask <@U2> and <@U9> about it, 5, <@U1>', ['Ask @Ben Ode and somebody about it', 5, 'U1']],
    ['Ben | Tide table | 5', ['Tide table', 5, 'U2']],
    ['Ben Ode | 5', ['Ben Ode', 5]],
    ['Ben\tTide table\tChi\t2,5', ['Tide table', 2.5, 'U2', 'U3']],
  ])('%j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  test('with the names of the columns and a rule hold as many cards as the rows below', () => {
    const text = '| Title | Points | Owner |\n|---|:-:|---|\n| Tides | 5 | Ben |\n| Cranes | x | Ben |';
    const { cards, bad } = parseCards(text, PEOPLE);
    expect(cards).toMatchObject([{ lineNumber: 3, title: 'Tides', estimatePoints: 5, ownerIds: ['U2'] }]);
    expect(bad).toMatchObject([{ lineNumber: 4, problem: { code: 'not-an-estimate', typed: 'x' } }]);
  });

  test.each([
    '| Card | Est. | Owner |\n|--|--|--|\n| Tides | 5 | Ben |',
    '| What | How much | By |\n|:-|-:|-|\n| Tides | 5 | Ben |',
    'Summary,Story points,Assignee\nTides,5,Ben',
    'Owner | Title | Points\n--- | --- | ---\nBen | Tides | 5',
  ])('below names of columns are read, the names are no card: %j', (text) => {
    const { cards, bad } = parseCards(text, PEOPLE);
    expect(bad).toEqual([]);
    expect(cards).toMatchObject([{ title: 'Tides', estimatePoints: 5, ownerIds: ['U2'] }]);
  });

  test.each(['Total, 8', '| TOTAL: | | 8 |', 'Sum\t8', 'Grand total (8)', 'Total: 8', 'Sum 8'])(
    'a sum is no card: %j',
    (line) => {
      expect(read(line)).toMatch(/^This looks like the sum of the cards/);
    },
  );

  test('a card may be about a sum', () => {
    expect(read('Total of the tolls, 8')).toEqual(['Total of the tolls', 8]);
    expect(read('LP-9: Total, 8, @Ben')).toEqual(['LP-9', 'Total', 8, 'U2']);
  });

  test('are read by the names of their columns, whatever else they hold', () => {
    const text = [
      'ID\tSummary\tPriority\tSP\tAssignee\tStatus',
      'QUAY-1\tTides\t1\t5\tBen Ode\tTo do',
      'QUAY-2\tCranes\t2\t3\t\tDone',
      '\tLamps\t2\t\tBen Ode\tTo do',
    ].join('\n');
    const { cards, bad } = parseCards(text, PEOPLE);
    expect(cards).toMatchObject([
      { key: 'QUAY-1', title: 'Tides', estimatePoints: 5, ownerIds: ['U2'] },
      { key: 'QUAY-2', title: 'Cranes', estimatePoints: 3, ownerIds: [] },
    ]);
    expect(bad).toMatchObject([{ lineNumber: 4, problem: { code: 'no-estimate' } }]);
  });

  test.each(['Tides\t1\t5\tBen', '| Tides | 1 | 5 |', '7\tTides\t1\t5'])(
    'two numbers aren’t guessed: %j',
    (line) => {
      expect(read(line)).toMatch(/^The estimate may be 1 or 5: keep one of them/);
    },
  );

  test('names of columns anywhere else are a line like any other', () => {
    expect(parseCards('Tides, 5\nTitle, Points', PEOPLE).bad).toMatchObject([{ lineNumber: 2 }]);
  });
});

describe('a card that is there twice', () => {
  const alike = (text: string) =>
    alikeCards(
      parseCards(text, PEOPLE).cards.map(({ key, title }, i) => ({
        number: i + 1,
        key: key ?? `${i + 1}`,
        title,
      })),
    );

  test.each([
    'tide table, 5',
    'Tide  Table., 5',
    '- Tide table!, 3',
    '| TIDE TABLE… | 2 |',
    '**Tide table**, 5',
    '“Tide-table”, 5',
  ])('is found in disguise too, and not refused: %j', (line) =>
    expect(alike(`Tide table, 5\nCranes, 3\n${line}`)).toEqual([1, 3]),
  );

  test('may have the same title where short names tell them apart', () => {
    expect(alike('LP-7: Tides, 5\nLP-8: Tides, 3')).toEqual([]);
    expect(alike('LP-7: Tides, 5\nTides, 3')).toEqual([1, 2]);
  });

  test('titles with other words or signs are other cards', () => {
    expect(alike('C++, 5\nC#, 3\nC, 1')).toEqual([]);
  });
});

describe('double quotes hold a field together', () => {
  test.each<[string, unknown[]]>([
    ['"Room 3, 5", 8', ['Room 3, 5', 8]],
    ['"Tide; table", 5, @Ben', ['Tide; table', 5, 'U2']],
    ['"Tide\ttable", 5, @Ben', ['Tide table', 5, 'U2']],
    ['"Pier\t5\tcrane", 3', ['Pier 5 crane', 3]],
    ['"Say ""ahoy"" twice", 1', ['Say "ahoy" twice', 1]],
    ['"Tide table","5","@Ben"', ['Tide table', 5, 'U2']],
    ['"Tide table"\t"0,5"', ['Tide table', 0.5]],
  ])('%j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  test.each<[string, unknown[]]>([
    ['Mend the 5" screen, 3', ['Mend the 5" screen', 3]],
    ['"Big" red button, 3', ['"Big" red button', 3]],
    ['Button "Big", 3', ['Button "Big"', 3]],
  ])('quotes within a text are part of it: %j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  test('a quote that is never closed is named', () => {
    expect(read('"Tide table, 5')).toBe('A double quote is opened and never closed.');
  });
});

describe('estimates may be halves', () => {
  test.each<[string, number]>([
    ['Tide table, 0.5', 0.5],
    ['Tide table, 0,5', 0.5],
    ['Tide table,0,5,@Ben', 0.5],
    ['Tide table, 12,5, @Ben', 12.5],
    ['Tide table; 0,5; @Ben', 0.5],
    ['Tide table\t2,5', 2.5],
    ['Tide table, ½', 0.5],
    ['Tide table, 1½', 1.5],
    ['Tide table, 0', 0],
    ['Tide table, 999.5', 999.5],
  ])('%j is %s', (line, estimatePoints) => {
    expect(parseCardLine(line, PEOPLE)).toMatchObject({ title: 'Tide table', estimatePoints });
  });

  test('a space after the comma parts a number from the estimate', () => {
    expect(read('Pier, 12, 5')).toEqual(['Pier, 12', 5]);
  });

  test.each(['0.3', '-1', '1000', 'five', '1e2', 'NaN'])('%s is refused and quoted', (estimate) => {
    expect(read(`Tide table, ${estimate}, @Ben`)).toBe(
      `“${estimate}” isn’t an estimate; it must be a multiple of 0.5 from 0 to 999.5.`,
    );
  });

  test.each(['Tide table', 'Tide table, @Ben', '5', 'Tide table,, <@U2>'])('%j has no estimate', (line) => {
    expect(read(line)).toBe('The estimate is missing. Write: title, estimate, @owner.');
  });

  test('a line with an estimate alone has no title', () => {
    expect(read(', 5')).toBe('The title is missing. Write: title, estimate, @owner.');
  });
});

describe('owners are members of the team', () => {
  test.each<[string, string[]]>([
    ['@Ben', ['U2']],
    ['@ben', ['U2']],
    ['Ben', ['U2']],
    ['@Ben Ode', ['U2']],
    ['<@U2>', ['U2']],
    ['<@U2|ben.ode>', ['U2']],
    ['@U2', ['U2']],
    ['@Ana Lima @Ben Ode', ['U1', 'U2']],
    ['@Ana Lima, @Ben', ['U1', 'U2']],
    ['<@U1> <@U2|ben>', ['U1', 'U2']],
    ['<@U1><@U2>', ['U1', 'U2']],
    ['Ben and Chi Wen', ['U2', 'U3']],
    ['@Ben & @Chi', ['U2', 'U3']],
    ['@Ben, @Ben Ode, <@U2>', ['U2']],
    ['@Ben  Ode', ['U2']],
    ['', []],
  ])('%j', (owners, ownerIds) => {
    expect(parseCardLine(`Tide table, 5, ${owners}`, PEOPLE)).toMatchObject({ ownerIds });
    expect(parseCardLine(`Tide table\t5\t${owners}`, PEOPLE)).toMatchObject({ ownerIds });
  });

  test.each<[string, unknown[]]>([
    ['Ben, Tide table, 5', ['Tide table', 5, 'U2']],
    ['@Ben, Tide table, 5', ['Tide table', 5, 'U2']],
    ['Ben, Chi, Tide table, 5', ['Tide table', 5, 'U2', 'U3']],
    ['Ben and Chi; Tide table; 5', ['Tide table', 5, 'U2', 'U3']],
    ['@Ben Tide table, 5', ['Tide table', 5, 'U2']],
    ['@Ben Ode: Tide table (5)', ['Tide table', 5, 'U2']],
    ['<@U2> Tide table 5 pts', ['Tide table', 5, 'U2']],
    ['Ben Ode, 5', ['Ben Ode', 5]],
    ['Zed, Tide table, 5', ['Zed, Tide table', 5]],
  ])('may come first: %j', (line, expected) => expect(read(line)).toEqual(expected));

  test('a name before the title that two members share is not guessed either', () => {
    expect(read('Ana, Tide table, 5')).toMatch(/^Ana may be Ana Lima/);
  });

  test('a name that holds a comma is found whole in a column of its own', () => {
    expect(read('Tide table\t5\tOkoro, Dayo')).toEqual(['Tide table', 5, 'U5']);
  });

  test('somebody else is refused, with the members there are', () => {
    expect(read('Tide table, 5, @Zed')).toBe(
      '@Zed isn’t a member of the team. Members: Ana Lima, Ben Ode, Chi Wen, Ana Reis, Okoro, Dayo.',
    );
    expect(read('Tide table, 5, <@U9>')).toMatch(/^<@U9> isn’t a member of the team\./);
  });

  test('a first name that two members share is not guessed', () => {
    expect(read('Tide table, 5, @Ana')).toBe(
      '@Ana may be Ana Lima (@U1) or Ana Reis (@U4); write the whole name, or what is in brackets.',
    );
  });
});

describe('a key may come before the title', () => {
  test.each<[string, unknown[]]>([
    ['LP-7: Tide table, 5', ['LP-7', 'Tide table', 5]],
    ['LP-7:Tide table, 5', ['LP-7', 'Tide table', 5]],
    ['LP-7 Tide table, 5', ['LP-7', 'Tide table', 5]],
    ['lp-7: Tide table, 5', ['lp-7', 'Tide table', 5]],
    ['Phase-2 rollout, 5', ['Phase-2 rollout', 5]],
    ['LP-7, 5', ['LP-7', 5]],
    ['[LP-7] Tide table (5)', ['LP-7', 'Tide table', 5]],
    ['[lp-7]: Tide table, 5', ['lp-7', 'Tide table', 5]],
    ['LP-7 – Tide table, 5', ['LP-7', 'Tide table', 5]],
    ['[draft] Tide table, 5', ['[draft] Tide table', 5]],
    ['Note: tide table, 5', ['Note: tide table', 5]],
  ])('%j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  test('the same key on two lines is named by line, in upper or lower case', () => {
    const { cards, bad } = parseCards('LP-7: Tides, 5\nCranes, 3\nlp-7: Berths, 2', PEOPLE);
    expect(cards.map(({ lineNumber }) => lineNumber)).toEqual([1, 2]);
    expect(bad).toEqual([{ lineNumber: 3, problem: { code: 'name-twice', name: 'lp-7', line: 1 } }]);
  });
});

describe('a whole text', () => {
  test.each(['\n', '\r\n', '\r'])('lines may end in %j, and blank lines count but hold no card', (end) => {
    const { cards, bad } = parseCards(
      ['', 'Tides, 5', ' \t ', 'Cranes, 0.3', 'Berths, 1', ''].join(end),
      PEOPLE,
    );
    expect(cards.map(({ lineNumber, title }) => [lineNumber, title])).toEqual([
      [2, 'Tides'],
      [5, 'Berths'],
    ]);
    expect(bad).toEqual([
      {
        lineNumber: 4,
        problem: { code: 'not-an-estimate', typed: '0.3', most: 999.5 },
      },
    ]);
  });

  test('a list in disguise is read or named line by line, one line each', () => {
    const text = [
      '# Sprint 12',
      '- [ ] Tides — 5 pts',
      '- [x] [LP-7] Cranes (2,5) @Ben',
      '• Pilots',
      '3. Berths: 3',
      'LP-7 - Cranes, 2½, @Zed',
      '───',
      '| Buoys | 1 | Chi |',
      'Total: 11.5 pts',
    ].join('\n');
    const { cards, bad } = parseCards(text, PEOPLE);
    expect(cards.map(({ lineNumber, title }) => [lineNumber, title])).toEqual([
      [2, 'Tides'],
      [3, 'Cranes'],
      [8, 'Buoys'],
    ]);
    expect(bad.map(({ lineNumber, problem }) => [lineNumber, problem.code])).toEqual([
      [1, 'estimate-in-title'],
      [4, 'no-estimate'],
      [5, 'estimate-in-title'],
      [6, 'no-such-person'],
      [7, 'no-estimate'],
      [9, 'total'],
    ]);
  });

  test.each([
    ['Fix the lamp 3', 'Fix the lamp', '3'],
    ['3. Berths: 25 @Ben', 'Berths', '25'],
  ])(
    'a number at the end of “%s” may be of the title, so it is asked for with a comma',
    (text, title, typed) => {
      const [line] = parseCards(text, PEOPLE).bad;
      expect(line?.problem).toEqual({ code: 'estimate-in-title', title, typed });
    },
  );

  test.each<[string, unknown[]]>([
    ['Review the plan with @Ben, 3', ['Review the plan with @Ben', 3]],
    ['Hand the lamp to @Ben, 3, @Ben', ['Hand the lamp to @Ben', 3, 'U2']],
    ['Tides for @Ben (3)', ['Tides for @Ben', 3]],
  ])('somebody whom the title’s sentence names is no owner: “%s”', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  test.each(['Fix the lamp @Ben 3', 'Fix the lamp, @Ben 3', '- Fix the lamp: @Ben 3'])(
    'a number behind an owner is the estimate: “%s”',
    (text) => expect(read(text)).toEqual(['Fix the lamp', 3, 'U2']),
  );

  test.each(['-', '?', 'none', 'nobody', 'Unassigned', 'TBD'])(
    '“%s” in place of an owner is nobody',
    (owner) => {
      expect(read(`Fix the lamp, 3, ${owner}`)).toEqual(['Fix the lamp', 3]);
      const called = [{ userId: 'U6', name: owner }];
      expect(parseCardLine(`Fix the lamp, 3, ${owner}`, called)).toMatchObject({ ownerIds: ['U6'] });
    },
  );

  test.each([
    ['Fix the lamp, Ben, 3', ['Fix the lamp', 3, 'U2']],
    ['Fix the lamp, 3, Ben/Chi', ['Fix the lamp', 3, 'U2', 'U3']],
    ['LP-7, Fix the lamp, 3, Ben', ['LP-7', 'Fix the lamp', 3, 'U2']],
    ['berth-7; Fix the lamp; 3', ['berth-7', 'Fix the lamp', 3]],
    ['Sort lamps, Ben, ropes, 3', ['Sort lamps, Ben, ropes', 3]],
  ])('%j has its columns in another order', (line, expected) => expect(read(line)).toEqual(expected));

  test('nothing at all is no card and no mistake', () => {
    expect(parseCards('', PEOPLE)).toEqual({ cards: [], bad: [] });
  });

  test('a hundred cards are read, each in its own way', () => {
    const text = Array.from({ length: 100 }, (_, i) => `Card ${i + 1}${i % 2 ? '\t' : ', '}${i / 2}`).join(
      '\r\n',
    );
    const { cards, bad } = parseCards(text, PEOPLE);
    expect(bad).toEqual([]);
    expect(cards.map(({ estimatePoints }) => estimatePoints)).toEqual(
      Array.from({ length: 100 }, (_, i) => i / 2),
    );
  });

  test('a title of 200 characters is read, one of 201 refused', () => {
    expect(read(`${'x'.repeat(200)}, 5`)).toEqual(['x'.repeat(200), 5]);
    expect(read(`${'x'.repeat(201)}, 5`)).toBe('The title has 201 characters; 200 is the most.');
  });

  test.each(['<!channel>, 5', '*bold* _it_ `code`, 5', '{"a": 1}, 5', '<script>alert(1)</script>, 5'])(
    'hostile text is a title like any other: %j',
    (line) => {
      expect(read(line)).toEqual([line.slice(0, -3), 5]);
    },
  );

  test('what is quoted back from a line is short', () => {
    for (const line of [`Tides, ${'9'.repeat(5_000)}`, `Tides, 5, @${'z'.repeat(5_000)}`]) {
      expect((read(line) as string).length).toBeLessThan(250);
    }
  });
});

const title = fc
  .string({ minLength: 1, maxLength: 60, unit: 'grapheme' })
  .map((text) => text.replace(/\s+/g, ' ').trim())
  .filter((text) => text !== '' && text.length <= 200);
/** Not as if it began with a short name or with none. */
const plainTitle = title.filter((text) => !/^(?::|\[?[A-Za-z][A-Za-z0-9]*-\d+)/.test(text));
/** Or as if it did. */
const anyTitle = fc
  .tuple(
    fc.constantFrom(
      '',
      ':',
      ': ',
      'quay-55, ',
      'Phase-2: ',
      'PIER-3 ',
      '[quay-5] ',
      '"PIER-3 ',
      '@Ben ',
      'Ben: ',
    ),
    title,
  )
  .map(([beginning, text]) => `${beginning}${text}`.trim());
const estimate = fc.integer({ min: 0, max: 1_999 }).map((halves) => halves / 2);
const owners = fc.uniqueArray(fc.constantFrom(...PEOPLE));

describe('any card reads back the same', () => {
  test('as a line with quotes and commas', () => {
    fc.assert(
      fc.property(plainTitle, estimate, owners, (text, points, people) => {
        const line = [
          `"${text.replaceAll('"', '""')}"`,
          points,
          ...people.map(({ userId }) => `<@${userId}>`),
        ];
        expect(read(line.join(','))).toEqual([text, points, ...people.map(({ userId }) => userId)]);
      }),
    );
  });

  test('as the line that formatCardLine makes, with or without a key', () => {
    fc.assert(
      fc.property(anyTitle, estimate, owners, fc.boolean(), (text, points, people, hasKey) => {
        const key = hasKey ? 'LP-7' : undefined;
        const line = formatCardLine(
          { key, title: text },
          String(points),
          people.map(({ name }) => name),
        );
        expect(read(line)).toEqual([
          ...(key ? [key] : []),
          text,
          points,
          ...people.map(({ userId }) => userId),
        ]);
      }),
    );
  });

  test('and no text at all makes the reading fail', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        const { cards, bad } = parseCards(text, PEOPLE);
        const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '');
        expect(cards.length + bad.length).toBe(lines.length);
      }),
    );
  });
});

describe('a long line takes no longer than its length asks for', () => {
  const LENGTH = 200_000;
  test.each([
    ['spaces', `a, 5, ${' '.repeat(LENGTH)}x`],
    ['quotes', `${'"'.repeat(LENGTH)}, 5`],
    ['quoted fields', `${'"a"b,'.repeat(LENGTH / 5)}5`],
    ['commas', `${','.repeat(LENGTH)}5`],
    ['mentions', `a, 5, ${'<@U1>'.repeat(LENGTH / 5)}`],
    ['half a key', `${'A1'.repeat(LENGTH / 2)}-${'1'.repeat(9)}, 5`],
    ['open brackets', `a, 5, ${'<@U1|'.repeat(LENGTH / 5)}`],
    ['round brackets', '('.repeat(LENGTH)],
    ['estimates in brackets', `${'(5)'.repeat(LENGTH / 3)} x`],
    ['estimates with a unit', `${'5 pts '.repeat(LENGTH / 6)} x`],
    ['list marks', '- '.repeat(LENGTH / 2)],
    ['rules', `${'-'.repeat(LENGTH)}x`],
    ['strokes', '| '.repeat(LENGTH / 2)],
    ['lines', 'Tide table, 5\n'.repeat(LENGTH / 14)],
  ])('%s', (_, line) => {
    const before = process.cpuUsage();
    parseCards(line, PEOPLE);
    const { user } = process.cpuUsage(before);
    // Work that grew with the square of the length would take minutes.
    expect(user / 1_000_000).toBeLessThan(5);
  });
});
