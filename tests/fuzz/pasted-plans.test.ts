/** Plans as people paste them from lists, tables and sheets: any mixture of layouts reads back, and slips are named by line. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseCards } from '../../src/app/planning/card-paste.ts';
import { search } from '../support/search-width.ts';
import { hostileText } from './hostile-text.ts';

const PEOPLE = [
  { userId: 'U1', name: 'Ana Lima' },
  { userId: 'U2', name: 'Ben Ode' },
];

interface Wanted {
  readonly title: string;
  readonly estimatePoints: number;
  readonly ownerId: string | undefined;
}

const WORDS = [
  'Tide',
  'table',
  'crane',
  'log',
  'berths 1 to 4',
  'for (big) ships',
  'v2.5',
  'C++',
  'import | export',
  '“fog”',
];
const title = fc
  .tuple(
    fc.array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: 4 }),
    fc.integer({ min: 100, max: 9_999 }),
  )
  .map(([words, mark]) => `Show ${words.join(' ')} no ${mark} again`);
const wanted: fc.Arbitrary<Wanted> = fc.record({
  title,
  estimatePoints: fc.integer({ min: 0, max: 60 }).map((halves) => halves / 2),
  ownerId: fc.constantFrom(undefined, 'U1', 'U2'),
});

const mark = fc.constantFrom('', '- ', '* ', '• ', '1. ', '12) ', '[ ] ', '- [x] ', '  – ');
const NAMES: Record<string, string> = { U1: 'Ana Lima', U2: 'Ben' };

/** A card in one of the layouts. */
const LAYOUTS: readonly ((card: Wanted, points: string, owner: string) => string)[] = [
  ({ title: t }, p, owner) => [t, p, owner].filter((part) => part !== '').join(', '),
  ({ title: t }, p, owner) => [t, p, owner].join('\t'),
  ({ title: t }, p, owner) => [t, owner, p].join('\t'),
  ({ title: t }, p, owner) => [t, `${p} pts`, owner].join('; '),
  ({ title: t }, p, owner) => `${t} (${p}) ${owner}`,
  ({ title: t }, p, owner) => `${t} [${p} points], ${owner}`,
  ({ title: t }, p, owner) => `${t}: ${p} pts ${owner === '' ? '' : `– ${owner}`}`,
  ({ title: t }, p, owner) => `(${p}) ${t} ${owner}`,
];

function row({ title: t }: Wanted, points: string, owner: string): string {
  return `| ${t.replaceAll('|', '/')} | ${points} | ${owner} |`;
}

const line = fc
  .record({
    card: wanted,
    layout: fc.constantFrom(...LAYOUTS),
    mark,
    isRow: fc.boolean(),
    comma: fc.boolean(),
    isMention: fc.boolean(),
  })
  .map(({ card, layout, mark, isRow, comma, isMention }) => {
    const points = String(card.estimatePoints).replace('.', comma ? ',' : '.');
    const { ownerId } = card;
    const owner = ownerId === undefined ? '' : isMention ? `<@${ownerId}|x>` : `@${NAMES[ownerId]}`;
    const text = isRow ? row(card, points, owner) : `${mark}${layout(card, points, owner)}`;
    return { text, card: isRow ? { ...card, title: card.title.replaceAll('|', '/') } : card };
  });

test('cards in any mixture of layouts are read as they are meant', () => {
  fc.assert(
    fc.property(fc.uniqueArray(line, { maxLength: 12, selector: ({ card }) => card.title }), (lines) => {
      const { cards, bad } = parseCards(lines.map(({ text }) => text).join('\n'), PEOPLE);
      expect(bad).toEqual([]);
      expect(cards.map(({ title: t, estimatePoints, ownerIds }) => [t, estimatePoints, ownerIds[0]])).toEqual(
        lines.map(({ card }) => [card.title, card.estimatePoints, card.ownerId]),
      );
    }),
    search(1_000),
  );
});

test('a line without an estimate is named by its number among good ones, which are read anyway', () => {
  fc.assert(
    fc.property(fc.array(line, { maxLength: 5 }), mark, title, fc.nat(5), (lines, listMark, lost, at) => {
      const texts = [...new Map(lines.map(({ text, card }) => [card.title, text])).values()];
      const place = Math.min(at, texts.length);
      const all = [...texts.slice(0, place), `${listMark}${lost}`, ...texts.slice(place)];
      const { cards, bad } = parseCards(all.join('\n'), PEOPLE);
      expect(bad.map(({ lineNumber }) => lineNumber)).toEqual([place + 1]);
      expect(cards).toHaveLength(texts.length);
    }),
    search(500),
  );
});

test('whatever is pasted, each line is a card, is named, or holds nothing', () => {
  fc.assert(
    fc.property(fc.array(hostileText(), { maxLength: 6 }), (lines) => {
      const text = lines.join('\n');
      const { cards, bad } = parseCards(text, PEOPLE);
      const places = [...cards, ...bad].map(({ lineNumber }) => lineNumber);
      expect(new Set(places).size).toBe(places.length);
      for (const { title: t, estimatePoints } of cards) {
        expect(t.trim()).toBe(t);
        expect(t).not.toBe('');
        expect(Number.isInteger(estimatePoints * 2)).toBe(true);
      }
    }),
    search(500),
  );
});
