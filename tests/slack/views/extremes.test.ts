/**
 * The largest and the most hostile sprint that the use cases let in: 100 cards, titles of 200 characters,
 * every field full of what the platform could take for its own.
 */

import { describe, expect, it } from 'vitest';
import { cardLink } from '../../../src/app/cards/card-link.ts';
import { parseMrkdwn } from '../../../src/rehearsal/page/mrkdwn.ts';
import { BUTTONS, FORMS } from '../../../src/slack/commands/commands.ts';
import { INPUT } from '../../../src/slack/ids.ts';
import type { MessageView } from '../../../src/slack/views/message-view.ts';
import { FULL, fullWorld } from './full-world.ts';
import { expectFormFits, expectMessageFits, mrkdwnTexts } from './view-checks.ts';

const FILLINGS = {
  'ordinary words': 'Repair the tide gauge on the north quay ',
  'signs that grow when escaped': '&<>',
  'pings and links': '<!channel> <@U0EVIL> <https://evil.example|click> https://evil.example ',
  'formatting and line ends': '*b* _i_ ~s~ `c` ```\n> q\n• l\n',
  'letters of two halves': '⚓🚢',
  'right-to-left and hidden marks': '\u202E\u200Bשלום ',
} as const;

describe.each(Object.entries(FILLINGS))('a sprint full of %s', (_name, filling) => {
  const { messages, forms } = fullWorld(filling);

  it.each(Object.entries(messages))('keeps to the platform’s limits in the message: %s', (_message, view) => {
    expectMessageFits(view);
  });

  it.each(Object.entries(forms))('keeps to the platform’s limits in the form: %s', (_form, view) => {
    expectFormFits(view);
  });
});

describe('what somebody can press or send off', () => {
  const { messages, forms } = fullWorld(FILLINGS['ordinary words']);
  const shown = JSON.stringify([messages, forms]);
  const idsOf = (key: string) =>
    new Set([...shown.matchAll(new RegExp(`"${key}":"([^"]+)"`, 'g'))].map(([, id]) => id));

  it('is a form that some command declares', () => {
    expect([...idsOf('callback_id')].filter((id) => !FORMS.has(id as string))).toEqual([]);
  });

  it('is a button that some command declares', () => {
    expect([...idsOf('action_id')].filter((id) => id !== INPUT && !BUTTONS.has(id as string))).toEqual([]);
  });
});

/** Everything that the platform would make of a text besides plain words and lists. */
function madeOf(text: string): string[] {
  const made: string[] = [];
  JSON.stringify(parseMrkdwn(text), (_key, node: unknown) => {
    if (typeof node === 'object' && node !== null && 'kind' in node)
      made.push(signature(node as { kind: string }));
    return node;
  });
  return made;
}

function signature(node: { kind: string; id?: string; text?: string }): string {
  return node.kind === 'user' ? `user ${node.id}` : node.kind === 'code' ? `code ${node.text}` : node.kind;
}

const OURS =
  /^(?:paragraph|list|text|bold|date|user U0ANA|user U0BEN|user U0{7}\d{3}|channel|code (?:\/loadline.*|\/invite @loadline|npm run posts -- retry all|[\d:, ]+(?: worked 1| blocked reason)?|[A-Z0-9]{6}))$/;

describe.each(['pings and links', 'formatting and line ends', 'signs that grow when escaped'] as const)(
  '%s in every field',
  (name) => {
    const { messages, forms } = fullWorld(FILLINGS[name]);
    const safeTitles = Object.entries({ ...messages, ...forms }).filter(
      ([view]) => !/^(?:refus|done)/.test(view),
    );

    it.each(safeTitles)('stay plain words in: %s', (_view, view) => {
      const texts = [...mrkdwnTexts(view.blocks), ...('text' in view ? [view.text] : [])];
      const foreign = texts.flatMap(madeOf).filter((made) => !OURS.test(made));
      expect(foreign).toEqual([]);
    });

    it('cannot ping or link from a refusal either', () => {
      const made = mrkdwnTexts(messages.refusal?.blocks ?? []).flatMap(madeOf);
      expect(made.filter((kind) => ['broadcast', 'link', 'channel'].includes(kind))).toEqual([]);
    });
  },
);

describe('100 cards', () => {
  const short = fullWorld('Tide gauge ', { ...FULL, titleLength: 30 }).messages;
  const long = fullWorld(FILLINGS['ordinary words']).messages;
  const shownIn = (view: MessageView | undefined) =>
    new Set(JSON.stringify(view?.blocks).match(/ABCDEFGHIJ-1000\d{3}/g)).size;

  it.each(['prompt', 'plan'])('with titles of 30 characters are all in the blocks of: %s', (name) => {
    expect(shownIn(short[name])).toBe(100);
  });

  it.each([
    ['prompt', /… and (\d+) more of your cards: `\/loadline cards` lists them\./],
    ['plan', /… and (\d+) more cards?: `\/loadline cards \d+`/],
    ['cards', /… and (\d+) more cards?: `\/loadline cards \d+`/],
  ])('with titles of 200 are shown, or counted with a way to see them, in: %s', (name, more) => {
    const leftOut = Number(more.exec(mrkdwnTexts(long[name]?.blocks ?? []).join('\n'))?.[1]);
    expect(shownIn(long[name]) + leftOut).toBe(100);
  });

  it('with titles of 200 are counted list by list below the verdict, which says where they all are', () => {
    const text = mrkdwnTexts(long.verdictCards?.blocks ?? []).join('\n');
    const more = text.match(/… and \d+ more cards?, counted in the numbers above\. .*`\/loadline export`/g);
    expect(more?.length).toBeGreaterThan(1);
  });
});

describe('what does not fit', () => {
  const { messages } = fullWorld('&');

  it('is counted, and the list of cards says how to see the rest', () => {
    const text = mrkdwnTexts(messages.cards?.blocks ?? []).join('\n');
    const shown = [...text.matchAll(/^\d+\. ABC/gm)].length;
    const rest = /… and (\d+) more cards?: `\/loadline cards (\d+)`/.exec(text);
    expect(shown + Number(rest?.[1])).toBe(100);
    expect(Number(rest?.[2])).toBe(shown + 1);
  });
});

describe.each(['pings and links', 'formatting and line ends', 'signs that grow when escaped'] as const)(
  'links of cards, with %s around them',
  (name) => {
    const typed = `https://tracker.example/a&b/*c*/_d_|e>f<!channel>\`g\`?q="<@U0EVIL>&${'x'.repeat(380)}`;
    const { messages } = fullWorld(FILLINGS[name], { ...FULL, link: typed });

    it.each(Object.entries(messages))('lead to their address and break nothing in: %s', (_message, view) => {
      expectMessageFits(view);
      const links: unknown[] = [];
      const foreign = mrkdwnTexts(view.blocks)
        .filter(() => !/^(?:refus|done)/.test(_message))
        .flatMap((text) => {
          JSON.stringify(parseMrkdwn(text), (_key, node) => {
            if (node?.kind === 'link') links.push(node.url);
            return node;
          });
          return madeOf(text);
        })
        .filter((made) => made !== 'link' && !OURS.test(made));
      expect(foreign).toEqual([]);
      expect(links.filter((url) => url !== cardLink(typed))).toEqual([]);
    });

    it('are in the messages that name cards', () => {
      for (const message of ['prompt', 'plan', 'cards']) {
        expect(JSON.stringify(messages[message]?.blocks)).toContain('<https://tracker.example/a&amp;b/');
      }
    });
  },
);
