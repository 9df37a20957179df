/**
 * Whether an app manifest, ours or the one that an operator saved from the app's settings, gives the bot what
 * it needs: command, scopes, events, buttons, and the way in that the settings say.
 */
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import type { Config } from '../config.ts';
import { COMMAND } from '../slack/ids.ts';
import { RETURN_PATH } from '../slack/workspaces/install-pages.ts';
import { DISTRIBUTION_EVENTS, NEEDED_EVENTS, NEEDED_SCOPES } from '../slack/workspaces/manifest-needs.ts';
import type { Finding } from './finding.ts';

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
      token_rotation_enabled: z.boolean().default(false),
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
      typeof code === 'string' ? { code: 'manifest-unreadable', reason: code } : { code: 'manifest-no-json' },
    ];
  }
  const events = publicUrl === undefined ? NEEDED_EVENTS : [...NEEDED_EVENTS, ...DISTRIBUTION_EVENTS];
  const problems: Finding[] = [
    ...lacking(manifest, events),
    ...(isOwn || mode === undefined ? [] : wayIn(manifest, mode)),
    ...(isOwn || publicUrl === undefined ? [] : wayBack(manifest, publicUrl)),
  ];
  if (isOwn && mode === 'http' && publicUrl === undefined) problems.push({ code: 'manifest-for-sockets' });
  return problems.length > 0 ? problems : [{ code: 'manifest-fine' }];
}

function lacking({ features, oauth_config, settings }: Manifest, neededEvents: readonly string[]): Finding[] {
  const command = features.slash_commands.find((one) => one.command === COMMAND);
  const scopes = Object.keys(NEEDED_SCOPES).filter((scope) => !oauth_config.scopes.bot.includes(scope));
  const events = neededEvents.filter((event) => !settings.event_subscriptions.bot_events.includes(event));
  const findings: Finding[] = [];
  if (!command) findings.push({ code: 'manifest-command', command: COMMAND });
  else if (!command.should_escape) findings.push({ code: 'manifest-escape', command: COMMAND });
  if (scopes.length > 0) findings.push({ code: 'manifest-scopes', scopes });
  if (events.length > 0) findings.push({ code: 'manifest-events', events });
  if (!settings.interactivity.is_enabled) findings.push({ code: 'manifest-buttons' });
  if (!features.app_home?.home_tab_enabled || !features.app_home.messages_tab_enabled)
    findings.push({ code: 'manifest-home' });
  if (settings.token_rotation_enabled) findings.push({ code: 'manifest-rotation' });
  return findings;
}

/** Browsers come back from the platform only to addresses that the app names. */
function wayBack({ oauth_config }: Manifest, publicUrl: string): Finding[] {
  const address = `${publicUrl}${RETURN_PATH}`;
  return oauth_config.redirect_urls.includes(address) ? [] : [{ code: 'manifest-return', address }];
}

function wayIn({ features, settings }: Manifest, mode: Config['transport']['mode']): Finding[] {
  if (mode === 'socket') return settings.socket_mode_enabled ? [] : [{ code: 'manifest-socket-off' }];
  if (settings.socket_mode_enabled) return [{ code: 'manifest-socket-on' }];
  const urls = {
    'features.slash_commands.url': features.slash_commands.find((one) => one.command === COMMAND)?.url,
    'settings.event_subscriptions.request_url': settings.event_subscriptions.request_url,
    'settings.interactivity.request_url': settings.interactivity.request_url,
  };
  const fields = Object.entries(urls)
    .filter(([, url]) => !/^https:\/\/[^/]+\/slack\/events$/.test(url ?? ''))
    .map(([field]) => field);
  return fields.length === 0 ? [] : [{ code: 'manifest-urls', fields }];
}
