/** Runs all checks and gathers what they found. One that breaks does not keep the others from running. */
import { describeError, type Logger, withoutSecrets } from '../logger.ts';
import { checkDataFolder } from './check-data-folder.ts';
import { checkDatabase } from './check-database.ts';
import { checkCharts, checkTimeZones } from './check-libraries.ts';
import { checkManifest } from './check-manifest.ts';
import { checkPlatformSide } from './check-platform-side.ts';
import { checkPort } from './check-port.ts';
import { checkSettings } from './check-settings.ts';
import { type Finding, findingsOf } from './finding.ts';

export interface Examination {
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** Undefined: the one that comes with the bot. */
  readonly manifestFile: string | undefined;
  readonly logger: Logger;
  readonly nowMs?: () => number;
}

const OWN_MANIFEST = new URL('../../deploy/app-manifest.json', import.meta.url);
const OWN_MANIFEST_FOR_MANY = new URL('../../deploy/app-manifest-many.json', import.meta.url);

export async function examine(given: Examination): Promise<readonly Finding[]> {
  const { manifestFile, logger, nowMs = Date.now } = given;
  const { config, environment, findings } = checkSettings(given.environment);
  const publicUrl = config?.access.kind === 'many-workspaces' ? config.access.publicUrl : undefined;
  const checks: [name: string, run: () => Promise<Finding[]>][] = config
    ? [
        ['database', () => checkDatabase(config)],
        ...(config.databaseUrl === undefined
          ? ([['data folder', () => checkDataFolder(config.dataFolder)]] as [
              string,
              () => Promise<Finding[]>,
            ][])
          : []),
        ['tokens', () => checkPlatformSide({ config, logger, nowMs })],
        ['port', () => checkPort(config.port)],
      ]
    : [];
  checks.push(
    [
      'manifest',
      () =>
        checkManifest(
          manifestFile ?? (publicUrl === undefined ? OWN_MANIFEST : OWN_MANIFEST_FOR_MANY),
          config?.transport.mode,
          !manifestFile,
          publicUrl,
        ),
    ],
    ['charts', () => checkCharts()],
    ['time zones', async () => checkTimeZones()],
  );
  const all = [...findings];
  if (!config) {
    all.push(
      findingsOf('database').warning(
        'Database, tokens, clock and port were not looked at.',
        'Mend the settings first, then run this again.',
      ),
    );
  }
  // One after the other: a database in the folder must be closed before the folder is judged.
  for (const [name, run] of checks) all.push(...(await run().catch((error) => [broken(name, error)])));
  const secrets = secretsIn(environment);
  return all.map((finding) => tidied(finding, secrets));
}

function broken(check: string, error: unknown): Finding {
  const { kind, message } = describeError(error);
  return findingsOf(check).mend(
    `The check itself failed: ${String(message ?? kind)}`,
    'Run it again; if it fails again, report this line.',
  );
}

/** A line each, without anything that was given in confidence. */
function tidied(finding: Finding, secrets: readonly string[]): Finding {
  const clean = (text: string): string =>
    secrets
      .reduce((words, secret) => words.replaceAll(secret, '…'), withoutSecrets(text))
      .replace(/\s+/g, ' ');
  return {
    ...finding,
    found: clean(finding.found),
    ...(finding.mend === undefined ? {} : { mend: clean(finding.mend) }),
  };
}

/** The settings that are given in confidence, whether the present mode uses them or not. */
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
    // Each key without its name, which is shown.
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
