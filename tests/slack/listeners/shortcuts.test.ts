import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import type { TeamOverview } from '../../../src/app/watching/overview.ts';
import { SHORTCUTS } from '../../../src/slack/ids.ts';
import { type BotUnderTest, botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { MIRA_ID, WORKSPACE_ID } from '../support/samples.ts';
import { teamOverview } from '../views/view-examples.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

let presses = 0;
function choose(bot: BotUnderTest, callbackId: string = SHORTCUTS.answerForMyCards): Promise<unknown[]> {
  presses += 1;
  return bot.push({
    type: 'shortcut',
    callback_id: callbackId,
    trigger_id: `shortcut-${presses}`,
    user: { id: MIRA_ID },
    team: { id: WORKSPACE_ID },
    action_ts: '1762248000.000100',
  });
}

const onTeams = (bot: BotUnderTest, ...teams: Partial<TeamOverview>[]) =>
  bot.useCases.overview.mockResolvedValue({ teams: teams.map(teamOverview), canSetUpHere: false });

const opened = () => platform.callsTo('views.open') as { view: { callback_id?: string; blocks: object[] } }[];

describe('the shortcut to answer', () => {
  it('opens the form of the sprint in which the person has cards', async () => {
    const bot = botUnderTest(platform);
    onTeams(bot, {}, { myOpenCards: [] });
    expect(await choose(bot)).toEqual([undefined]);
    expect(bot.useCases.answerForm.mock.calls.map(([, where]) => where)).toEqual([
      { sprintId: teamOverview().sprint?.id },
    ]);
    expect(opened()).toMatchObject([{ view: { callback_id: 'answer-form' } }]);
  });

  it('lets somebody with cards in several teams choose, and then shows the form in its place', async () => {
    const bot = botUnderTest(platform);
    onTeams(bot, {}, {});
    await choose(bot);
    const [{ view }] = opened() as [{ view: object }];
    expect(view).toMatchObject({ callback_id: 'choose-sprint-form' });
    const chosen = { type: 'static_select', selected_option: { value: 'sprint-1' } };
    const [answer] = await bot.submit(sentForm(view, { sprintId: chosen }));
    expect(bot.useCases.answerForm.mock.calls.map(([, where]) => where)).toEqual([{ sprintId: 'sprint-1' }]);
    expect(answer).toMatchObject({ response_action: 'update', view: { callback_id: 'answer-form' } });
  });

  it('says in a form why there is nothing to answer', async () => {
    const bot = botUnderTest(platform);
    onTeams(bot);
    bot.useCases.answerForm.mockRejectedValue(new Refusal('no-team-of-yours', {}));
    await choose(bot);
    expect(opened()).toHaveLength(1);
    expect(opened()[0]?.view.callback_id).toBeUndefined();
    expect(platform.callsTo('chat.postMessage')).toEqual([]);
  });

  it('says it by direct message when no form can be opened', async () => {
    const bot = botUnderTest(platform);
    onTeams(bot, {});
    platform.refuse('views.open', 'expired_trigger_id');
    await choose(bot);
    expect(platform.callsTo('chat.postMessage')).toMatchObject([{ channel: MIRA_ID }]);
  });

  it('is acknowledged, and nothing more, when it is none of ours', async () => {
    const bot = botUnderTest(platform);
    expect(await choose(bot, 'constructor')).toEqual([undefined]);
    expect(platform.calls).toEqual([]);
  });
});
