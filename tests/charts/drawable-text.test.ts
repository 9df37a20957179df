import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chartFontFiles, drawableText } from '../../src/charts/chart-font.ts';

/**
 * The characters a TrueType font maps, from the segments of its format 4 table
 * (OpenType specification, "cmap": header, encoding records, format 4).
 */
function charactersOf(file: string): Set<number> {
  const font = readFileSync(file);
  const tables = Array.from({ length: font.readUInt16BE(4) }, (_, index) => 12 + 16 * index);
  const cmapEntry = tables.find((entry) => font.toString('latin1', entry, entry + 4) === 'cmap') ?? 0;
  const cmap = font.readUInt32BE(cmapEntry + 8);
  const subtables = Array.from(
    { length: font.readUInt16BE(cmap + 2) },
    (_, index) => cmap + font.readUInt32BE(cmap + 8 + 8 * index),
  );
  const table = subtables.find((start) => font.readUInt16BE(start) === 4) ?? 0;
  const segmentBytes = font.readUInt16BE(table + 6);
  const characters = new Set<number>();
  for (let offset = 0; offset < segmentBytes; offset += 2) {
    const last = font.readUInt16BE(table + 14 + offset);
    const first = font.readUInt16BE(table + 16 + segmentBytes + offset);
    for (let code = first; code <= last && code < 0xffff; code++) characters.add(code);
  }
  return characters;
}

describe('text for the picture', () => {
  test.each(chartFontFiles())('every single character that is kept is in the font file %#', (file) => {
    const inFont = charactersOf(file);
    expect(inFont.size).toBeGreaterThan(300);
    const keptButMissing = Array.from({ length: 0xd800 }, (_, code) => code).filter(
      (code) => drawableText(String.fromCharCode(code)) === String.fromCharCode(code) && !inFont.has(code),
    );
    expect(keptButMissing).toEqual([]);
  });

  test.each([
    ['Håfen – “Straße”', 'Håfen – “Straße”'],
    ['Ebb 🌊 and flow', 'Ebb and flow'],
    ['Top 1️⃣', 'Top 1'],
    ['  two\nlines\t ', 'two lines'],
    ['Cafe\u0301', 'Café'],
  ])('%j is drawn as %j', (text, drawn) => {
    expect(drawableText(text)).toBe(drawn);
  });

  test.each(['Гавань', '港の灯', 'Sprint 港', 'مرفأ', '🌊', ' ', ''])(
    '%j is left out whole, since a part would mislead',
    (text) => {
      expect(drawableText(text)).toBeUndefined();
    },
  );
});
