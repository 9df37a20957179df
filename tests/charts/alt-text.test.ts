import { describe, expect, test } from 'vitest';
import { fittingText, spokenName } from '../../src/charts/alt-texts.ts';

describe('the parts of texts for the ear', () => {
  test('the first version that fits is taken', () => {
    const long = 'a'.repeat(2_001);
    expect(fittingText([long, 'b'.repeat(2_000), 'c'])).toBe('b'.repeat(2_000));
  });

  test('a last version that is too long is cut to 2,000 characters, never within a sign', () => {
    expect(fittingText(['a'.repeat(3_000)])).toBe(`${'a'.repeat(1_999)}…`);
    const cut = fittingText([`a${'🌊'.repeat(1_500)}`]);
    expect(cut).toBe(`a${'🌊'.repeat(999)}…`);
    expect(fittingText([`${'🌊'.repeat(1_500)}`])).toBe(`${'🌊'.repeat(999)}…`);
  });

  test('a name is on one line and well formed', () => {
    expect(spokenName(' Harbour\n  team\t')).toBe('Harbour team');
    expect(spokenName('half \ud83c')).toBe('half \ufffd');
  });
});
