/**
 * Every message, form, reply and chart in the made-up language: what is still English there doesn't come from the
 * message files, and what breaks a limit of the platform has no room for a longer language.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { speak } from '../../src/words/say.ts';
import { everyChart } from '../charts/every-chart.ts';
import { lookingAt } from '../charts/looking-at.ts';
import { everyView } from '../fuzz/every-view.ts';
import { expectFormFits, expectMessageFits } from '../slack/views/view-checks.ts';
import { pseudoLanguage } from './pseudo-language.ts';

/** What people typed in these views, in letters of no message. */
const TYPED = 'Ж 7';

/** What is the same in every language: what one types or copies to the letter, ids, zones, names of things. */
const SAME_EVERYWHERE =
  /`[^`]*`|“[^“”]*”|\/(?:loadline[^.,;:()]*|invite)|<[^<>]*>|&[a-z]+;|https?:\S+|[A-Z][a-z]+(?:\/[A-Z]\w+)+|\b(?:CSV|Loadline|UTC|UTF-8|Slack)\b|\b\w+\.(?:csv|json)\b|ABCDEFGHIJ-\d+|@\w+|\b(?:worked|away)\b/g;

/** Texts that a person reads: not the ids and values that travel along. */
function readIn(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(readIn);
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) =>
    typeof value === 'string' ? (['text', 'alt_text'].includes(key) ? [value] : []) : readIn(value),
  );
}

function englishIn(texts: readonly string[]): string[] {
  const lines = texts.flatMap((text) => text.replace(SAME_EVERYWHERE, ' ').split('\n'));
  return [...new Set(lines.filter((line) => /[A-Za-z]{3,}/.test(line)))];
}

let views: Record<string, object>;
beforeAll(() => {
  speak(pseudoLanguage());
  views = everyView(TYPED);
});
afterAll(() => speak(undefined));

describe('in another language', () => {
  test('nothing of a view is English any more', () => {
    const english = Object.entries(views).flatMap(([name, view]) =>
      englishIn(readIn(view)).map((text) => `${name}: ${text}`),
    );
    expect(english).toEqual([]);
  });

  test('every view fits the limits of the platform, with words that are 40% longer', () => {
    for (const view of Object.values(views)) {
      if ('blocks' in view && 'type' in view) expectFormFits(view as Parameters<typeof expectFormFits>[0]);
      else if ('blocks' in view) expectMessageFits(view as Parameters<typeof expectMessageFits>[0]);
    }
  });

  test('nothing of a chart or its description is English any more', async () => {
    for (const { name, picture, altText } of everyChart(TYPED)) {
      expect(englishIn([altText]), name).toEqual([]);
      await lookingAt(picture, ({ texts }) => expect(englishIn(texts), name).toEqual([]));
    }
  });

  test('every description of a chart fits the limit of the platform, with words that are 40% longer', () => {
    for (const { name, altText } of everyChart('Ж'.repeat(80))) {
      expect(altText.length, name).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
      // By leaving details out, not by cutting a sentence.
      expect(altText, name).not.toMatch(/…$/);
    }
  });
});
