import { describe, expect, it } from 'vitest';
import { plainWords, wordsWithLinks } from '../../src/slack/plain-words.ts';

describe('plainWords', () => {
  it.each([
    ['3', '3'],
    ['  2: 3 worked 1 ', '2: 3 worked 1'],
    ['Repair it, 3, <@U0OLE|ole>', 'Repair it, 3, <@U0OLE>'],
    ['Repair it, 3, <@U0OLE>', 'Repair it, 3, <@U0OLE>'],
    ['Tide &gt; 2 m &amp; rising', 'Tide > 2 m & rising'],
    ['&amp;lt; stays', '&lt; stays'],
    ['see <https://harbour.example/a?b=1&amp;c=2>', 'see https://harbour.example/a?b=1&c=2'],
    ['see <https://harbour.example|harbour.example>', 'see harbour.example'],
    ['ask in <#C0PIER|pier>', 'ask in #pier'],
    ['tell <!here> and <!channel>', 'tell @here and @channel'],
    ['ask <!subteam^S1|@riggers>', 'ask @riggers'],
    ['a < b', 'a < b'],
  ])('%s becomes %s', (delivered, words) => {
    expect(plainWords(delivered)).toBe(words);
  });
});

describe('wordsWithLinks', () => {
  it.each([
    ['<https://harbour.example/7|the tide table>, 3', '<https://harbour.example/7|the tide table>, 3'],
    ['Ask <@U0OLE|ole> at <https://harbour.example|harbour.example>', 'Ask <@U0OLE> at harbour.example'],
    ['see <https://harbour.example/a?b=1&amp;c=2>', 'see https://harbour.example/a?b=1&c=2'],
    ['<mailto:ole@harbour.example|ole@harbour.example>', 'ole@harbour.example'],
  ])('%s becomes %s', (delivered, words) => {
    expect(wordsWithLinks(delivered)).toBe(words);
  });
});
