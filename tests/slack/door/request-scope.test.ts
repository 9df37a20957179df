/** Each request is counted once, by kind and outcome, and all that it logs has one reference. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import type { RequestMeter } from '../../../src/slack/door/request-scope.ts';
import { botUnderTest } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { MIRA_ID, WORKSPACE_ID } from '../support/samples.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

function counted() {
  const seen: string[] = [];
  const meter: RequestMeter = {
    requestHandled: (kind, outcome, seconds) => void seen.push(`${kind} ${outcome} ${seconds >= 0}`),
    refused: (code) => void seen.push(`refused ${code}`),
    failed: (code) => void seen.push(`failed ${code}`),
    turnedAway: (reason) => void seen.push(`turned away ${reason}`),
  };
  return { seen, meter };
}

describe('a request', () => {
  it('is counted by its kind once its work is done', async () => {
    const { seen, meter } = counted();
    const bot = botUnderTest(platform, { meter });
    await bot.command('help');
    await bot.say('help');
    await bot.press('no-such-button', undefined);
    await bot.submit({ id: 'V1', callback_id: 'no-such-form', type: 'modal' });
    await bot.push({
      type: 'event_callback',
      team_id: WORKSPACE_ID,
      event_id: 'Ev-home',
      event: { type: 'app_home_opened', user: MIRA_ID, tab: 'messages' },
    });
    expect(seen.filter((line) => / true$/.test(line))).toEqual([
      'command done true',
      'message done true',
      'button refused true',
      'form refused true',
      'home done true',
    ]);
  });

  it('that is refused is counted under the refusal’s code', async () => {
    const { seen, meter } = counted();
    const bot = botUnderTest(platform, { meter });
    bot.useCases.listCards.mockRejectedValue(new Refusal('no-team-here', {}));
    await bot.command('cards');
    expect(seen).toEqual(['refused no-team-here', 'command refused true']);
  });

  it('that fails unexpectedly is counted under the code of what caused it', async () => {
    const { seen, meter } = counted();
    const bot = botUnderTest(platform, { meter });
    const cause = Object.assign(new Error('terminated'), { code: '57P01' });
    bot.useCases.listCards.mockRejectedValue(new Error('Failed query', { cause }));
    await bot.command('cards');
    expect(seen).toEqual(['failed 57P01', 'command failed true']);
  });

  it('shows the person the reference that all of its log lines have, and no other request’s', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.listCards.mockRejectedValue(new TypeError('card is undefined'));
    await Promise.all([bot.command('cards'), bot.command('help')]);
    const lines = bot.log.entries();
    const failed = lines.find(({ level }) => level === 'error');
    expect(failed?.reference).toMatch(/^[2-9A-HJ-NP-Z]{8}$/);
    expect(JSON.stringify(platform.responses)).toContain(`\`${failed?.reference}\``);
    const other = lines.find(({ during }) => during === 'command help');
    expect(other?.reference).toMatch(/^[2-9A-HJ-NP-Z]{8}$/);
    expect(other?.reference).not.toBe(failed?.reference);
    expect(lines.filter(({ reference }) => reference === undefined)).toEqual([]);
  });

  it('writes a line each to the log, with all its line ends and control characters', async () => {
    const bot = botUnderTest(platform, { logLevel: 'trace' });
    const forged = 'x\n{"level":"error","msg":"forged"}\r\u2028\u0000\u001b[2J';
    const error = Object.assign(new Error(forged), { code: forged });
    bot.useCases.listCards.mockRejectedValue(error);
    await bot.command('cards');
    await bot.press(forged, forged);
    await bot.submit({ id: 'V1', callback_id: forged, type: 'modal' });
    const text = bot.log.text();
    const lines = text.split('\n').filter((line) => line !== '');
    expect(lines.length).toBe(bot.log.entries().length);
    expect(bot.log.entries().map(({ msg }) => msg)).not.toContain('forged');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
    expect(text.replaceAll('\n', '')).not.toMatch(/[\u0000-\u001f]/);
  });
});
