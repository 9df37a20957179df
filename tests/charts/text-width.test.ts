/** How wide texts are thought to be, beside what the drawing library measures in the bundled font. */
import { createCanvas, GlobalFonts } from '@napi-rs/canvas';
import { beforeAll, expect, test } from 'vitest';
import { chartFont, chartFontFiles } from '../../src/charts/chart-font.ts';
import { inLines, textWidthPx } from '../../src/charts/text-width.ts';

const TEXTS = [
  'pulled-in work',
  'finish everything: more than 9 in 10',
  'chance of surprise',
  'pessimistic: 85% by 12 Dec 2026',
  '1,234.5 points left',
  'Überraschungsarbeit, die niemand vorhersah',
  'kaikki työ, jota ei osattu odottaa',
  'niespodziewana praca',
  'travail imprévu, écart d’estimation',
];
const context = createCanvas(10, 10).getContext('2d');
beforeAll(() => {
  for (const file of chartFontFiles()) GlobalFonts.registerFromPath(file, chartFont);
});

test.each(TEXTS)('%s: hardly too narrow, and little too wide', (text) => {
  for (const weight of ['normal', 'bold'] as const) {
    context.font = `${weight} 14px ${chartFont}`;
    const off = textWidthPx(text, 14, weight) / context.measureText(text).width;
    expect(off).toBeGreaterThan(0.99);
    expect(off).toBeLessThan(1.1);
  }
});

test('the widest line counts, and lines break between words and within long ones', () => {
  expect(textWidthPx('a\nlonger', 10)).toBe(textWidthPx('longer', 10));
  const wordPx = textWidthPx('words', 10);
  expect(inLines('words words words', 10, 2 * wordPx + 10)).toEqual(['words words', 'words']);
  expect(inLines('words\nwords', 10, 100)).toEqual(['words', 'words']);
  expect(inLines('a wordswords', 10, wordPx + 1)).toEqual(['a wor', 'dswor', 'ds']);
});
