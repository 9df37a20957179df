import { describe, expect, test } from 'vitest';
import type { KnownPerson } from '../../../src/app/planning/card-owners.ts';
import { parseCards } from '../../../src/app/planning/card-paste.ts';
import { readCardRows } from '../../../src/app/planning/card-rows.ts';
import type { CardColumns } from '../../../src/app/planning/named-columns.ts';
import { badRows } from '../../../src/words/card-file.ts';

const PEOPLE: readonly KnownPerson[] = [
  { userId: 'U1', name: 'Ana Lima' },
  { userId: 'U2', name: 'Ben Ode' },
  { userId: 'U5', name: 'Okoro, Dayo' },
];

function rowsOf(text: string, chosen?: CardColumns) {
  const read = readCardRows({ fileName: 'board.csv', text }, PEOPLE, chosen);
  if ('code' in read) throw new Error(read.code);
  return read;
}

/** What the lines that were made of the rows read as. */
function cardsOf(text: string, chosen?: CardColumns) {
  return parseCards(rowsOf(text, chosen).text, PEOPLE).cards.map((card) => [
    ...(card.key === undefined ? [] : [card.key]),
    card.title,
    card.estimatePoints,
    ...card.ownerIds,
    ...(card.link === undefined ? [] : [card.link]),
  ]);
}

describe('columns are known by their names, whatever their order', () => {
  test.each([
    ['commas', 'Title,Estimate,Owner\nTide table,5,Ben Ode\n'],
    ['semicolons and decimal commas', 'Estimate;Owner;Title\r\n5,0;@Ben;Tide table\r\n'],
    ['tabs, a byte order mark', '\uFEFFSummary\tStory points\tAssignee\nTide table\t5\t<@U2>\n'],
    ['a unit in brackets', 'Task,Effort (points),Assigned to\nTide table,5 pts,U2'],
    ['columns of no use', 'Status,Card,Sprint,Size,Priority,Owners\nopen,Tide table,Harbour 3,5,high,Ben'],
    ['names in capitals', 'NAME,STORY_POINTS,RESPONSIBLE\nTide table,5,ben ode'],
  ])('%s', (_name, text) => {
    expect(cardsOf(text)).toEqual([['Tide table', 5, 'U2']]);
  });

  test('links and short names of cards come along', () => {
    const text = 'Key,Summary,Points,URL\nBERTH-7,Fog horn,3,https://tracker.example.org/7\n,Lamps,1,';
    expect(cardsOf(text)).toEqual([
      ['BERTH-7', 'Fog horn', 3, 'https://tracker.example.org/7'],
      ['Lamps', 1],
    ]);
  });

  test('ids that nobody calls a card by are left out, as every column that means nothing here', () => {
    const read = rowsOf('Id,Title,Points\n1042,Fog horn,3');
    expect(read.columns).toEqual({ title: 1, estimate: 2 });
    expect(read.cards).toBe(1);
  });

  test('hours are no points', () => {
    expect(rowsOf('Title,Estimate (hours)\nFog horn,3').columns).toEqual({ title: 0 });
  });

  test('of several that may be the title the likeliest name is, not the first column', () => {
    expect(rowsOf('Description,Points,Title\nlong,3,Fog horn').columns).toEqual({ title: 2, estimate: 1 });
  });

  test('nothing is read before title and estimate have a column, and a chosen one counts', () => {
    const text = 'What,How much\nFog horn,3\n';
    expect(rowsOf(text)).toMatchObject({ columns: {}, rows: 2, cards: 0, bad: [], text: '' });
    expect(cardsOf('Title,What,Points\nx,Fog horn,3', { title: 1, estimate: 2 })).toEqual([['Fog horn', 3]]);
  });

  test('a file without names of columns loses no row', () => {
    const text = 'Fog horn;3;@Ben\nLamps;1;';
    expect(rowsOf(text).headers).toEqual(['', '', '']);
    expect(cardsOf(text, { title: 0, estimate: 1, owner: 2 })).toEqual([
      ['Fog horn', 3, 'U2'],
      ['Lamps', 1],
    ]);
  });
});

describe('a row becomes a line that reads back as the row', () => {
  test.each<[string, string, unknown[]]>([
    ['commas, quotes and line ends', '"Paint ""A"", B\r\nand C",5,Ana', ['Paint "A", B and C', 5, 'U1']],
    ['a title like a list', '"- [ ] 1. Lamps",0.5,', ['- [ ] 1. Lamps', 0.5]],
    ['a title like a number', '"2027",8,"Okoro, Dayo"', ['2027', 8, 'U5']],
    ['a name and a name', 'Lamps,2,"Ana Lima, Ben Ode"', ['Lamps', 2, 'U1', 'U2']],
    ['nobody’s card', 'Lamps,2,Unassigned', ['Lamps', 2]],
    [
      'an address in the title',
      'See https://a.example.org/1,2,Ben',
      ['See', 2, 'U2', 'https://a.example.org/1'],
    ],
  ])('%s', (_name, row, card) => {
    expect(cardsOf(`Title,Points,Owner\n${row}`)).toEqual([card]);
  });

  test('an address in the title gives way to the row’s link', () => {
    const text = 'Title,Points,Link\nSee https://a.example.org/1,2,https://b.example.org/2';
    expect(cardsOf(text)).toEqual([['See https://a.example.org/1', 2, 'https://b.example.org/2']]);
  });
});

describe('what is wrong is named by the line of the file, one line each', () => {
  test('blank lines and line ends within cells counted', () => {
    const text = [
      'Key,Title,Points,Owner,Link',
      'BERTH-1,"Fog',
      'horn",3,Ben Ode,',
      '',
      'BERTH-2,Lamps,soon,,',
      ',Ropes,,,',
      ',,2,,',
      'BERTH-1,Nets,1,,',
      ',Buoys,1,Zed,',
      ',Anchors,1,,tracker/7',
      ',Planks,1,,,,x',
    ].join('\n');
    expect(badRows(rowsOf(text))).toEqual([
      '• Line 5: “soon” isn’t an estimate; it must be a multiple of 0.5 from 0 to 999.5.',
      '• Line 6: The estimate is missing. Write: title, estimate, @owner.',
      '• Line 7: The title is missing. Write: title, estimate, @owner.',
      '• Line 8: BERTH-1 is already on line 2; each card needs a short name of its own.',
      '• Line 9: @Zed isn’t a member of the team. Members: Ana Lima, Ben Ode, Okoro, Dayo.',
      '• Line 10: A link begins with https:// or http://, holds no user name and no password, and has 500 characters at most.',
      '• Line 11: it has 7 cells for 5 columns. Put a cell that holds a comma in double quotes.',
    ]);
  });

  test.each([
    ['', 'empty'],
    ['PK\u0003\u0004', 'no-csv'],
    [`Title${',x'.repeat(100)}`, 'too-many-columns'],
  ])('a file that can’t be read at all: %j', (text, code) => {
    expect(readCardRows({ fileName: 'x', text }, PEOPLE)).toMatchObject({ code });
  });
});
