import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseMrkdwn } from '../../../src/rehearsal/page/mrkdwn.ts';
import { mention } from '../../../src/words/people.ts';
import { plainTyped, shortened, shortenedMrkdwn, typed } from '../../../src/words/typed-text.ts';

describe('typed text', () => {
  it.each([
    ['a ping of the channel', '<!channel> look', '&lt;!channel&gt; look'],
    ['a ping of a person', '<@U0BEN>', '&lt;@U0BEN&gt;'],
    ['a link', '<https://harbour.example|free boats>', '&lt;https://harbour.example|free boats&gt;'],
    ['entities', 'Fish & chips &lt;3', 'Fish &amp; chips &amp;lt;3'],
    ['bold, italic and strike', '*now* _soon_ ~never~', '∗now∗ ˍsoonˍ ∼never∼'],
    ['code', '```rm``` `x`', 'ˋˋˋrmˋˋˋ ˋxˋ'],
    ['line ends and controls', 'one\r\n> two\u0000three\u2028four', 'one &gt; two three four'],
    ['reversed and hidden text', 'safe\u202Etxt.exe\u200B', 'safe txt.exe'],
    ['nothing', ' \n ', '–'],
  ])('turns %s into plain signs', (_what, text, safe) => {
    expect(typed(text)).toBe(safe);
  });

  it('leaves marks inside words, which format nothing', () => {
    expect(typed('tide_table_import 2*3*4')).toBe('tide_table_import 2*3*4');
  });

  it('of plain ASCII is the same beside a sign that is none, whatever may be skipped for it', () => {
    const ascii = fc.string({ unit: fc.constantFrom(..." \t\n!&*<>_`ab~'0-") });
    fc.assert(
      fc.property(ascii, (text) => {
        // Beside another sign, every rule is gone through.
        expect(plainTyped(`é a${text}a`)).toBe(`é ${plainTyped(`a${text}a`)}`);
        expect(typed(`* a${text}a`)).toBe(`∗ ${typed(`a${text}a`)}`);
      }),
      { numRuns: 500 },
    );
  });

  it('is always read as the very same single line of plain text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }),
        fc.constantFrom('', '*', '_', '~', '`', '```', '<!here>', '\n> '),
        (text, mark) => {
          const blocks = parseMrkdwn(`• ${typed(`${mark}${text}${mark}`)}.`);
          const [only] = blocks;
          expect(blocks).toHaveLength(1);
          expect(only).toMatchObject({ kind: 'list', items: [{ content: [{ kind: 'text' }] }] });
          expect(only?.kind === 'list' && only.items[0]?.content).toHaveLength(1);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('lets a mention be made of the platform’s ids only', () => {
    expect(mention('U0BEN')).toBe('<@U0BEN>');
    expect(mention('U0|<!here>')).toBe('U0|&lt;!here&gt;');
  });

  it('shows line ends in a label as spaces', () => {
    expect(plainTyped('Print\n\tthe  map')).toBe('Print the map');
  });
});

describe('shortening', () => {
  it('keeps a text that fits, to the letter', () => {
    expect(shortened('12345', 5)).toBe('12345');
    expect(shortenedMrkdwn('12345', 5)).toBe('12345');
  });

  it('ends a cut text with a sign that says so and keeps to the length', () => {
    expect(shortened('123456', 5)).toBe('1234…');
  });

  it('cuts no sign of two halves in half', () => {
    expect(shortened('abc⚓🚢🚢', 6)).toBe('abc⚓…');
  });

  it.each([
    ['an entity', 'abcd&amp;efgh', 8, 'abcd…'],
    ['a mention', 'abcd <@U0BEN> efgh', 10, 'abcd …'],
    ['code', 'abcd `cards` efgh', 9, 'abcd …'],
    ['bold', '*abcdefgh*', 6, 'abcd…'],
  ])('cuts %s as a whole', (_what, text, length, cut) => {
    expect(shortenedMrkdwn(text, length)).toBe(cut);
  });
});
