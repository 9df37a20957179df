import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { altTextOf, shortName } from '../../../src/words/charts/chart-text.ts';

describe('the description of a picture', () => {
  const withDetails = (length: number) => (details: number) =>
    Array.from({ length: details + 1 }, () => 'a'.repeat(length));

  test('has all its details where these fit into 1,000 characters', () => {
    // Ten sentences of 99 and nine blanks between them are 999 characters.
    expect(altTextOf(9, withDetails(99))).toHaveLength(999);
  });

  test('has as many as fit, else none', () => {
    expect(altTextOf(9, withDetails(100))).toHaveLength(9 * 100 + 8);
    expect(altTextOf(9, withDetails(600))).toHaveLength(600);
    expect(altTextOf(0, withDetails(100))).toHaveLength(100);
  });

  test('has as many as going through them one by one would find', () => {
    const lengths = fc.array(fc.nat({ max: 120 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(lengths, (sentences) => {
        const most = sentences.length - 1;
        const leftOut = (details: number) =>
          details < most ? [`${most - details} left out`.padEnd(15)] : [];
        const said = (details: number) => [
          ...sentences.slice(0, details + 1).map((length) => 'a'.repeat(length)),
          ...leftOut(details),
        ];
        const fits = (details: number) => said(details).join(' ').length <= 1_000;
        const found = Array.from({ length: most + 1 }, (_, i) => most - i).find(fits) ?? 0;
        expect(altTextOf(most, said)).toBe(said(found).join(' '));
      }),
    );
  });

  test('is cut only where even its summary is too long', () => {
    expect(altTextOf(9, withDetails(1_001))).toBe(`${'a'.repeat(999)}…`);
  });

  test('has names on one line, well formed and of 80 characters at most', () => {
    expect(shortName(' Harbour\n  team\t')).toBe('Harbour team');
    expect(shortName('half \ud83c')).toBe('half \ufffd');
    expect(shortName('a'.repeat(80))).toBe('a'.repeat(80));
    expect(shortName('a'.repeat(81))).toBe(`${'a'.repeat(79)}…`);
    expect(shortName('🌊'.repeat(41))).toBe(`${'🌊'.repeat(39)}…`);
  });
});
