/** Runs all checks and says what they found. When one breaks, the others still run. */
import { describeError, type Logger, withoutSecrets } from '../logger.ts';
import { checkDataFolder } from './check-data-folder.ts';
import { checkDatabase } from './check-database.ts';
import { checkCharts, checkPort, checkTimeZones } from './check-machine.ts';
import { checkManifest } from './check-manifest.ts';
import { checkPlatformSide } from './check-platform-side.ts';
import { checkSettings } from './check-settings.ts';
import { type Check, type Finding, findingWords, type Kind, kindOf } from './finding.ts';

interface Examination {
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** Undefined: the one that comes with the bot. */
  readonly manifestFile: string | undefined;
  readonly logger: Logger;
  readonly nowMs?: () => number;
}

const OWN_MANIFEST = new URL('../../deploy/app-manifest.json', import.meta.url);
const OWN_MANIFEST_FOR_MANY = new URL('../../deploy/app-manifest-many.json', import.meta.url);

/** A finding as the operator reads it: on one line, without anything secret. */
export interface SaidFinding extends Kind {
  readonly code: string;
  readonly words: string;
}

export async function examine(given: Examination): Promise<readonly SaidFinding[]> {
  const { manifestFile, logger, nowMs = Date.now } = given;
  const { config, environment, findings } = checkSettings(given.environment);
  const publicUrl = config?.access.kind === 'many-workspaces' ? config.access.publicUrl : undefined;
  const manifest = manifestFile ?? (publicUrl === undefined ? OWN_MANIFEST : OWN_MANIFEST_FOR_MANY);
  const all: Finding[] = [...findings];
  const check = async (name: Check, run: () => Promise<Finding[]>): Promise<void> => {
    all.push(...(await run().catch((error: unknown) => [failed(name, error)])));
  };
  // One after the other: a database in the folder must be closed before the folder is checked.
  if (config) {
    await check('database', () => checkDatabase(config));
    if (config.databaseUrl === undefined) {
      await check('data-folder', () => checkDataFolder(config.dataFolder));
    }
    await check('tokens', () => checkPlatformSide({ config, logger, nowMs }));
    const { port, host, healthPort } = config;
    await check('port', () => checkPort(port, healthPort, host));
    if (healthPort !== undefined) await check('port', () => checkPort(healthPort, healthPort, host));
  } else {
    all.push({ code: 'settings-first' });
  }
  await check('manifest', () => checkManifest(manifest, config?.transport.mode, !manifestFile, publicUrl));
  await check('charts', () => checkCharts());
  await check('time-zones', async () => checkTimeZones());
  const secrets = secretsIn(environment);
  return all.map((finding) => ({
    ...kindOf(finding),
    code: finding.code,
    words: withoutThese(secrets, findingWords(finding)),
  }));
}

function failed(check: Check, error: unknown): Finding {
  const { kind, message } = describeError(error);
  return { code: 'check-failed', check, reason: String(message ?? kind) };
}

function withoutThese(secrets: readonly string[], words: string): string {
  return secrets
    .reduce((rest, secret) => rest.replaceAll(secret, '…'), withoutSecrets(words))
    .replace(/\s+/g, ' ');
}

/** Settings that hold secrets, whether the current mode uses them or not. */
const SECRET_SETTINGS = [
  'LOADLINE_BOT_TOKEN',
  'LOADLINE_APP_TOKEN',
  'LOADLINE_SIGNING_SECRET',
  'LOADLINE_METRICS_TOKEN',
  'LOADLINE_CLIENT_SECRET',
];

function secretsIn(environment: Examination['environment']): string[] {
  const url = environment.DATABASE_URL?.trim() ?? '';
  const password = URL.canParse(url) ? new URL(url).password : '';
  return [
    ...SECRET_SETTINGS.map((name) => environment[name]?.trim() ?? ''),
    // The keys; their names may be shown.
    ...(environment.LOADLINE_TOKEN_KEYS ?? '').split(/[\s,]+/).map((entry) => entry.replace(/^[^:]*:/, '')),
    password,
    decoded(password),
  ].filter((secret) => secret !== '');
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
