import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lineList, lineSections } from '../../../src/slack/views/line-sections.ts';

const more = (count: number, firstLeftOut: number): string => `${count} more from ${firstLeftOut}`;
const textsOf = (title: string, lines: readonly string[], maxSections: number): string[] =>
  lineSections(lineList(title, lines, more), { maxSections }).map((block) => block.text?.text ?? '');

it('puts short lines into one section under their title', () => {
  expect(textsOf('Cards', ['a', 'b'], 3)).toEqual(['Cards\na\nb']);
});

it('makes nothing of no lines', () => {
  expect(textsOf('Cards', [], 3)).toEqual([]);
});

it('begins a new section where the next line would outgrow 3,000 characters', () => {
  const line = 'x'.repeat(1_499);
  expect(textsOf('', [line, line, 'y'], 3)).toEqual([`${line}\n${line}`, 'y']);
});

it('says how many lines are left out, and from which one on, when the sections are full', () => {
  const line = 'x'.repeat(1_300);
  expect(textsOf('', [line, line, line, line], 1)).toEqual([`${line}\n${line}\n2 more from 2`]);
});

it('accounts for every line and keeps to the limits, for all lines', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 4_000 }), { minLength: 1, maxLength: 40 }),
      fc.integer({ min: 1, max: 5 }),
      (lengths, maxSections) => {
        const lines = lengths.map((length, i) => `#${i} ${'x'.repeat(length)}`);
        const texts = textsOf('Cards', lines, maxSections);
        expect(texts.length).toBeLessThanOrEqual(maxSections);
        for (const text of texts) expect(text.length).toBeLessThanOrEqual(3_000);
        const shown = texts.join('\n').match(/^#/gm)?.length ?? 0;
        const leftOut = Number(/(\d+) more from/.exec(texts.at(-1) ?? '')?.[1] ?? 0);
        expect(shown + leftOut).toBe(lines.length);
      },
    ),
  );
});
