/** The checks that need neither platform nor database, in every state. */
import { chmod, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import ownManifest from '../../deploy/app-manifest.json' with { type: 'json' };
import { checkDataFolder, diskFindings } from '../../src/doctor/check-data-folder.ts';
import { checkTokenKeys } from '../../src/doctor/check-database.ts';
import { checkCharts, checkTimeZones, clockFinding, drawDot } from '../../src/doctor/check-machine.ts';
import { checkManifest } from '../../src/doctor/check-manifest.ts';
import { checkSettings } from '../../src/doctor/check-settings.ts';
import { type Finding, findingWords, kindOf } from '../../src/doctor/finding.ts';

const NOW = new Date('2026-11-04T09:20:00Z');
const brief = (findings: readonly Finding[]): string[] =>
  findings.map((finding) => `${kindOf(finding).level}: ${findingWords(finding)}`);

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loadline-checks-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('the clock', () => {
  // 300 s: beyond that the platform's signed requests are refused, docs.slack.dev/authentication/verifying-requests-from-slack
  it.each([
    [0, 'ok'],
    [30, 'ok'],
    [31, 'warning'],
    [-299, 'warning'],
    [300, 'fix'],
    [-3_600, 'fix'],
  ])('that is off by %i s: %s', (skewSeconds, level) => {
    const own = new Date(NOW.getTime() + skewSeconds * 1_000);
    expect(kindOf(clockFinding('platform', NOW, own)).level).toBe(level);
  });
});

describe('the settings', () => {
  const SOCKET = { LOADLINE_BOT_TOKEN: 'xoxb-SECRET', LOADLINE_APP_TOKEN: 'xapp-SECRET' };

  it('are described without a secret', () => {
    const { findings, config } = checkSettings({ ...SOCKET, DATABASE_URL: 'postgres://u:SECRET@h/d' });
    expect(config).toBeDefined();
    expect(brief(findings)).toEqual([expect.stringMatching(/^ok: .*socket mode, Postgres, metrics off/)]);
    expect(JSON.stringify(findings)).not.toContain('SECRET');
  });

  it('that make the log hold people’s words are warned of', () => {
    expect(brief(checkSettings({ ...SOCKET, LOG_LEVEL: 'trace' }).findings)[1]).toMatch(
      /^warning: The log level is trace/,
    );
  });

  it('that nobody knows are named', () => {
    expect(brief(checkSettings({ ...SOCKET, LOADLINE_SETUP_USER: 'admins' }).findings)[0]).toMatch(
      /^warning: The bot knows no LOADLINE_SETUP_USER /,
    );
  });

  it('are named each with its own remedy when they are wrong', () => {
    const { findings, config } = checkSettings({ PORT: 'x' });
    expect(config).toBeUndefined();
    expect(brief(findings)).toEqual([
      expect.stringMatching(/^fix: LOADLINE_BOT_TOKEN is missing\. Set it .*\.$/),
      expect.stringMatching(/^fix: PORT must be a whole number .*\.$/),
      expect.stringMatching(/^fix: LOADLINE_APP_TOKEN is missing\. Create .*\.$/),
    ]);
  });

  it('do not help a Node.js that is too old', () => {
    expect(brief(checkSettings(SOCKET, '22.11.0').findings)[0]).toMatch(
      /^fix: Node\.js 22\.11\.0 is too old\./,
    );
  });
});

describe('the data folder', () => {
  it('that is there and private is fine, and nothing is left in it', async () => {
    await chmod(folder, 0o700);
    expect(brief(await checkDataFolder(folder))).toEqual([`ok: ${folder} can be written to.`]);
  });

  it('that is not there yet is fine when it can be made', async () => {
    const deep = join(folder, 'not', 'yet');
    expect(brief(await checkDataFolder(deep))).toEqual([expect.stringMatching(/^ok: .* doesn’t exist yet/)]);
  });

  it('into which others can look is warned of', async () => {
    await chmod(folder, 0o755);
    expect(brief(await checkDataFolder(folder))).toContainEqual(
      expect.stringMatching(/^warning: .* Run: chmod 700 /),
    );
  });

  it('that is a file, or where nothing can be written, must be fixed', async () => {
    await writeFile(join(folder, 'file'), '');
    expect(brief(await checkDataFolder(join(folder, 'file')))).toEqual([
      expect.stringMatching(/^fix: .* is not a folder/),
    ]);
    // Nobody can make a file there, root included.
    expect(brief(await checkDataFolder('/proc/loadline'))).toEqual([
      expect.stringMatching(/^fix: .* can’t be written to \(E[A-Z]+\)\. /),
    ]);
  });

  it.each([
    [499, 'warning'],
    [99, 'fix'],
  ])('with %i MB left on its disk: %s', (megabytes, level) => {
    expect(diskFindings(megabytes * 1024 * 1024, '/data').map((finding) => kindOf(finding).level)).toEqual([
      level,
    ]);
    expect(diskFindings(500 * 1024 * 1024, '/data')).toEqual([]);
  });
});

describe('the libraries', () => {
  it('draw here', async () => {
    expect(brief(await checkCharts())).toEqual(['ok: The drawing library and its font load.']);
    expect((await drawDot()).length).toBeGreaterThan(8);
  });

  it.each([
    ['can not be loaded', () => Promise.reject(new Error('Cannot find native binding.\nmore'))],
    ['draw something that is no PNG', async () => new Uint8Array(64)],
  ])('that %s must be installed on this machine', async (_how, draw) => {
    expect(brief(await checkCharts(draw))).toEqual([expect.stringMatching(/^fix: .*npm ci --omit=dev/)]);
  });

  it('know the time zones, or are named when they do not', () => {
    expect(brief(checkTimeZones())).toEqual(['ok: Known, with their clock changes.']);
    const unknown = [expect.stringMatching(/^fix: This Node\.js doesn’t know/)];
    expect(brief(checkTimeZones(() => '06'))).toEqual(unknown);
    const throwing = () => {
      throw new RangeError('Invalid time zone');
    };
    expect(brief(checkTimeZones(throwing))).toEqual(unknown);
  });
});

type Manifest = typeof ownManifest;

async function checked(
  change: (manifest: Manifest) => void,
  mode: 'socket' | 'http' = 'socket',
): Promise<string[]> {
  const manifest = structuredClone(ownManifest);
  change(manifest);
  const file = join(folder, 'manifest.json');
  await writeFile(file, JSON.stringify(manifest));
  return brief(await checkManifest(file, mode, false));
}

describe('the token keys', () => {
  const many = (...names: [string, ...string[]]) =>
    ({
      kind: 'many-workspaces',
      clientId: '1.2',
      clientSecret: 'unused-in-this-test',
      publicUrl: 'https://loadline.example.org',
      allowedWorkspaces: '*',
      tokenKeys: names.map((name) => ({ name, key: new Uint8Array(32) })) as never,
    }) as const;

  it.each([
    ['no table yet', many('spring'), undefined, ['ok: The keys of all stored tokens are given.']],
    [
      'all under the first key',
      many('spring', 'old'),
      ['spring'],
      ['ok: The keys of all stored tokens are given.'],
    ],
    [
      'a missing key',
      many('autumn'),
      ['spring', 'winter'],
      [
        expect.stringMatching(
          /^fix: Keys of stored tokens are missing in LOADLINE_TOKEN_KEYS: spring, winter\./,
        ),
      ],
    ],
    [
      'a former key in use',
      many('autumn', 'spring'),
      ['autumn', 'spring'],
      [expect.stringMatching(/^warning: Tokens are still stored under former keys: spring\./)],
    ],
    ['one workspace, nothing stored', { kind: 'one-workspace', botToken: 'x' } as const, [], []],
    [
      'one workspace, tokens stored',
      { kind: 'one-workspace', botToken: 'x' } as const,
      ['spring'],
      [expect.stringMatching(/^warning: The database holds tokens/)],
    ],
  ])('with %s', (_what, access, stored, said) => {
    expect(brief(checkTokenKeys(access, stored))).toEqual(said);
  });
});

describe('the manifest', () => {
  it('that comes with the bot has all that is needed, and is made for sockets', async () => {
    const own = new URL('../../deploy/app-manifest.json', import.meta.url);
    expect(brief(await checkManifest(own, 'socket', true))).toEqual([expect.stringMatching(/^ok: /)]);
    expect(brief(await checkManifest(own, 'http', true))).toEqual([
      expect.stringMatching(/^warning: .* is for sockets/),
    ]);
  });

  it.each<[string, (manifest: Manifest) => void, RegExp]>([
    [
      'another command',
      (m) => Object.assign(m.features.slash_commands[0] ?? {}, { command: '/other' }),
      /command \/loadline/,
    ],
    [
      'names that are not escaped',
      (m) => Object.assign(m.features.slash_commands[0] ?? {}, { should_escape: false }),
      /doesn’t escape/,
    ],
    ['a scope less', (m) => m.oauth_config.scopes.bot.shift(), /Scopes are missing: chat:write\./],
    [
      'an event less',
      (m) => m.settings.event_subscriptions.bot_events.pop(),
      /Events are missing: channel_id_changed\./,
    ],
    [
      'no buttons',
      (m) => Object.assign(m.settings.interactivity, { is_enabled: false }),
      /Buttons and forms are off/,
    ],
    ['no home page', (m) => Object.assign(m.features.app_home, { home_tab_enabled: false }), /home page/],
    [
      'tokens that expire',
      (m) => Object.assign(m.settings, { token_rotation_enabled: true }),
      /Token rotation is switched on.*Create another app/,
    ],
    ['no socket', (m) => Object.assign(m.settings, { socket_mode_enabled: false }), /Socket Mode is off/],
  ])('with %s must be fixed', async (_what, change, words) => {
    expect(await checked(change)).toEqual([expect.stringMatching(new RegExp(`^fix: .*${words.source}`))]);
  });

  it('for HTTP needs the socket off and each address set', async () => {
    expect(await checked(() => undefined, 'http')).toEqual([
      expect.stringMatching(/^fix: Socket Mode is on/),
    ]);
    const toHttp = (url: string) => (manifest: Manifest) => {
      const { settings, features } = manifest;
      settings.socket_mode_enabled = false;
      Object.assign(settings.event_subscriptions, { request_url: url });
      Object.assign(settings.interactivity, { request_url: url });
      Object.assign(features.slash_commands[0] ?? {}, { url });
    };
    expect(await checked(toHttp('https://bot.example/slack/events'), 'http')).toEqual([
      expect.stringMatching(/^ok: /),
    ]);
    expect(await checked(toHttp('http://bot.example/slack/events'), 'http')).toEqual([
      expect.stringMatching(
        /^fix: .*: features\.slash_commands\.url, settings\.event_subscriptions\.request_url, settings\.interactivity\.request_url\./,
      ),
    ]);
  });

  it('for many workspaces needs the events of a removal and the way back of browsers', async () => {
    const many = new URL('../../deploy/app-manifest-many.json', import.meta.url);
    const publicUrl = 'https://loadline.example.org';
    expect(brief(await checkManifest(many, 'http', true, publicUrl))).toEqual([
      expect.stringMatching(/^ok: /),
    ]);
    const filledIn = join(folder, 'filled-in.json');
    const text = await readFile(many, 'utf8');
    await writeFile(filledIn, text.replaceAll('https://your-host', publicUrl));
    expect(brief(await checkManifest(filledIn, 'http', false, publicUrl))).toEqual([
      expect.stringMatching(/^ok: /),
    ]);
    await writeFile(filledIn, text.replaceAll('https://your-host', 'https://another.example.org'));
    expect(brief(await checkManifest(filledIn, 'http', false, publicUrl))).toEqual([
      expect.stringMatching(/^fix: The address to which browsers come back/),
    ]);
    const one = new URL('../../deploy/app-manifest.json', import.meta.url);
    expect(brief(await checkManifest(one, 'socket', false, publicUrl))).toEqual([
      expect.stringMatching(/^fix: Events are missing: app_uninstalled, tokens_revoked\./),
      expect.stringMatching(/^fix: The address to which browsers come back/),
    ]);
  });

  it('that can not be read, or is something else, says so', async () => {
    expect(brief(await checkManifest(join(folder, 'absent.json'), 'socket', false))).toEqual([
      expect.stringMatching(/^fix: The manifest can’t be read \(ENOENT\)\./),
    ]);
    const file = join(folder, 'other.json');
    for (const text of ['not: json', '[]', '{"oauth_config": {"scopes": {"bot": "chat:write"}}}']) {
      await writeFile(file, text);
      expect(brief(await checkManifest(file, 'socket', false))).toEqual([
        expect.stringMatching(/^fix: The manifest can’t be read: it is not a manifest in JSON\./),
      ]);
    }
    expect(await readFile(file, 'utf8')).toContain('oauth_config');
  });
});
