import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { interactiveClient } from '../../../src/slack/sending/web-clients.ts';
import { createSlackApp } from '../../../src/slack/slack-app.ts';
import { checkPlatform, type PlatformCheck } from '../../../src/slack/workspaces/check-platform.ts';
import { NEEDED_SCOPES } from '../../../src/slack/workspaces/manifest-needs.ts';
import { sayCode } from '../../../src/words/say.ts';
import { fakeStore } from '../../support/fake-store.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { logCatcher } from '../support/log-catcher.ts';
import { WORKSPACE_ID } from '../support/samples.ts';
import { spyUseCases } from '../support/spy-use-cases.ts';
import { testWorkspace } from '../support/test-workspace.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const ALL = Object.keys(NEEDED_SCOPES);

function answerWith(scopes: readonly string[], more: object = {}): void {
  const body = {
    ok: true,
    team_id: WORKSPACE_ID,
    team: 'Harbour',
    user_id: 'U0BOT',
    bot_id: 'B0BOT',
    ...more,
  };
  platform.answer('auth.test', () =>
    Response.json(body, { headers: { 'x-oauth-scopes': scopes.join(',') } }),
  );
}

function check(): Promise<PlatformCheck> {
  return checkPlatform(interactiveClient({ botToken: 'xoxb-SECRET', logger: logCatcher().logger }));
}

function problemsOf(result: PlatformCheck): readonly string[] {
  return result.ok ? [] : result.problems.map((problem) => sayCode('start', problem));
}

describe('checkPlatform', () => {
  it('says who the bot is when nothing is missing', async () => {
    answerWith(ALL);
    expect(await check()).toEqual({
      ok: true,
      identity: { workspaceId: WORKSPACE_ID, workspaceName: 'Harbour', botUserId: 'U0BOT', botId: 'B0BOT' },
      lacking: [],
    });
  });

  it('lets a bot start whose app was made before the bot asked to join channels, and says what it lacks', async () => {
    answerWith(ALL.filter((scope) => scope !== 'channels:join'));
    expect(await check()).toMatchObject({
      ok: true,
      lacking: [{ scope: 'channels:join', use: 'join-channels' }],
    });
  });

  it('names each missing scope with its purpose and the way to get it, a sentence each', async () => {
    answerWith(ALL.filter((scope) => scope !== 'im:history' && scope !== 'files:write'));
    const problems = problemsOf(await check());
    expect(problems).toHaveLength(2);
    expect(problems[0]).toMatch(/im:history.*answers in words.*OAuth & Permissions.*\.$/);
    expect(problems[1]).toMatch(/files:write.*charts/);
  });

  it.each(['invalid_auth', 'token_revoked', 'account_inactive', 'odd_error'])(
    'says how to get a token when it is refused: %s',
    async (code) => {
      platform.refuse('auth.test', code);
      const problems = problemsOf(await check());
      expect(problems).toHaveLength(1);
      expect(problems[0]).toContain('LOADLINE_BOT_TOKEN');
      expect(problems[0]).not.toContain('SECRET');
    },
  );

  it('says of a token that has expired that the app must be another one', async () => {
    platform.refuse('auth.test', 'token_expired');
    expect(problemsOf(await check())).toEqual([
      expect.stringMatching(/has expired\. Token rotation is switched on.*Create another app/),
    ]);
  });

  it('tells a person’s token from a bot’s', async () => {
    answerWith(ALL, { bot_id: undefined });
    expect(problemsOf(await check())[0]).toContain('not a bot’s');
  });

  it('tells an unreachable platform from a refused token', async () => {
    platform.answer('auth.test', () => Response.error());
    expect(problemsOf(await check())[0]).toContain('can’t be reached');
  });

  it('survives an answer that makes no sense', async () => {
    platform.answer('auth.test', () => new Response('', { status: 503 }));
    expect(problemsOf(await check())).toHaveLength(1);
  });
});

describe('opening the socket', () => {
  it.each([
    ['invalid_auth', { code: 'app-token-refused', reason: 'invalid_auth' }],
    ['missing_scope', { code: 'app-token-scope' }],
    ['socket_mode_not_enabled', { code: 'socket-mode-off' }],
  ])('fails with what is wrong when the platform answers %s', async (code, problem) => {
    platform.refuse('apps.connections.open', code);
    const { logger } = logCatcher();
    const client = interactiveClient({ botToken: 'xoxb-SECRET', logger });
    const app = createSlackApp({
      config: { transport: { mode: 'socket', appToken: 'xapp-SECRET' }, port: 0 },
      workspaces: testWorkspace(client, WORKSPACE_ID, { botToken: 'xoxb-SECRET' }),
      deps: {
        store: fakeStore({}),
        clock: { now: () => new Date('2026-11-04T09:20:00Z') },
        directory: {
          profile: () => Promise.reject(new Error('not expected here')),
          channelMembers: () => Promise.reject(new Error('not expected here')),
          notInChannel: () => Promise.reject(new Error('not expected here')),
          channel: () => Promise.reject(new Error('not expected here')),
        },
      },
      useCases: spyUseCases(),
      logger,
    });
    const thrown = await app.start().then(
      () => undefined,
      (error: unknown) => error,
    );
    expect(thrown).toMatchObject({ code: 'platform-start', problem });
    expect(String(thrown)).not.toContain('SECRET');
  });
});
