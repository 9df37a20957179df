import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { StoreTrouble, type StoreTroubleCode } from '../../../src/app/ports/store-trouble.ts';
import { pullFormView } from '../../../src/slack/views/cards/card-forms.ts';
import { eventMemory, fakeStore } from '../../support/fake-store.ts';
import { botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import * as sample from '../support/samples.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const trouble = (code: StoreTroubleCode, isAlone: boolean) =>
  new StoreTrouble(code, { isAlone, cause: new Error('could not extend file') });

/** A bot whose database takes nothing in until `mend` is called. */
function botIn(code: StoreTroubleCode, isAlone: boolean) {
  const memory = eventMemory();
  let isBroken = true;
  const rememberEvent: typeof memory.rememberEvent = async (key, at) => {
    if (isBroken) throw trouble(code, isAlone);
    return memory.rememberEvent(key, at);
  };
  const bot = botUnderTest(platform, { store: fakeStore({ rememberEvent }) });
  bot.useCases.pullCards.mockRejectedValueOnce(trouble(code, isAlone));
  const mend = (): void => {
    isBroken = false;
  };
  return { bot, mend };
}

describe('while the database takes nothing in', () => {
  it.each([
    ['database-full', /my database has no room left\. Please ask the person who runs this bot to make room/],
    [
      'database-read-only',
      /my database can only be read at the moment\. Please tell the person who runs this bot/,
    ],
    ['database-busy', /my database has no connection left for me\. It is mostly over within a minute/],
  ] as const)('a command is refused with the reason and what to do: %s', async (code, words) => {
    const { bot } = botIn(code, true);
    await bot.command('pull Repair it, 3');
    const told = String(platform.responses[0]?.text).replaceAll('\n', ' ').replaceAll('*', '');
    expect(told).toMatch(/^Nothing was recorded: /);
    expect(told).toMatch(words);
    expect(told).toMatch(/Then try again\.$/);
    expect(bot.log.entries()).toContainEqual(
      expect.objectContaining({ level: 'warn', during: 'command pull', reason: code }),
    );
  });

  it('nobody is told for certain that nothing was recorded where another process may have done it', async () => {
    const { bot } = botIn('database-read-only', false);
    await bot.command('pull Repair it, 3');
    const told = platform.responses[0]?.text;
    expect(told).toContain('I couldn’t record this: my database can only be read at the moment.');
    expect(told).toContain('look whether this is there, and try again if it is missing');
    expect(told).not.toMatch(/nothing was recorded/i);
  });

  it('what only reads is answered', async () => {
    const { bot } = botIn('database-full', true);
    await bot.command('status');
    expect(bot.useCases.sprintStatus).toHaveBeenCalledTimes(1);
    expect(platform.responses[0]?.text).not.toContain('database');
  });

  it('a form stays open with what was typed, and is carried out when it is sent off again', async () => {
    const { bot, mend } = botIn('database-full', false);
    const form = sentForm(
      pullFormView(
        {
          heading: sample.heading,
          load: sample.status.load,
          check: sample.pullInCheck,
          workingDaysLeft: 8,
        },
        sample.CHANNEL_ID,
      ),
    );
    const [refused] = await bot.submit(form);
    expect(refused).toMatchObject({ response_action: 'errors' });
    expect(JSON.stringify(refused)).toContain('I couldn’t record this: my database has no room left.');
    mend();
    expect(JSON.stringify(await bot.submit(form))).not.toContain('errors');
    expect(bot.useCases.pullCards).toHaveBeenCalledTimes(2);
  });
});
