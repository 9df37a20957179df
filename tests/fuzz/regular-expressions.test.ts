/**
 * No text from outside makes a regular expression of the product slow. Each one is collected from the source and fed
 * with what makes a badly built one stumble; the time is the processor's, so that a busy machine fails no test.
 */
import { describe, expect, it } from 'vitest';
import { ENGLISH } from '../../src/app/answering/answer-vocabulary.ts';
import { takeFreeTexts } from '../../src/app/answering/free-texts.ts';
import { withoutNames } from '../../src/app/export/export-sprints.ts';
import { withoutPerson } from '../../src/app/privacy/without-person.ts';
import {
  DAY_WORDS,
  isDayWords,
  readDay,
  readGoneDay,
  withMonthTwice,
  withoutLeadingDay,
} from '../../src/app/read-day.ts';
import { Refusal } from '../../src/app/refusal.ts';
import { visibleText } from '../../src/app/visible-text.ts';
import { drawableText } from '../../src/charts/chart-font.ts';
import { parseCommand } from '../../src/slack/commands/commands.ts';
import {
  parseForecastQuestion,
  parseRangeQuestion,
} from '../../src/slack/listeners/parse-advice-question.ts';
import { plainTyped } from '../../src/words/typed-text.ts';
import { share } from '../support/search-width.ts';
import { pumpedTexts, tokensOf } from './pumped-text.ts';
import { patternsIn, type SourcePattern, sourcePatterns } from './source-patterns.ts';

const SEED = 20261104;
/** The longest text that a person can send (`incoming.ts`). */
const LONGEST_TEXT = 40_000;
/** What takes time in proportion to the text is done in a thousandth of this. */
const SLOW_MS = 60;

const { literals, composed } = sourcePatterns();

/** Expressions that never see more than so many characters, and why. */
const SHORT: Readonly<Record<string, number>> = {
  // The digits of a number that JavaScript wrote out.
  'slack/views/closed-sprint-words.ts /\\B(?=(?:\\d{3})+$)/g': 22,
  // Three decimals, as its comment says.
  'app/read-number.ts /0+$/': 3,
};

/** What is put together from parts, and the function that is fed instead. */
const COMPOSED: Readonly<Record<string, (text: string) => unknown>> = {
  'app/answering/free-texts.ts': (text) => takeFreeTexts(text, ENGLISH, () => undefined),
  'app/export/export-sprints.ts': withoutNames(['Ana Lima', 'Ana', 'Zoë (he) [x]']),
  'app/read-day.ts': readDays,
  'app/visible-text.ts': visibleText,
  'app/privacy/without-person.ts': (text) =>
    withoutPerson(text, { userId: 'U0ANA', names: ['Ana Lima', 'Ana'] }),
  'charts/chart-font.ts': drawableText,
  'slack/commands/commands.ts': parseCommand,
  'slack/listeners/parse-advice-question.ts': readQuestions,
  'words/typed-text.ts': plainTyped,
};

function readDays(text: string): void {
  isDayWords(text);
  readDay(withMonthTwice(text), '2026-11-04');
  readGoneDay(text, '2026-11-04');
  withoutLeadingDay(text);
}

function readQuestions(text: string): void {
  for (const read of [parseRangeQuestion, parseForecastQuestion]) {
    try {
      read(text);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
    }
  }
}

/** Holds what makes text of people's hard for any expression: spaces, letters, marks, mentions, signs. */
const ANYTHING = '\\s\\d\\p{L}\\p{M}<@|>#`*ana';

/** As most of them are used: all matches in a text. */
function matchAll({ source, flags }: SourcePattern): (text: string) => void {
  const all = new RegExp(source, flags.includes('g') ? flags : `${flags}g`);
  const first = new RegExp(source, flags.replace('g', ''));
  return (text) => {
    first.test(text);
    text.replace(all, '');
  };
}

function cpuMs(work: () => void): number {
  const before = process.threadCpuUsage();
  work();
  const { user, system } = process.threadCpuUsage(before);
  return (user + system) / 1_000;
}

/** The first text that takes too long, shortened to be shown; short ones first, since some would never end. */
function slowText(use: (text: string) => void, source: string, flags: string, longest: number) {
  // In small steps at first: where work doubles with each sign, a large one would never end.
  for (const length of [24, 28, 32, 36, 40, 60, 150, 300, 1_000, 3_000, LONGEST_TEXT]) {
    for (const text of pumpedTexts(source, flags, Math.min(length, longest), SEED)) {
      // The least of three: other work of the thread is not the expression's fault.
      const once = cpuMs(() => use(text));
      if (
        once > SLOW_MS &&
        Math.min(
          once,
          cpuMs(() => use(text)),
          cpuMs(() => use(text)),
        ) > SLOW_MS
      ) {
        return { length, begins: text.slice(0, 60), ends: text.slice(-12) };
      }
    }
  }
  return undefined;
}

describe('no text makes a regular expression slow', () => {
  it.each(share(literals, 6).map((pattern) => [pattern.name, pattern] as const))('%s', (name, pattern) => {
    const longest = SHORT[name] ?? LONGEST_TEXT;
    expect(slowText(matchAll(pattern), pattern.source, pattern.flags, longest)).toBeUndefined();
  });

  it.each([
    ['a day', readDays],
    ['a question with days', readQuestions],
  ])('%s', (_what, use) => {
    expect(slowText(use, `by growing${DAY_WORDS}`, '', LONGEST_TEXT)).toBeUndefined();
  });

  it.each(Object.entries(COMPOSED))('what %s puts together', (_file, use) => {
    expect(slowText(use, ANYTHING, '', LONGEST_TEXT)).toBeUndefined();
  });
});

describe('the collection', () => {
  it('holds every expression, and one that is put together only where its function is fed', () => {
    expect(literals.length).toBeGreaterThan(150);
    expect([...new Set(composed)].sort()).toEqual(Object.keys(COMPOSED).sort());
  });

  it('finds expressions in every place, and those that are put together', () => {
    const { literals: found, composed: parts } = patternsIn(
      'x.ts',
      'const a = { b: [/c+/gu] };\nexport const d = (e: string) => e.split(/f|g/).map(() => new RegExp(e));',
    );
    expect(found.map(({ name }) => name)).toEqual(['x.ts /c+/gu', 'x.ts /f|g/']);
    expect(parts).toEqual(['x.ts']);
  });

  // The classics: nested repetition, an alternative that overlaps, two neighbours that share what they take. The last
  // but one is slow only behind a beginning of its own.
  it.each(
    share(
      [
        ['^(a+)+$', 24],
        ['^(?:\\w|-|a)*$', 24],
        ['\\s*\\s*$', 1_000],
        ['<![a-z]+(?:\\^[^|>]*)*\\|([^>]*)>', 40],
        ['\\s+$', LONGEST_TEXT / 2],
      ] as const,
      3,
    ),
  )('catches %s, which is badly built, by a text of no more than %i signs', (source, longest) => {
    const pattern = { name: '', file: '', source, flags: '' };
    expect(slowText(matchAll(pattern), source, '', longest)).toBeDefined();
  });

  it('lets pass what is well built', () => {
    const pattern = { name: '', file: '', source: '^\\d{1,3}$', flags: '' };
    expect(slowText(matchAll(pattern), pattern.source, '', LONGEST_TEXT)).toBeUndefined();
  });

  it('feeds an expression with what it looks for', () => {
    expect(tokensOf('<@([A-Z]+)>')).toEqual(expect.arrayContaining(['<', '@', '>']));
  });
});
