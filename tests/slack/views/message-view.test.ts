import { expect, it } from 'vitest';
import {
  actions,
  button,
  chartBlocks,
  context,
  fieldSections,
  lead,
  section,
} from '../../../src/slack/views/block-builders.ts';
import { messageView } from '../../../src/slack/views/message-view.ts';
import { typed } from '../../../src/words/typed-text.ts';

it('says in its text everything that its blocks say, without formatting, and charts last', () => {
  const view = messageView([
    lead('Harbour & Co: <kept>'),
    ...chartBlocks({ fileId: 'F1', altText: 'Burndown: 3 points left' }),
    ...fieldSections(['*Kept share*\n92%', '*Load*\n25']),
    section('Type `/loadline plan` until <!date^1763139600^{date_short}|Fri 14 Nov>.'),
    actions([button('Answer', { actionId: 'a', value: '1' }), button('Away', { actionId: 'b', value: '1' })]),
    context('For <@U0ANA>'),
  ]);
  expect(view.text).toMatchInlineSnapshot(`
    "Harbour &amp; Co: &lt;kept&gt;
    Kept share
    92%
    Load
    25
    Type /loadline plan until Fri 14 Nov.
    Buttons: Answer, Away
    For <@U0ANA>
    Chart: Burndown: 3 points left"
  `);
});

it('keeps what people typed as it is shown in the blocks', () => {
  expect(messageView([section(`• ${typed('*x* <!here> 2*3*4')}`)]).text).toBe('• ∗x∗ &lt;!here&gt; 2*3*4');
});

it('cuts a text above 4,000 characters at a line and says how many lines the message has besides', () => {
  const line = 'x'.repeat(1_000);
  const view = messageView([
    lead('Cards'),
    section(`${line}\n${line}`),
    section(`${line}\n${line}\n${line}`),
  ]);
  expect(view.text).toBe(['Cards', line, line, line, 'The message itself has 2 more lines.'].join('\n'));
});

it('makes a bold line of a lead that is too long for a header', () => {
  expect(lead('x'.repeat(150)).type).toBe('header');
  expect(lead('x'.repeat(151))).toMatchObject({ type: 'section', text: { text: `*${'x'.repeat(151)}*` } });
});

it('refuses more blocks than the platform takes', () => {
  const blocks = Array.from({ length: 51 }, () => section('x'));
  expect(() => messageView(blocks)).toThrow(RangeError);
});
