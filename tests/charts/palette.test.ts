import { describe, expect, test } from 'vitest';
import { palette } from '../../src/charts/chart-theme.ts';

/** Colours in which text is set, and of marks that mean something. */
const textColours = [palette.ink, palette.quietInk, palette.left];
const { card, cardEdge, gridLine, adviceFill, ordinaryFill, ...meaning } = palette;
const markColours = Object.values(meaning);

/** Relative luminance and contrast as WCAG 2.2 defines them (w3.org/TR/WCAG22, glossary). */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((start) => {
    const share = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

describe('the colours of charts', () => {
  test('the contrast formula gives 21 for black on white', () => {
    // WCAG 2.2, glossary: contrast ratios range from 1 to 21.
    expect(contrast('#000000', '#ffffff')).toBe(21);
  });

  test.each(textColours)('text in %s has a contrast of at least 4.5 on the card', (colour) => {
    // WCAG 2.2, success criterion 1.4.3.
    expect(contrast(colour, palette.card)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(markColours)('marks in %s have a contrast of at least 3 on the card', (colour) => {
    // WCAG 2.2, success criterion 1.4.11.
    expect(contrast(colour, palette.card)).toBeGreaterThanOrEqual(3);
  });

  test('the hues are those of Okabe and Ito: blue, bluish green, vermillion and reddish purple', () => {
    // Okabe and Ito, Color Universal Design (2008); hex values as in R's palette.colors("Okabe-Ito").
    expect([palette.left, palette.pulledIn, palette.surprise, palette.advice]).toEqual([
      '#0072b2',
      '#009e73',
      '#d55e00',
      '#cc79a7',
    ]);
    expect([palette.velocity, palette.signal]).toEqual(['#0072b2', '#d55e00']);
  });
});
