import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../src/app/csv/decode-text.ts';

const bytes = (...all: (number | string | Uint8Array)[]): Uint8Array =>
  Buffer.concat(
    all.map((one) => (typeof one === 'number' ? Buffer.from([one]) : Buffer.from(one as string))),
  );

const utf16 = (text: string, bigEndian: boolean): Buffer => {
  const little = Buffer.from(`\ufeff${text}`, 'utf16le');
  return bigEndian ? little.swap16() : little;
};

const TEXT = 'Estação 3,2026-11-02,21\r\nDünung „neu“,2026-11-16,€\n港,🚢,\t\n';

describe('text', () => {
  it.each([
    ['UTF-8', Buffer.from(TEXT)],
    ['UTF-8 with a byte order mark, which is left out', bytes(0xef, 0xbb, 0xbf, TEXT)],
    ['UTF-16, little end first', utf16(TEXT, false)],
    ['UTF-16, big end first', utf16(TEXT, true)],
  ])('in %s is read as it was written', (_encoding, given) => {
    expect(decodeText(given)).toBe(TEXT);
  });

  // unicode.org/Public/MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT
  it('in Windows-1252 is read when it is no UTF-8', () => {
    const given = bytes(
      'Esta',
      0xe7,
      0xe3,
      'o ',
      0x84,
      'neu',
      0x93,
      ' ',
      0x80,
      ' ',
      0x85,
      ' ',
      0x96,
      ' ',
      0xff,
    );
    expect(decodeText(given)).toBe('Estação „neu“ € … – ÿ');
  });

  it('may be empty, and may hold tabs and line ends of every kind', () => {
    expect(decodeText(bytes())).toBe('');
    expect(decodeText(bytes(0xef, 0xbb, 0xbf))).toBe('');
    expect(decodeText(bytes('a\tb\r\nc\rd\ve\f'))).toBe('a\tb\r\nc\rd\ve\f');
  });

  it('keeps a byte order mark that comes later: it belongs to a word', () => {
    expect(decodeText(Buffer.from('a\ufeffb'))).toBe('a\ufeffb');
  });

  it('in UTF-8 always comes back', () => {
    const signs = fc
      .string({ unit: 'grapheme' })
      .filter((text) => !/^\ufeff|[^\P{Cc}\t\n\v\f\r\u0085]/u.test(text));
    fc.assert(fc.property(signs, (text) => decodeText(Buffer.from(text)) === text));
  });
});

describe('what is no text', () => {
  it.each([
    ['a spreadsheet (a zip archive, APPNOTE.TXT 4.3.7)', bytes('PK', 3, 4, 20, 0, 6, 0)],
    ['a picture (PNG specification, 5.2)', bytes(0x89, 'PNG', 13, 10, 0x1a, 10)],
    ['UTF-16 without a byte order mark', utf16('name,first day', false).subarray(2)],
    ['half a sign of UTF-16', bytes(0xff, 0xfe, 0x41)],
    ['half a pair of UTF-16', bytes(0xff, 0xfe, 0x3d, 0xd8, 0x41, 0)],
    ['marked as UTF-8 without being any', bytes(0xef, 0xbb, 0xbf, 'Esta', 0xe7)],
    ['a byte that Windows-1252 does not define', bytes('Esta', 0xe7, 0x81)],
    ['colours of a terminal', bytes(0x1b, '[31mred')],
  ])('%s is not read', (_what, given) => {
    expect(decodeText(given)).toBeUndefined();
  });

  it('never makes it fail', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (given) => {
        const text = decodeText(given);
        return text === undefined || !text.includes('\0');
      }),
    );
  });
});
