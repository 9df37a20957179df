import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { visibleText } from '../../src/app/visible-text.ts';
import { hostileText, UNWANTED } from '../fuzz/hostile-text.ts';

describe('visible text', () => {
  it.each([
    ['controls', 'a\u0000b\u001b[2Jc\u009bd', 'ab[2Jcd'],
    ['line ends of every kind, as line feeds', 'a\r\nb\rc\u2028d\u0085e\vf', 'a\nb\nc\nd\ne\nf'],
    // unicode.org/reports/tr9, "Explicit directional formatting characters"
    ['marks that turn the reading direction', 'a\u202eb\u2066c\u061cd', 'abcd'],
    ['marks that hide text', 'so\u00adft\u200b\ufeff\u{e0041}', 'soft'],
    ['halves of signs, as a sign that says so', 'a\ud800b', 'a\ufffdb'],
    ['marks stacked on a letter beyond eight', `e${'\u0301'.repeat(30)}x`, `e${'\u0301'.repeat(8)}x`],
  ])('is without %s', (_what, text, visible) => {
    expect(visibleText(text)).toBe(visible);
  });

  it.each(['Café\tnord\n2', 'می‌خواهم', '👩‍🚀 ⚓', 'שלום', 'हिन्दी', 'a  b'])(
    'keeps all that can be seen: %s',
    (text) => {
      expect(visibleText(text)).toBe(text);
    },
  );

  it('keeps eight marks on a letter, however many there are', () => {
    expect(visibleText(`e${'\u0301'.repeat(3_000_000)}!`)).toBe(`e${'\u0301'.repeat(8)}!`);
  });

  it('holds nothing unwanted for any input, and does not change a second time', () => {
    fc.assert(
      fc.property(hostileText(), (text) => {
        const visible = visibleText(text);
        expect(visible).not.toMatch(UNWANTED);
        expect(visibleText(visible)).toBe(visible);
      }),
      { numRuns: 500, seed: 20261104 },
    );
  });
});
