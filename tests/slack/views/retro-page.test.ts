import { describe, expect, it } from 'vitest';
import { type RetroPictures, retroPage } from '../../../src/slack/views/retro-page.ts';
import { ANA, BEN, card, fact, retroOf, sprint, sprintCards, sprintFacts, team } from './view-examples.ts';

const NO_PICTURES: RetroPictures = { burndown: undefined, history: undefined };
const retro = retroOf(sprintCards, sprintFacts);

function htmlOf(of = retro, pictures = NO_PICTURES): string {
  return new TextDecoder().decode(retroPage(of, pictures).bytes);
}

/** Names of the elements in order; throws where one is not closed, or closed by another. */
function elementsOf(page: string): string[] {
  const open: string[] = [];
  const found: string[] = [];
  for (const [, slash, name = ''] of page.matchAll(/<(\/?)([a-z][a-z0-9]*)\b[^>]*>/g)) {
    if (slash) {
      if (open.pop() !== name) throw new Error(`</${name}> closes another element`);
      continue;
    }
    found.push(name);
    if (name !== 'meta' && name !== 'img') open.push(name);
  }
  if (open.length > 0) throw new Error(`not closed: ${open}`);
  return found;
}

const ALLOWED = [
  ...['html', 'head', 'meta', 'title', 'style', 'body', 'h1', 'h2', 'p', 'section', 'ul', 'li', 'div', 'img'],
  'footer',
];
const HOSTILE = `</title><script src="https://evil.example/x.js">alert(1)</script><img src=x onerror='steal()'>"&`;

describe('the printable page of a retrospective', () => {
  it('is one file named after the last day', () => {
    expect(retroPage(retro, NO_PICTURES).fileName).toBe('retrospective-2026-11-13.html');
  });

  it('holds the verdict, the goal, the numbers, days, cards, questions, room to write, and the caution', () => {
    const page = htmlOf();
    expect(elementsOf(page).filter((name) => name === 'h1' || name === 'h2')).toHaveLength(6);
    for (const words of [
      'Retrospective of Harbour 12',
      'Harbour 12: missed. Finished 13 of 18 points committed (72.2%).',
      'Goal: Skippers see tides before they book a berth.',
      'Velocity: 16 points',
      'Fri 6 Nov – dropped: LP-3 Print the harbour map (“The printer has left the quay”)',
      'LP-1 Import tide tables: grew most (surprise work +2)',
      'Could the pulled-in work have waited?',
      'What we agree to try',
      'don’t use them to appraise anyone or to compare teams',
    ]) {
      expect(page).toContain(words);
    }
    expect(page.match(/class="line"/g)).toHaveLength(6);
  });

  it('holds its charts, with their words for those who can’t see them', () => {
    const png = Uint8Array.from([137, 80, 78, 71]);
    const page = htmlOf(retro, {
      burndown: { png, altText: 'Burndown of Harbour 12: "5" left' },
      history: { png, altText: 'Kept share of 12 sprints' },
    });
    expect(page).toContain(
      '<img src="data:image/png;base64,iVBORw==" alt="Burndown of Harbour 12: &quot;5&quot; left">',
    );
    expect(page).toContain('alt="Kept share of 12 sprints"');
    expect(elementsOf(page).filter((name) => name === 'img')).toHaveLength(2);
  });

  it('runs nothing and asks for nothing from elsewhere', () => {
    const page = htmlOf();
    expect(page).toContain("default-src 'none'; style-src 'unsafe-inline'; img-src data:");
    expect(elementsOf(page).filter((name) => !ALLOWED.includes(name))).toEqual([]);
    expect(page).not.toMatch(/https?:|url\(|@import|\son\w+=/i);
  });

  it('shows what people typed as text, wherever they typed it', () => {
    const grown = { leftPoints: 9, surprisePoints: 4, note: HOSTILE };
    const page = htmlOf({
      ...retroOf(
        [card(1, { title: HOSTILE, key: HOSTILE, link: 'https://tracker.example/1' })],
        [fact(1, { cardId: 'card-1', day: '2026-11-03', ...grown })],
      ),
      team: { ...team, name: HOSTILE },
      sprint: { ...sprint, state: 'cancelled', name: HOSTILE },
      verdict: undefined,
    });
    expect(elementsOf(page).filter((name) => !ALLOWED.includes(name))).toEqual([]);
    expect(elementsOf(page)).not.toContain('img');
    expect(page).toContain('&lt;script src=&quot;https://evil.example/x.js&quot;&gt;');
    expect(page).not.toContain('tracker.example');
  });

  it('names nobody', () => {
    expect(htmlOf()).not.toMatch(new RegExp(`${ANA}|${BEN}|<@`));
  });

  it('is in step with a sprint without a verdict or anything that happened', () => {
    const empty = { ...retro, verdict: undefined, timeline: [], telling: [], questions: [] };
    const page = htmlOf({ ...empty, sprint: { ...sprint, state: 'open' } });
    expect(page).toContain('This is the sprint so far.');
    expect(page).toContain('Nothing was recorded after planning.');
    expect(elementsOf(page)).not.toContain('li');
  });
});
