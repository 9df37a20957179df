/**
 * Requests with a valid signature that are not quite what the platform sends, through the real door and the whole bot:
 * each is answered or refused, none makes the bot fail.
 */
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { ACTIONS } from '../../src/slack/ids.ts';
import { FakePlatform } from '../slack/support/fake-platform.ts';
import { CHANNEL, openHarness, PEOPLE, WORKSPACE } from '../support/app-harness.ts';
import { search } from '../support/search-width.ts';
import { hostileText } from './hostile-text.ts';
import { exchange, FORM, request } from './raw-http.ts';
import { commandBody, formBody, pressBody, type WholeBot, wholeBot, wordsBody } from './whole-bot.ts';

const platform = new FakePlatform();
let bot: WholeBot;
let port: number;
/** Bodies as the platform sends them, one of each kind. */
let bodies: object[];

beforeAll(async () => {
  platform.listen();
  const harness = await openHarness({ now: '2026-11-02T08:00:00Z' });
  const team = await harness.setUpTeam();
  const { sprint } = await harness.plan(team);
  harness.set('2026-11-04T09:20:00Z');
  bot = wholeBot(harness, 'http');
  ({ port } = await bot.app.start());
  const sprintId = sprint.id;
  const metadata = JSON.stringify({ sprintId, day: '2026-11-04' });
  const view = {
    id: 'V1',
    callback_id: 'answer-form',
    private_metadata: metadata,
    blocks: [{ type: 'input', block_id: 'b' }],
    state: { values: { b: { input: { type: 'plain_text_input', value: '3' } } } },
  };
  const event = (of: object) => ({ type: 'event_callback', team_id: WORKSPACE, event_id: 'Ev', event: of });
  bodies = [
    commandBody('status', { response_url: platform.responseUrl, is_enterprise_install: 'false' }),
    pressBody(ACTIONS.showStatus, JSON.stringify({ sprintId }), {
      view: null,
      response_url: platform.responseUrl,
    }),
    formBody(view),
    wordsBody('3, 2', { thread_ts: '1762248000.000100', blocks: [] }),
    { type: 'view_closed', user: { id: PEOPLE.ana }, team: { id: WORKSPACE }, view },
    { type: 'url_verification', challenge: 'c', token: 't' },
    event({ type: 'app_home_opened', user: PEOPLE.ana, tab: 'home', channel: 'D1' }),
    event({
      type: 'message',
      subtype: 'message_changed',
      channel: CHANNEL.channelId,
      ts: '1.2',
      message: {},
    }),
    event({ type: 'member_joined_channel', user: PEOPLE.ana, channel: CHANNEL.channelId }),
    event({ type: 'channel_created', channel: { id: 'C9', creator: PEOPLE.ana } }),
    event({ type: 'subteam_created', subteam: { created_by: PEOPLE.ana } }),
    event({ type: 'app_uninstalled' }),
    {
      ...event({ type: 'tokens_revoked', tokens: { bot: ['UX'] } }),
      authorizations: [{ team_id: WORKSPACE }],
    },
    {
      type: 'shortcut',
      callback_id: 'c',
      user: { id: PEOPLE.ana },
      team: { id: WORKSPACE },
      trigger_id: '1',
    },
    {
      type: 'block_suggestion',
      action_id: 'a',
      value: 'v',
      user: { id: PEOPLE.ana },
      team: { id: WORKSPACE },
    },
    event({
      type: 'function_executed',
      function: { callback_id: 'f' },
      inputs: {},
      function_execution_id: 'x',
    }),
  ];
});
beforeEach(() => platform.reset());
afterAll(async () => {
  await bot.app.stop();
  platform.close();
});

async function expectNoFailure(body: string, type: string): Promise<void> {
  const before = bot.log.entries().length;
  const { statuses } = await exchange(
    port,
    // A client that ends its side first is not waited for while the database answers.
    request(body, { 'content-type': type, connection: 'close' }),
    'wait',
  );
  await bot.app.idle();
  expect(statuses).toHaveLength(1);
  expect(statuses[0]).toSatisfy((status: number) => status < 500);
  const bad = bot.log.entries().slice(before);
  expect(bad.filter(({ level }) => level === 'error' || level === 'fatal')).toEqual([]);
}

/** The ways to every value inside, as lists of keys. */
function waysIn(value: unknown, way: readonly string[] = []): string[][] {
  const deeper =
    typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([key, inner]) => waysIn(inner, [...way, key]))
      : [];
  return [[...way], ...deeper];
}

/** A copy with another value at that place; undefined takes the place away. */
function changedAt(body: unknown, way: readonly string[], value: unknown): unknown {
  const [key, ...rest] = way;
  if (key === undefined) return value;
  const copy = structuredClone(body) as Record<string, unknown>;
  copy[key] = changedAt(copy[key], rest, value);
  return copy;
}

const instead = fc.oneof(
  fc.constant(undefined),
  fc.constantFrom(null, 0, -1, true, '', [], {}, [null], { id: null }, { id: 'U1' }, 'x'.repeat(5_000)),
  fc.jsonValue(),
  hostileText(),
);

/** JSON, or a form with it as its payload, or a form with its members. */
function written(value: unknown, how: number): [body: string, type: string] {
  const json = JSON.stringify(value) ?? '';
  if (how === 0) return [json, 'application/json'];
  if (how === 1) return [new URLSearchParams({ payload: json }).toString(), FORM];
  const members = Object.entries(value ?? {}).map(([key, held]) => [key, String(held)]);
  return [new URLSearchParams(Object.fromEntries(members)).toString(), FORM];
}

describe('a signed request', () => {
  it('of each kind, with one of its values taken away or put otherwise, never makes the bot fail', async () => {
    const changed = fc.nat().chain((which) => {
      const body = bodies[which % bodies.length] as object;
      return fc.record({ body: fc.constant(body), way: fc.constantFrom(...waysIn(body)), value: instead });
    });
    const sent = fc.tuple(changed, fc.nat({ max: 2 }));
    await fc.assert(
      fc.asyncProperty(sent, async ([{ body, way, value }, how]) => {
        await expectNoFailure(...written(changedAt(body, way, value), how));
      }),
      search(300),
    );
  });

  it('of each kind, as it is, never makes the bot fail', async () => {
    for (const body of bodies) for (const how of [0, 1, 2]) await expectNoFailure(...written(body, how));
  });

  it('with any JSON or any bytes never makes the bot fail', async () => {
    const type = fc.constantFrom(
      'application/json',
      FORM,
      'text/plain',
      'multipart/form-data; boundary=x',
      '',
    );
    const body = fc.oneof(fc.json(), hostileText(), fc.webQueryParameters(), fc.string({ unit: 'binary' }));
    await fc.assert(
      fc.asyncProperty(body, type, (text, contentType) => expectNoFailure(text, contentType)),
      search(300),
    );
  });

  it('with a prototype in place of an own value changes nothing for those that follow', async () => {
    const evil = `{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}},"type":"event_callback","team_id":"${WORKSPACE}","event_id":"E","event":{"type":"message","__proto__":{"polluted":true}}}`;
    await expectNoFailure(evil, 'application/json');
    await expectNoFailure('__proto__[polluted]=1&constructor.prototype.polluted=1&__proto__=x', FORM);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });
});
