/** A retrospective in the stand-in workspace, after a sprint that was played: the sheet is read, shared and printed. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACILITATOR_ID, TEAM_CHANNEL_ID } from '../../src/rehearsal/cast.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import type { SeenMessage } from '../../src/rehearsal/stand-in/page-state.ts';
import { ACTIONS } from '../../src/slack/ids.ts';
import { playedSample } from './played-rehearsal.ts';

describe('a retrospective', () => {
  let rehearsal: Rehearsal;

  beforeAll(async () => {
    rehearsal = await playedSample('missed-by-surprise');
  }, 120_000);

  afterAll(() => rehearsal?.stop());

  const lastSeen = (place: string): SeenMessage => {
    const message = rehearsal.standIn
      .messagesOf(FACILITATOR_ID, place)
      .filter(({ byBot }) => byBot)
      .at(-1);
    if (!message) throw new Error('the bot said nothing');
    return message;
  };
  const press = async (actionId: string): Promise<void> => {
    const { conversation } = rehearsal;
    expect(await conversation.press(FACILITATOR_ID, actionId, undefined, TEAM_CHANNEL_ID)).toBe(true);
    await rehearsal.settle();
  };

  it('has the sprint on one screen, for the person who asked, in 20 lines at most', async () => {
    await rehearsal.conversation.command(FACILITATOR_ID, 'retro');
    const sheet = lastSeen(TEAM_CHANNEL_ID);
    expect(sheet.ephemeral).toBe(true);
    expect(sheet.text).toMatchInlineSnapshot(`
      "Retrospective of Harbour 13
      Harbour 13: missed. Finished 12 of 23 points committed (52.2%), with 5.5 points of surprise work.
      Goal: Skippers pay for a berth before they arrive
      What happened, day by day
      Wed 18 Nov – grew: quay-51 Pay by card (surprise work +3, “The bank wants a second confirmation for foreign cards”)
      Thu 19 Nov – grew: quay-53 Money back after a cancellation (surprise work +2, “Part of the price is harbour tax, which can't be paid back”)
      Fri 20 Nov – finished: quay-52 Receipt for the harbour's books
      Mon 23 Nov – dropped: quay-55 Guest harbours in the search (“The guest harbours have not sent their lists”); grew: quay-51 Pay by card (surprise work +0.5, “Test cards of the bank time out”)
      Wed 25 Nov – finished: quay-54 Reminder on the day before arri…
      Thu 26 Nov – finished: quay-53 Money back after a cancellation
      Cards that taught something
      • quay-51 Pay by card: grew most (surprise work +3.5), furthest off its estimate (8, true size 11.5), nearly done (2 of 11.5 points left)
      To talk about
      1. One card holds 8 of the 11 points not finished, quay-51 Pay by card: 2 points left, after 3.5 points of surprise work. Could a part of it have been finished by itself?
      2. 3.5 of the 5.5 points of surprise work came in one card, quay-51 Pay by card. Which question at planning would have shown it?
      Only you see this. It names cards, and no people: share it when the team meets.
      Buttons: Share in the channel, Printable page"
    `);
    expect(sheet.text.split('\n').length).toBeLessThanOrEqual(20);
    expect(sheet.text.split(/\s+/).length).toBeLessThanOrEqual(270);
    for (const { id, realName } of rehearsal.cast.users) {
      expect(sheet.text).not.toContain(id);
      expect(sheet.text).not.toContain(realName);
    }
  });

  it('is printed on a page that comes in the direct messages, with both charts as far as there is something to draw', async () => {
    await press(ACTIONS.printRetro);
    const [file] = lastSeen('dm').files;
    expect(file?.name).toMatch(/^retrospective-\d{4}-\d{2}-\d{2}\.html$/);
    const page = String(rehearsal.standIn.fileOf(file?.id ?? ''));
    expect(page).toContain('<h1>Retrospective of ');
    expect(page.match(/<img src="data:image\/png;base64,/g)).toHaveLength(1);
    expect(page).toContain('alt="Burndown');
  });

  it('is shared in the channel under the name of the person who did', async () => {
    await rehearsal.conversation.command(FACILITATOR_ID, 'retro');
    const [first] = lastSeen(TEAM_CHANNEL_ID).text.split('\n');
    await press(ACTIONS.shareRetro);
    const shared = rehearsal.standIn.allPosts().at(-1);
    expect(shared?.channelId).toBe(TEAM_CHANNEL_ID);
    expect(shared?.text.split('\n')[0]).toBe(first);
    expect(shared?.text).toContain(`Shared by <@${FACILITATOR_ID}>.`);
  });
});
