/** What the platform makes of typed text. Source: docs.slack.dev/messaging/formatting-message-text. */
import { expect, test } from 'vitest';
import { typedText } from '../../../src/rehearsal/stand-in/person-talk.ts';
import { Workspace } from '../../../src/rehearsal/stand-in/workspace.ts';

const workspace = new Workspace({
  signingSecret: 'a',
  botToken: 'a',
  users: [{ id: 'U1ANA0000', name: 'ana' }],
  channels: [],
  now: () => new Date(0),
});

test.each([
  ['ask @ana, then (@Ana)', 'ask <@U1ANA0000>, then (<@U1ANA0000>)'],
  ['mail ana@ana.example', 'mail ana@ana.example'],
  ['@anabel', '@anabel'],
  ['a < b & c > d', 'a &lt; b &amp; c &gt; d'],
  ['<@U1ANA0000> & <#C1TEAM0000|team>', '<@U1ANA0000> &amp; <#C1TEAM0000|team>'],
  ['<@U1ANA0000|ana> <script>', '<@U1ANA0000|ana> &lt;script&gt;'],
])('%s becomes %s', (typed, text) => {
  expect(typedText(typed, workspace, false)).toBe(text);
});

test('commands carry the handle beside the id', () => {
  expect(typedText('@ana', workspace, true)).toBe('<@U1ANA0000|ana>');
});
