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
