import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { planPreviewView } from '../../../src/slack/views/planning/plan-preview.ts';
import { botUnderTest } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { CHANNEL_ID, preview } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const TICKED = { 'ticked-1': { value: { type: 'checkboxes', selected_options: [{ value: '1' }] } } };
const open = {
  ...planPreviewView(preview, CHANNEL_ID),
  id: 'V1',
  hash: '12.ab',
  state: { values: TICKED },
};

describe('a tick in the preview of a plan', () => {
  it('shows the preview again, in the same form, as it was seen', async () => {
    const bot = botUnderTest(platform);
    expect(await bot.press('value', undefined, { view: open })).toEqual([undefined]);
    expect(callsOf(bot.useCases)).toEqual([
      ['previewTicked', { teamId: 'team-1', seen: 'f1f2', ticked: ['1'] }],
    ]);
    expect(platform.callsTo('views.update')).toEqual([
      expect.objectContaining({
        view_id: 'V1',
        hash: '12.ab',
        view: expect.objectContaining({ callback_id: 'plan-preview-form' }),
      }),
    ]);
  });

  it('says above what was ticked why it can’t', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.previewTicked.mockRejectedValue(new Refusal('plan-changed', {}));
    await bot.press('value', undefined, { view: open });
    const [{ view }] = platform.callsTo('views.update') as [{ view: object }];
    expect(JSON.stringify(view)).toContain('This plan was changed after the preview was shown');
    expect(JSON.stringify(view)).toContain('ticked-1');
  });

  it('that was overtaken by another one, or whose form is closed, is passed over', async () => {
    const bot = botUnderTest(platform);
    for (const code of ['hash_conflict', 'not_found']) {
      platform.refuse('views.update', code);
      await bot.press('value', undefined, { view: open });
    }
    expect(platform.callsTo('chat.postEphemeral')).toEqual([]);
    expect(platform.responses).toEqual([]);
  });

  it('in a form without live fields only is acknowledged', async () => {
    const bot = botUnderTest(platform);
    await bot.press('value', undefined, { view: { ...open, callback_id: 'pull-form' } });
    expect(platform.calls).toEqual([]);
  });
});
