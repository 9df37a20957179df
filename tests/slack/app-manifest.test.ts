import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import manifest from '../../deploy/app-manifest.json' with { type: 'json' };
import manifestForMany from '../../deploy/app-manifest-many.json' with { type: 'json' };
import { SHORTCUT_ACTIONS } from '../../src/slack/commands/commands.ts';
import { EVENTS_PATH } from '../../src/slack/door/http-door.ts';
import { COMMAND } from '../../src/slack/ids.ts';
import { INSTALL_PATH, RETURN_PATH } from '../../src/slack/workspaces/install-pages.ts';
import {
  DISTRIBUTION_EVENTS,
  NEEDED_EVENTS,
  NEEDED_SCOPES,
} from '../../src/slack/workspaces/manifest-needs.ts';

/** Limits from docs.slack.dev/reference/app-manifest, for the parts that the manifest uses. */
const flag = { type: 'boolean' };
const text = (minLength: number, maxLength: number) => ({ type: 'string', minLength, maxLength });
const names = (maxItems: number) => ({ type: 'array', uniqueItems: true, maxItems, items: text(1, 50) });
const strict = (properties: object, required = Object.keys(properties)) => ({
  type: 'object',
  additionalProperties: false,
  required,
  properties,
});
const LIMITS = strict({
  _metadata: strict({ major_version: { enum: [1, 2] }, minor_version: { type: 'integer' } }),
  display_information: strict({
    name: text(1, 35),
    description: text(1, 140),
    long_description: text(175, 4_000),
    background_color: { type: 'string', pattern: '^#[0-9a-fA-F]{3}([0-9a-fA-F]{3})?$' },
  }),
  features: strict({
    app_home: strict({
      home_tab_enabled: flag,
      messages_tab_enabled: flag,
      messages_tab_read_only_enabled: flag,
    }),
    bot_user: strict({
      display_name: { type: 'string', pattern: '^[a-z0-9._-]{1,80}$' },
      always_online: flag,
    }),
    shortcuts: {
      type: 'array',
      maxItems: 10,
      items: strict({
        name: text(1, 24),
        type: { enum: ['global', 'message'] },
        callback_id: text(1, 255),
        description: text(1, 150),
      }),
    },
    slash_commands: {
      type: 'array',
      minItems: 1,
      maxItems: 50,
      items: strict({
        command: { type: 'string', pattern: '^/', minLength: 2, maxLength: 32 },
        description: text(1, 2_000),
        usage_hint: text(1, 1_000),
        should_escape: flag,
      }),
    },
  }),
  oauth_config: strict({ scopes: strict({ bot: names(255) }) }),
  settings: strict({
    event_subscriptions: strict({ bot_events: names(100) }),
    interactivity: strict({ is_enabled: flag }),
    org_deploy_enabled: flag,
    socket_mode_enabled: flag,
    token_rotation_enabled: flag,
  }),
});

describe('the app manifest', () => {
  const validate = new Ajv({ allErrors: true }).compile(LIMITS);

  it('keeps within the documented names and limits', () => {
    validate(manifest);
    expect(validate.errors ?? []).toEqual([]);
  });

  it('would be refused with a name too long or a setting that does not exist', () => {
    const { display_information, settings } = manifest;
    expect(
      validate({ ...manifest, display_information: { ...display_information, name: 'x'.repeat(36) } }),
    ).toBe(false);
    expect(validate({ ...manifest, settings: { ...settings, socket_mode: true } })).toBe(false);
  });

  it('asks for exactly the scopes that the start-up checks', () => {
    expect(manifest.oauth_config.scopes.bot.toSorted()).toEqual(Object.keys(NEEDED_SCOPES).toSorted());
  });

  it('registers the command, with mentions delivered as ids', () => {
    expect(manifest.features.slash_commands).toEqual([
      expect.objectContaining({ command: COMMAND, should_escape: true }),
    ]);
  });

  it('offers every shortcut that is answered, under its id', () => {
    const ids = manifest.features.shortcuts.map(({ callback_id }) => callback_id);
    expect(ids.toSorted()).toEqual([...SHORTCUT_ACTIONS.keys()].toSorted());
  });

  it('switches on what the listeners listen to', () => {
    expect(manifest.settings).toMatchObject({
      socket_mode_enabled: true,
      interactivity: { is_enabled: true },
      event_subscriptions: { bot_events: [...NEEDED_EVENTS] },
    });
    expect(manifest.features.app_home).toEqual({
      home_tab_enabled: true,
      messages_tab_enabled: true,
      messages_tab_read_only_enabled: false,
    });
  });
});

describe('the app manifest for many workspaces', () => {
  const HOST = 'https://your-host';

  it('is the other one, but for the addresses of HTTP, the way back of browsers, and the events of a removal', () => {
    const url = `${HOST}${EVENTS_PATH}`;
    expect(manifestForMany).toEqual({
      ...manifest,
      features: {
        ...manifest.features,
        slash_commands: manifest.features.slash_commands.map((command) => ({ ...command, url })),
      },
      oauth_config: { ...manifest.oauth_config, redirect_urls: [`${HOST}${RETURN_PATH}`] },
      settings: {
        ...manifest.settings,
        event_subscriptions: { request_url: url, bot_events: [...NEEDED_EVENTS, ...DISTRIBUTION_EVENTS] },
        interactivity: { is_enabled: true, request_url: url },
        socket_mode_enabled: false,
      },
    });
  });

  it('names the paths at which the bot answers', () => {
    expect([EVENTS_PATH, INSTALL_PATH, RETURN_PATH]).toEqual([
      '/slack/events',
      '/slack/install',
      '/slack/oauth',
    ]);
  });
});
