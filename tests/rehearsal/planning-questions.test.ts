/** A planning session in the stand-in workspace: history is brought in, the four questions are asked, one is shared. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACILITATOR_ID, TEAM_CHANNEL_ID } from '../../src/rehearsal/cast.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import type { SeenMessage } from '../../src/rehearsal/stand-in/page-state.ts';
import { ACTIONS } from '../../src/slack/ids.ts';
import { playedSample } from './played-rehearsal.ts';

/** Nine invented sprints before Harbour 12: commitment, pulled in, surprise, finished. */
const PAST = [
  'name,first day,last day,commitment,pulled in,surprise,finished',
  'Pier 1,2026-06-15,2026-06-26,20,5,2,24',
  'Pier 2,2026-06-29,2026-07-10,22,4,6,25',
  'Pier 3,2026-07-13,2026-07-24,20,7,2,27',
  'Pier 4,2026-07-27,2026-08-07,24,3,2,25',
  'Pier 5,2026-08-10,2026-08-21,21,6,2,27',
  'Pier 6,2026-08-24,2026-09-04,23,5,6,27',
  'Pier 7,2026-09-07,2026-09-18,22,6,2,28',
  'Pier 8,2026-09-21,2026-10-02,24,4,2,27',
  'Pier 9,2026-10-05,2026-10-16,21,8,2,29',
].join('\n');

describe('a planning session', () => {
  let rehearsal: Rehearsal;

  beforeAll(async () => {
    rehearsal = await playedSample('kept');
  }, 120_000);

  afterAll(() => rehearsal?.stop());

  const ask = (words: string) => rehearsal.conversation.command(FACILITATOR_ID, words);
  const lastSeen = (place: string = TEAM_CHANNEL_ID, userId: string = FACILITATOR_ID): SeenMessage => {
    const message = rehearsal.standIn
      .messagesOf(userId, place)
      .filter(({ byBot }) => byBot)
      .at(-1);
    if (!message) throw new Error('the bot said nothing');
    return message;
  };
  const press = async (actionId: string): Promise<void> => {
    expect(await rehearsal.conversation.press(FACILITATOR_ID, actionId)).toBe(true);
    await rehearsal.settle();
  };
  /** Asks how the answer was made that was seen last in the channel. */
  const askHow = async (): Promise<void> => {
    expect(
      await rehearsal.conversation.press(FACILITATOR_ID, ACTIONS.explainAdvice, undefined, TEAM_CHANNEL_ID),
    ).toBe(true);
  };
  const form = () => rehearsal.standIn.viewOf(FACILITATOR_ID);
  const hasChart = ({ blocks }: SeenMessage): boolean => blocks.some(({ type }) => type === 'image');

  it('begins without a range, which says what is missing and how to get it', async () => {
    await ask('range');
    expect(lastSeen().text).toMatch(
      /^No range yet\. This needs 3 closed sprints with a commitment; there is 1\./,
    );
    expect(lastSeen().text).toContain('/loadline import');
    expect(hasChart(lastSeen())).toBe(false);
  });

  it('has one, with a chart, once past sprints were brought in; only the asker sees it', async () => {
    await rehearsal.conversation.formAfter(FACILITATOR_ID, () => ask('import'));
    await rehearsal.conversation.submit(FACILITATOR_ID, { text: PAST });
    await rehearsal.conversation.submit(FACILITATOR_ID, {});
    await ask('range');
    const answer = lastSeen();
    expect(answer.text).toMatch(/^At \d+ points: .* to run out of work\. Your last commitment was 2\d\.\n/);
    expect([answer.ephemeral, hasChart(answer)]).toEqual([true, true]);
    expect(answer.text).toMatch(/Chart: Commitment range/);
    await askHow();
    expect(lastSeen().text).toContain(
      'Based on your latest 10 sprints with a commitment, 9 of them imported.',
    );
    expect([lastSeen().ephemeral, hasChart(lastSeen())]).toEqual([true, false]);
  });

  it('asks again for other days and with people away, and the range is lower', async () => {
    await rehearsal.conversation.say(FACILITATOR_ID, 'range');
    const high = (): number => Number(/^At (\d+) points/.exec(lastSeen('dm').text)?.[1]);
    const before = high();
    await press(ACTIONS.changeRange);
    await expect(rehearsal.conversation.submit(FACILITATOR_ID, { awayDays: 'some' })).rejects.toThrow(
      /whole or half days/,
    );
    await rehearsal.conversation.submit(FACILITATOR_ID, { awayDays: '8' });
    expect(form()).toBeUndefined();
    expect(lastSeen('dm').text).toContain('8 days off or away');
    expect(high()).toBeLessThan(before);
  });

  it('shares it in the channel under the name of the person who did', async () => {
    const answer = lastSeen('dm').text;
    await press(ACTIONS.shareAdvice);
    const shared = rehearsal.standIn.allPosts().at(-1);
    expect(shared?.channelId).toBe(TEAM_CHANNEL_ID);
    expect(shared?.text.split('\n')[0]).toBe(answer.split('\n')[0]);
    expect(shared?.text).toContain(`Shared by <@${FACILITATOR_ID}> on `);
    expect(shared?.text).toContain('8 days off or away');
    expect(shared?.text).toContain('Buttons: How it’s made');
  });

  it('shows the odds, the history and a forecast, each with its chart', async () => {
    await ask('odds');
    expect(lastSeen().text).toMatch(/^(?:Cards of|No surprise work so far)/);
    expect(hasChart(lastSeen())).toBe(true);
    await askHow();
    expect(lastSeen().text).toContain('Of 9 more sprints, the cards aren’t known.');
    await ask('history');
    expect(lastSeen().text).toMatch(/^(?:No signal|A signal|Signals in)/);
    expect(hasChart(lastSeen())).toBe(true);
    await rehearsal.conversation.formAfter(FACILITATOR_ID, () => ask('forecast'));
    await rehearsal.conversation.submit(FACILITATOR_ID, { backlogPoints: '120', growthPoints: '2' });
    expect(lastSeen().text).toMatch(
      /^120 points: likely by \d+ \w+ 2027 \(50%\), optimistic .*, pessimistic .*\.\n/,
    );
    expect(hasChart(lastSeen())).toBe(true);
  });

  it('answers the same in direct messages, in words', async () => {
    const odd = rehearsal.cast.userIdOf('odd');
    await rehearsal.conversation.say(odd, 'forecast 120 growing 2');
    expect(lastSeen('dm', odd).text.split('\n')[0]).toBe(lastSeen().text.split('\n')[0]);
    expect(lastSeen('dm', odd).text).not.toContain('Plan a sprint');
    await rehearsal.conversation.say(odd, 'range next week');
    expect(lastSeen('dm', odd).text).toContain('“next” can’t be understood');
  });

  it('keeps work by name, tells it in turn, and takes a new number from the button beside it', async () => {
    await ask('forecast keep Harbour lights 80 growing 0');
    expect(lastSeen().text).toMatch(
      /^Kept: Harbour lights, 80 points left\. .*\n.*likely by \d+ \w+ 202\d \(50%\)/,
    );
    await ask('forecast keep Beacons 40 growing 0');
    await ask('forecast');
    expect(lastSeen().text).toMatch(
      /^Harbour lights, 80 points left: likely by .*\n1\. .*First told today\.\n2\. Beacons/,
    );
    await rehearsal.conversation.formAfter(FACILITATOR_ID, async () => {
      const anyOf = () => true;
      const pressed = rehearsal.conversation.press(
        FACILITATOR_ID,
        ACTIONS.changeBody,
        anyOf,
        TEAM_CHANNEL_ID,
      );
      expect(await pressed).toBe(true);
    });
    await rehearsal.conversation.submit(FACILITATOR_ID, { backlogPoints: '65' });
    expect(lastSeen().text).toMatch(/^Harbour lights: 65 points left now, 80 before\.\n/);
    await ask('forecast order 2');
    expect(lastSeen().text).toMatch(/^Beacons, 40 points left: likely by /);
    await ask('forecast together 1');
    expect(lastSeen().text).toContain('No other team that you may read keeps work called “Beacons”.');
  });

  it('shows beside a plan where its commitment lies, and the odds of its big cards', async () => {
    await rehearsal.conversation.formAfter(FACILITATOR_ID, () => ask('plan'));
    await rehearsal.conversation.submit(FACILITATOR_ID, {
      name: 'Harbour 13',
      awayDays: '8',
      cards: 'Lock gate, 13\nTide table, 8\nCrane log, 8\nPilot roster, 13',
    });
    const shown = JSON.stringify(form()?.blocks);
    expect(shown).toContain('How much to commit to');
    expect(shown).toContain('This plan of 42 points: 1 in 10 to run out of work.');
    expect(shown).toContain('In this plan: cards 1 and 4');
  });

  it('says what the rest is worth as soon as a tick is taken away, and commits to the rest', async () => {
    const preview = form()?.id as string;
    const shown = () => JSON.stringify(form()?.blocks);
    const chance = () => /finish at least 80% of these (\d+) points is ([^,]+),/.exec(shown())?.slice(1);
    expect(chance()?.[0]).toBe('42');
    const move = (ticked: string[]) =>
      rehearsal.standIn.change(FACILITATOR_ID, preview, 'ticked-1', { 'ticked-1': { value: ticked } });
    expect(await move(['2', '3', '4'])).toEqual({ ok: true });
    // Of 8, 8 and 13 points no two reach 80%.
    await expect.poll(shown).toContain('Finishing at least 80% of these 29 points takes every card');
    expect(form()?.id).toBe(preview);
    expect(shown()).toContain('Left out: 1 card with 13 points.');
    expect(shown()).toMatch(
      /Card 4, Pilot roster \(13 points\), endangers that most: without it, the chance/,
    );
    await move(['2', '3']);
    await expect.poll(shown).toContain('Finishing at least 80% of these 16 points takes every card');
    await rehearsal.conversation.submit(FACILITATOR_ID, {});
    await rehearsal.settle();
    const text = rehearsal.standIn
      .messagesOf(FACILITATOR_ID, TEAM_CHANNEL_ID)
      .findLast((message) => message.ephemeral && message.text.includes('is planned'))?.text;
    expect(text).toContain('Harbour 13 is planned: 16 points on 2 cards');
    expect(text).toMatch(/Left out, in case you need them again:\n• Lock gate, 13\n• Pilot roster, 13/);
  });
});
