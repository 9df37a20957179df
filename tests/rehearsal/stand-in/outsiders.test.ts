/** Guests, and people of another workspace in a shared channel. docs.slack.dev/apis/slack-connect */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { refusal, type Scene, startScene } from './fixture.ts';

const ELSEWHERE = 'T0ELSEWHERE';
const USERS = [
  { id: 'U1ANA0000', name: 'ana' },
  { id: 'U2GUEST0000', name: 'guest', isGuest: true },
  { id: 'U3OLU0000', name: 'olu', outsideTeamId: ELSEWHERE },
];
const CHANNELS = [{ id: 'C1TEAM0000', name: 'team', memberIds: USERS.map(({ id }) => id) }];
let scene: Scene;
beforeEach(async () => {
  scene = await startScene({ users: USERS, channels: CHANNELS });
});
afterEach(() => scene.stop());

test('a guest is marked as one', async () => {
  const { user } = await scene.client.users.info({ user: 'U2GUEST0000' });
  expect(user).toMatchObject({ is_restricted: true, is_ultra_restricted: false });
  const { user: ana } = await scene.client.users.info({ user: 'U1ANA0000' });
  expect(ana).toMatchObject({ is_restricted: false, is_ultra_restricted: false });
});

test('a channel with an outsider in it is said to be shared, until they are let out', async () => {
  const isShared = async () =>
    (await scene.client.conversations.info({ channel: 'C1TEAM0000' })).channel?.is_ext_shared;
  expect(await isShared()).toBe(true);
  scene.standIn.setShared('C1TEAM0000', false);
  expect(await isShared()).toBe(false);
});

describe('an outsider', () => {
  test('is found by id and not in the list of people', async () => {
    const { members } = await scene.client.conversations.members({ channel: 'C1TEAM0000' });
    expect(members).toContain('U3OLU0000');
    expect((await scene.client.users.info({ user: 'U3OLU0000' })).user?.team_id).toBe(ELSEWHERE);
    const listed = await scene.client.users.list({ limit: 100 });
    expect(listed.members?.map(({ id }) => id)).not.toContain('U3OLU0000');
  });

  test('has neither the app’s commands nor direct messages with it', async () => {
    expect(await scene.standIn.command('U3OLU0000', 'C1TEAM0000', '/loadline help')).toEqual({
      ok: false,
      reason: '/loadline is not a command of your workspace.',
    });
    const open = scene.client.conversations.open({ users: 'U3OLU0000' });
    expect((await refusal(open)).error).toBe('cannot_dm_bot');
  });

  test('sends forms under their own workspace, which name that of the app apart', async () => {
    let clicked: { team?: { id?: string } | null; user?: { team_id?: string } } = {};
    let sent: { team?: { id?: string } | null; view?: { app_installed_team_id?: string } } = {};
    const shared = await startScene({ users: USERS, channels: CHANNELS }, (app) => {
      app.action('open', async ({ ack, body, client }) => {
        clicked = body;
        const view = {
          type: 'modal' as const,
          callback_id: 'f',
          submit: { type: 'plain_text' as const, text: 'Send' },
          title: { type: 'plain_text' as const, text: 'F' },
          blocks: [],
        };
        await client.views.open({ trigger_id: (body as { trigger_id: string }).trigger_id, view });
        await ack();
      });
      app.view('f', async ({ ack, body }) => {
        sent = body;
        await ack();
      });
    });
    const text = { type: 'plain_text', text: 'Open' };
    const blocks = [{ type: 'actions', elements: [{ type: 'button', action_id: 'open', text }] }];
    const { ts } = await shared.client.chat.postMessage({
      channel: 'C1TEAM0000',
      text: 'a',
      blocks: blocks as never,
    });
    const where = { channel: 'C1TEAM0000', ts: String(ts) };
    expect(await shared.standIn.click('U3OLU0000', where, 'open')).toEqual({ ok: true });
    const teamId = 'T0STANDIN';
    expect(clicked).toMatchObject({ team: { id: teamId }, user: { team_id: ELSEWHERE } });
    const viewId = shared.standIn.viewOf('U3OLU0000')?.id as string;
    expect(await shared.standIn.submit('U3OLU0000', viewId)).toEqual({ ok: true });
    expect(sent).toMatchObject({ team: { id: ELSEWHERE }, view: { app_installed_team_id: teamId } });
    await shared.stop();
  });
});
