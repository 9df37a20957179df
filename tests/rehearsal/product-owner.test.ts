/** A product owner who is no member, in the stand-in workspace, with everything real but the platform. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACILITATOR_ID, TEAM_CHANNEL_ID } from '../../src/rehearsal/cast.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { playedSample } from './played-rehearsal.ts';

describe('a product owner who is no member', () => {
  let rehearsal: Rehearsal;
  let owner: string;

  beforeAll(async () => {
    rehearsal = await playedSample('no-plan');
    owner = rehearsal.cast.userIdOf('odd');
    const { conversation } = rehearsal;
    await conversation.formAfter(FACILITATOR_ID, () => conversation.command(FACILITATOR_ID, 'setup'));
    await conversation.submit(FACILITATOR_ID, {
      memberIds: [rehearsal.cast.userIdOf('ines')],
      productOwnerId: [owner],
    });
    await rehearsal.settle();
  }, 120_000);

  afterAll(() => rehearsal?.stop());

  /** What the bot said last to somebody, in the channel or directly. */
  const lastTo = (userId: string, place: string = TEAM_CHANNEL_ID): string =>
    rehearsal.standIn
      .messagesOf(userId, place)
      .filter(({ byBot }) => byBot)
      .at(-1)?.text ?? '';
  const command = async (words: string, userId = owner): Promise<string> => {
    await rehearsal.conversation.command(userId, words);
    return lastTo(userId);
  };

  it('sees what is theirs when typing the command alone', async () => {
    const said = await command('');
    expect(said).toContain('You are its product owner');
    expect(said).toContain('Record a value');
    expect(said).not.toContain('Plan a sprint');
  });

  it('is refused answers and new cards in words that name what they can do', async () => {
    for (const words of ['answer 1: 3', 'pull Fog horn, 3'])
      expect(await command(words)).toContain('You can use /loadline status');
  });

  it('is answered to the planning questions', async () => {
    const answers: string[] = [];
    for (const words of ['history', 'odds', 'range', 'forecast 40']) answers.push(await command(words));
    expect(new Set(answers).size).toBe(4);
    for (const said of answers) {
      expect(said).toContain('sprint');
      expect(said).not.toContain('not a member of it');
    }
    expect(rehearsal.refusals.filter((words) => !words.includes('not a member of it'))).toEqual([]);
  });

  it('is asked when a number can be read in two ways, and records it in words', async () => {
    expect(await command('value 1.200')).toContain('“1.200” may mean 1200 or 1.2.');
    expect(await command('value 1200')).toContain('Recorded for Harbour 14 (ended 4 December 2026): 1,200.');
  });

  it('corrects it in a form that a direct message led to', async () => {
    const { conversation } = rehearsal;
    await conversation.say(owner, 'value');
    const form = await conversation.formAfter(owner, async () => {
      expect(await conversation.press(owner, 'open-value-form')).toBe(true);
    });
    expect(JSON.stringify(form)).toContain('Harbour 14, ended 4 December 2026: 1,200');
    await conversation.submit(owner, { recordedValue: '€ 1.500,50' });
    expect(lastTo(owner, 'dm')).toContain('1,500.5. It replaces 1,200');
  });

  it('can not choose the baseline sprint; the facilitator can', async () => {
    expect(await command('baseline first')).toContain('not a member of it');
    expect(await command('baseline harbour 14', FACILITATOR_ID)).toContain(
      'Velocity growth of Quayside is compared with Harbour 14',
    );
  });

  it('keeps the others from recording, and says who may', async () => {
    const said = await command('value 5', rehearsal.cast.userIdOf('ines'));
    expect(said).toContain('Only the product owner of Quayside or a facilitator');
    expect(said).toContain(`<@${owner}>`);
  });
});
