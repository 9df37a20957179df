/**
 * Whether an app manifest, ours or the one that an operator saved from the app's settings, gives the bot what
 * it needs: command, scopes, events, buttons, and the way in that the settings say.
 */
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import type { Config } from '../config.ts';
import { COMMAND } from '../slack/ids.ts';
import { RETURN_PATH } from '../slack/workspaces/install-pages.ts';
import { DISTRIBUTION_EVENTS, NEEDED_EVENTS } from '../slack/workspaces/manifest-needs.ts';
import { NEEDED_SCOPES } from '../slack/workspaces/scopes.ts';
import { type Finding, findingsOf } from './finding.ts';

const { ok, warning, mend } = findingsOf('manifest');

const manifestShape = z.looseObject({
  features: z
    .looseObject({
      app_home: z
        .looseObject({
          home_tab_enabled: z.boolean().optional(),
          messages_tab_enabled: z.boolean().optional(),
        })
        .optional(),
      slash_commands: z
        .array(
          z.looseObject({
            command: z.string(),
            url: z.string().optional(),
            should_escape: z.boolean().optional(),
          }),
        )
        .default([]),
    })
    .prefault({}),
  oauth_config: z
    .looseObject({
      scopes: z.looseObject({ bot: z.array(z.string()).default([]) }).prefault({}),
      redirect_urls: z.array(z.string()).default([]),
    })
    .prefault({}),
  settings: z
    .looseObject({
      event_subscriptions: z
        .looseObject({ bot_events: z.array(z.string()).default([]), request_url: z.string().optional() })
        .prefault({}),
      interactivity: z
        .looseObject({ is_enabled: z.boolean().default(false), request_url: z.string().optional() })
        .prefault({}),
      socket_mode_enabled: z.boolean().default(false),
    })
    .prefault({}),
});
type Manifest = z.infer<typeof manifestShape>;

/**
 * @param isOwn the manifest that comes with the bot: it is made for sockets, or holds addresses to be filled in, which is
 *   no fault of the operator
 * @param publicUrl where browsers reach a bot that many workspaces install; undefined for one workspace
 */
export async function checkManifest(
  file: string | URL,
  mode: Config['transport']['mode'] | undefined,
  isOwn: boolean,
  publicUrl?: string,
): Promise<Finding[]> {
  let manifest: Manifest;
  try {
    manifest = manifestShape.parse(JSON.parse(await readFile(file, 'utf8')));
  } catch (error) {
    const { code } = error as { code?: unknown };
    return [
      mend(
        `The manifest can not be read (${typeof code === 'string' ? code : 'it is no manifest in JSON'}).`,
        'Save it as JSON from the page App Manifest of your app, and name that file with --manifest.',
      ),
    ];
  }
  const events = publicUrl === undefined ? NEEDED_EVENTS : [...NEEDED_EVENTS, ...DISTRIBUTION_EVENTS];
  const problems = [
    ...lacking(manifest, events),
    ...(isOwn || mode === undefined ? [] : wayIn(manifest, mode)),
    ...(isOwn || publicUrl === undefined ? [] : wayBack(manifest, publicUrl)),
  ];
  if (isOwn && mode === 'http' && publicUrl === undefined) {
    problems.push(
      warning(
        'The manifest that comes with the bot is made for sockets, the settings say HTTP.',
        'Switch Socket Mode off in your app and set its request URLs; check the result with --manifest.',
      ),
    );
  }
  return problems.length > 0 ? problems : [ok('It has the command, scopes and events that the bot needs.')];
}

function lacking({ features, oauth_config, settings }: Manifest, neededEvents: readonly string[]): Finding[] {
  const command = features.slash_commands.find((one) => one.command === COMMAND);
  const missingScopes = Object.keys(NEEDED_SCOPES).filter(
    (scope) => !oauth_config.scopes.bot.includes(scope),
  );
  const missingEvents = neededEvents.filter(
    (event) => !settings.event_subscriptions.bot_events.includes(event),
  );
  const again = 'on the page App Manifest of your app, save, and install the app to the workspace again.';
  return [
    command
      ? undefined
      : mend(`The command ${COMMAND} is missing.`, `Add it under features.slash_commands ${again}`),
    command && !command.should_escape
      ? mend(
          `The command ${COMMAND} does not escape names, so owners can not be told apart.`,
          `Set should_escape to true ${again}`,
        )
      : undefined,
    missingScopes.length > 0
      ? mend(
          `Scopes are missing: ${missingScopes.join(', ')}.`,
          `Add them under oauth_config.scopes.bot ${again}`,
        )
      : undefined,
    missingEvents.length > 0
      ? mend(
          `Events are missing: ${missingEvents.join(', ')}.`,
          `Add them under settings.event_subscriptions.bot_events ${again}`,
        )
      : undefined,
    settings.interactivity.is_enabled
      ? undefined
      : mend('Buttons and forms are off.', `Set settings.interactivity.is_enabled to true ${again}`),
    features.app_home?.home_tab_enabled && features.app_home.messages_tab_enabled
      ? undefined
      : mend(
          'The home page or the direct messages of the bot are off.',
          `Set home_tab_enabled and messages_tab_enabled under features.app_home to true ${again}`,
        ),
  ].filter((finding) => finding !== undefined);
}

/** Browsers come back from the platform only to addresses that the app names. */
function wayBack({ oauth_config }: Manifest, publicUrl: string): Finding[] {
  const address = `${publicUrl}${RETURN_PATH}`;
  if (oauth_config.redirect_urls.includes(address)) return [];
  return [
    mend(
      'The address to which browsers come back after an installation is missing.',
      `Add ${address} under oauth_config.redirect_urls on the page App Manifest of your app, and save.`,
    ),
  ];
}

function wayIn({ features, settings }: Manifest, mode: Config['transport']['mode']): Finding[] {
  if (mode === 'socket') {
    if (settings.socket_mode_enabled) return [];
    return [
      mend(
        'Socket Mode is off in the manifest, the settings say socket.',
        'Switch it on, on the page Socket Mode of your app, or set LOADLINE_MODE=http.',
      ),
    ];
  }
  if (settings.socket_mode_enabled) {
    return [
      mend(
        'Socket Mode is on in the manifest, the settings say HTTP: requests would not come in.',
        'Switch it off, on the page Socket Mode of your app, or set LOADLINE_MODE=socket.',
      ),
    ];
  }
  const urls = {
    'the command': features.slash_commands.find((one) => one.command === COMMAND)?.url,
    events: settings.event_subscriptions.request_url,
    interactivity: settings.interactivity.request_url,
  };
  const wrong = Object.entries(urls).filter(([, url]) => !/^https:\/\/[^/]+\/slack\/events$/.test(url ?? ''));
  if (wrong.length === 0) return [];
  return [
    mend(
      `The request URL of ${wrong.map(([what]) => what).join(' and of ')} does not lead to the bot.`,
      'Set it to https://your-host/slack/events.',
    ),
  ];
}
