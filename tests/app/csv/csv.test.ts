import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CSV_COLUMNS, IMPORTED_KINDS } from '../../../src/app/csv/csv-columns.ts';
import { csvRecords } from '../../../src/app/csv/csv-lines.ts';
import { readTable } from '../../../src/app/csv/read-table.ts';
import { escapeFormula, plainDecimal, unescapeFormula } from '../../../src/app/csv/write-csv.ts';
import { lineProblemWords } from '../../../src/words/import-problems.ts';
import { csvText } from '../../support/csv-text.ts';

describe('a number in digits', () => {
  test('reads back as the same number, and has no exponent', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = plainDecimal(value);
        expect(text).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Number(text)).toBe(value === 0 ? 0 : value);
      }),
    );
  });

  test.each([
    [0.5, '0.5'],
    [-0, '0'],
    [1e21, `1${'0'.repeat(21)}`],
    [-1.25e-7, '-0.000000125'],
    [1.5e22, '15000000000000000000000'],
  ])('%d is written as %s', (value, text) => {
    expect(plainDecimal(value)).toBe(text);
  });

  test('what is no number is not written', () => {
    expect(() => plainDecimal(Number.NaN)).toThrow(RangeError);
    expect(() => plainDecimal(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});

// The signs that OWASP lists under "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection), and a person's own apostrophe.
const SIGNS = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

describe('text that begins like a formula', () => {
  test.each(SIGNS.map((sign) => [JSON.stringify(sign), sign]))(
    'with %s gets an apostrophe',
    (_name, sign) => {
      expect(escapeFormula(`${sign}1+1`)).toBe(`'${sign}1+1`);
    },
  );

  test.each(['Tide table', '', "it's", "'quoted'", '1-2', ' =1', 'a=b'])('and “%s” does not', (text) => {
    expect(escapeFormula(text)).toBe(text);
  });

  test('comes back exactly, with the apostrophes that it had itself', () => {
    const part = fc.constantFrom(...SIGNS, "'", 'a', ' ', '1');
    fc.assert(
      fc.property(
        fc.array(part, { maxLength: 6 }).map((parts) => parts.join('')),
        (text) => {
          expect(unescapeFormula(escapeFormula(text))).toBe(text);
          expect(escapeFormula(text)).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
        },
      ),
    );
  });
});

describe('a written file', () => {
  const text = csvText('answers', [
    { sprint: '=cmd', card: 1, day: '2026-11-03', left: -2.5, note: 'a "b", c\nd;e' },
  ]);

  test('begins with a byte order mark, has the names of the columns, and ends its lines with CR LF', () => {
    expect(text.startsWith('\uFEFFsprint,sprint first day,card,day,answer,')).toBe(true);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.split('\r\n')).toHaveLength(3);
  });

  test('is read by another reader of RFC 4180 as it was meant; numbers are numbers, text is escapeFormula', () => {
    const [row] = parse(text, { columns: true, bom: true }) as Record<string, string>[];
    expect(row).toMatchObject({
      sprint: "'=cmd",
      card: '1',
      left: '-2.5',
      note: 'a "b", c\nd;e',
      worked: '',
    });
  });

  test('holds no control characters besides tabs and line ends', () => {
    expect(csvText('cards', [{ title: 'a\u0000b\u001b[31mc\r\nd' }])).toContain('"ab[31mc\nd"');
  });
});

describe('records', () => {
  test('are named by the line on which they begin, through cells of several lines and blank lines', () => {
    const { records } = csvRecords('a,b\r\n\r\n1,"x\ny"\r\n,,\r\n2,z', ',');
    expect(records.map(({ lineNumber, cells }) => [lineNumber, ...cells])).toEqual([
      [1, 'a', 'b'],
      [3, '1', 'x\ny'],
      [6, '2', 'z'],
    ]);
  });

  test.each(['\n', '\r\n', '\r'])('are counted right when lines end in %j', (end) => {
    const lines = ['', 'a,b', '', '', '1,"x', '', 'y"', '', '"z', '",', '2', '', '', '4,"x"y', '5', ''];
    const { records, bad } = csvRecords(lines.join(end), ',');
    expect(records.map(({ lineNumber }) => lineNumber)).toEqual([2, 5, 9, 11, 15]);
    expect(bad.map(({ lineNumber }) => lineNumber)).toEqual([14]);
  });

  test('with a misplaced quote are named, and those after them are read', () => {
    const { records, bad } = csvRecords('a,b\n1,x"y\n2,"z" z\n3,ok\n4,"never\n5,ok', ',');
    expect(bad.map(({ lineNumber }) => lineNumber)).toEqual([2, 3, 5]);
    expect(records.map(({ lineNumber }) => lineNumber)).toEqual([1, 4, 6]);
  });

  test('are given up after too many misplaced quotes, rather than read again and again', () => {
    const { bad } = csvRecords(`a,b\n${'1,x"y\n'.repeat(10_000)}`, ',');
    expect(bad).toHaveLength(21);
    expect(bad.at(-1)?.problem).toEqual({ code: 'too-many-quotes' });
  });

  test('that have no end are named as such, and those after them are read', () => {
    const { records, bad } = csvRecords(`a,b\n1,${'x'.repeat(100_001)}\n2,ok`, ',');
    expect(bad).toEqual([{ lineNumber: 2, problem: { code: 'endless-line', most: 100_000 } }]);
    expect(records.map(({ lineNumber }) => lineNumber)).toEqual([1, 3]);
  });
});

const table = (text: string) => {
  const read = readTable({ fileName: 'a.csv', text }, IMPORTED_KINDS);
  if ('code' in read) throw new Error(lineProblemWords(read));
  return read;
};
const refused = (text: string) => {
  const read = readTable({ fileName: 'a.csv', text }, IMPORTED_KINDS);
  if (!('code' in read)) throw new Error('it was read');
  return lineProblemWords(read);
};

describe('a table', () => {
  test('whose first line has no end is refused with that reason', () => {
    expect(refused('x'.repeat(100_002))).toMatch(/^line 1: it has more than 100,000 characters/);
  });

  test.each(IMPORTED_KINDS)('with all columns of %s is known as such, in any order and case', (kind) => {
    const names = CSV_COLUMNS[kind].map(({ name }) => name.toUpperCase().replaceAll(' ', '_'));
    expect(table(names.toReversed().join(',')).kind).toBe(kind);
  });

  test('knows every other name of every column', () => {
    for (const kind of IMPORTED_KINDS) {
      for (const { name, aliases } of CSV_COLUMNS[kind]) {
        for (const alias of aliases) {
          const others = CSV_COLUMNS[kind].filter((other) => other.use === 'required' && other.name !== name);
          const read = table([alias, ...others.map((other) => other.name)].join(','));
          expect([alias, read.kind, read.has(name as never)]).toEqual([alias, kind, true]);
        }
      }
    }
  });

  test.each([
    ['commas', ','],
    ['semicolons', ';'],
    ['tabs', '\t'],
  ])('may be parted by %s', (_name, separator) => {
    const text = ['name|first day|last day|commitment', 'A|2026-01-05|2026-01-16|20'].join('\n');
    const read = table(text.replaceAll('|', separator));
    expect(read.lines.map((line) => (line.cell as (name: string) => string)('commitment'))).toEqual(['20']);
  });

  test('names columns that mean nothing here', () => {
    expect(table('name,first day,last day,commitment,Mood,').unused).toEqual(['Mood']);
  });

  test('prefers a column’s own name to another name for it', () => {
    const read = table('title,name,first day,last day,commitment\nb,a,,,');
    expect(read.unused).toEqual(['title']);
    expect(read.lines.map((line) => (line.cell as (name: string) => string)('name'))).toEqual(['a']);
  });

  test.each([
    ['nothing', '', 'the file is empty'],
    ['blank lines', '\n \n', 'the file is empty'],
    ['no names of columns', 'Harbour 1,2026-01-05,2026-01-16,20', 'its first line doesn’t name the columns'],
    ['a column too few', 'name,first day,last day,velocity', 'no column “commitment”'],
    ['two columns that mean the same', 'name,start,begin,end,commitment', '“start” and “begin”'],
    ['a spreadsheet’s own format', 'PK\u0003\u0004…', 'save or download the sheet as CSV'],
    ['a NUL', 'name,first day\0', 'save or download the sheet as CSV'],
    ['a thousand columns', 'a,'.repeat(1_000), 'columns; 100 is the most'],
    ['a million columns', 'a,'.repeat(1_000_000), 'more than 100,000 characters'],
    ['ten million characters', 'a'.repeat(10_000_000), '10,000,000 characters'],
    ['too many lines', `name,first day,last day,commitment\n${'a\n'.repeat(50_001)}`, '50,001 lines'],
  ])('is refused in words when it has %s', (_name, text, words) => {
    expect(refused(text)).toContain(words);
  });

  test('names lines that have more cells than there are columns', () => {
    const { bad, lines } = table('name,first day,last day,commitment\na,b,c,d,e\na,b,c,d,,\na');
    expect(bad.map(({ lineNumber }) => lineNumber)).toEqual([2]);
    expect(lines.map(({ lineNumber }) => lineNumber)).toEqual([3, 4]);
  });
});

describe('any file', () => {
  test('it is read or refused in words, never a crash', () => {
    const chunk = fc.constantFrom(
      '"',
      ',',
      ';',
      '\t',
      '\n',
      '\r',
      '\0',
      'name',
      'first day',
      '=',
      '\uFEFF',
      '\uD800',
      '1',
      '￿',
    );
    fc.assert(
      fc.property(
        fc.array(chunk, { maxLength: 200 }).map((chunks) => chunks.join('')),
        (text) => {
          const read = readTable({ fileName: 'a.csv', text }, IMPORTED_KINDS);
          expect(['string', 'object']).toContain(typeof read);
        },
      ),
      { numRuns: 500 },
    );
  });
});
