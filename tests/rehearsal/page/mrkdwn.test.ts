import { describe, expect, it } from 'vitest';
import { type Inline, isSafeLink, parseInline, parseMrkdwn } from '../../../src/rehearsal/page/mrkdwn.ts';

const text = (words: string): Inline => ({ kind: 'text', text: words });

describe('emphasis', () => {
  it.each([
    ['*bold*', { kind: 'bold', children: [text('bold')] }],
    ['_italic_', { kind: 'italic', children: [text('italic')] }],
    ['~gone~', { kind: 'strike', children: [text('gone')] }],
    ['`a *b* c`', { kind: 'code', text: 'a *b* c' }],
    ['*_both_*', { kind: 'bold', children: [{ kind: 'italic', children: [text('both')] }] }],
  ])('%s is read as its kind', (typed, node) => {
    expect(parseInline(typed)).toEqual([node]);
  });

  it.each(['2 * 3 * 4', 'left_points_now', '*open', '** **', 'a*b*c', '* spaced *', '~ ~', '`'])(
    '“%s” stays as typed',
    (typed) => {
      expect(parseInline(typed)).toEqual([text(typed)]);
    },
  );

  it('ends at punctuation and leaves the rest of the line alone', () => {
    expect(parseInline('(*Buoy lamp*): 3')).toEqual([
      text('('),
      { kind: 'bold', children: [text('Buoy lamp')] },
      text('): 3'),
    ]);
  });

  it('does not end inside code or a link', () => {
    expect(parseInline('*see `a* b` and <https://example.org/a*|it>*')).toEqual([
      {
        kind: 'bold',
        children: [
          text('see '),
          { kind: 'code', text: 'a* b' },
          text(' and '),
          { kind: 'link', url: 'https://example.org/a*', label: 'it' },
        ],
      },
    ]);
  });
});

describe('angle brackets', () => {
  it.each<[string, Inline]>([
    [
      '<https://example.org/a?b=1&amp;c=2|the &lt;page&gt;>',
      { kind: 'link', url: 'https://example.org/a?b=1&c=2', label: 'the <page>' },
    ],
    ['<https://example.org>', { kind: 'link', url: 'https://example.org', label: 'https://example.org' }],
    ['<mailto:ana@example.org|Ana>', { kind: 'link', url: 'mailto:ana@example.org', label: 'Ana' }],
    ['<@U0ANA0000>', { kind: 'user', id: 'U0ANA0000' }],
    ['<#C0HARBOUR|harbour>', { kind: 'channel', id: 'C0HARBOUR', label: 'harbour' }],
    ['<!here>', { kind: 'broadcast', label: '@here' }],
    ['<!subteam^S0CREW|@crew>', { kind: 'broadcast', label: '@crew' }],
    [
      '<!date^1793610900^{date_num} at {time}|2 Nov>',
      { kind: 'date', epochSeconds: 1793610900, format: '{date_num} at {time}', fallback: '2 Nov' },
    ],
  ])('%s is read as its kind', (typed, node) => {
    expect(parseInline(typed)).toEqual([node]);
  });

  it.each([
    '<javascript:alert(1)|press>',
    '<JaVaScRiPt:alert(1)>',
    '<data:text/html,x|press>',
    '<img src=x onerror=alert(1)>',
    '<script>alert(1)</script>',
    '<https:no-slashes>',
    '<!date^soon^{time}|x>',
    '<open',
    '<>',
  ])('%s stays text', (typed) => {
    expect(parseInline(typed)).toEqual([text(typed)]);
  });

  it('gives no link out of a date whose address is harmful', () => {
    expect(parseInline('<!date^1793610900^{time}^javascript:alert(1)|x>')).toEqual([
      { kind: 'date', epochSeconds: 1793610900, format: '{time}', fallback: 'x' },
    ]);
  });

  it.each([' https://example.org', 'javascript:https://example.org', 'vbscript:x', '//example.org'])(
    'the address “%s” is not safe to follow',
    (url) => {
      expect(isSafeLink(url)).toBe(false);
    },
  );
});

describe('entities', () => {
  it('are turned back once, so that escaped markup stays text', () => {
    expect(parseInline('&lt;b&gt; &amp;lt; &quot;')).toEqual([text('<b> &lt; &quot;')]);
  });
});

describe('lines', () => {
  it('of one kind are together, in order', () => {
    expect(parseMrkdwn('one\n\n> two\n&gt; three\n• four\n- five\nsix')).toEqual([
      { kind: 'paragraph', lines: [[text('one')], []] },
      { kind: 'quote', lines: [[text('two')], [text('three')]] },
      {
        kind: 'list',
        items: [
          { marker: '•', content: [text('four')] },
          { marker: '-', content: [text('five')] },
        ],
      },
      { kind: 'paragraph', lines: [[text('six')]] },
    ]);
  });

  it('after three quote marks are quoted to the end', () => {
    expect(parseMrkdwn('>>> a\n• b')).toEqual([{ kind: 'quote', lines: [[text('a')], [text('• b')]] }]);
  });

  it('between fences keep their marks and breaks', () => {
    expect(parseMrkdwn('before\n```\n*a*\n&lt;b&gt;\n```\nafter')).toEqual([
      { kind: 'paragraph', lines: [[text('before')]] },
      { kind: 'codeBlock', text: '*a*\n<b>' },
      { kind: 'paragraph', lines: [[text('after')]] },
    ]);
  });

  it('of an empty text are none', () => {
    expect(parseMrkdwn('')).toEqual([]);
  });
});

it('thousands of marks that are never closed stay one text', () => {
  const typed = '*a <b _c ~d '.repeat(250);
  expect(parseInline(typed)).toEqual([text(typed)]);
});
