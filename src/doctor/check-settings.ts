/** Whether the environment can be read, and what it says. Prints no secret. */
import { type Config, ConfigError, readConfig, unknownSettings } from '../config.ts';
import { readSecretFiles } from '../secret-files.ts';
import type { Finding } from './finding.ts';

/** The oldest that runs TypeScript as it is, as package.json says. */
const OLDEST_NODE = 24;

interface SettingsCheck {
  readonly findings: readonly Finding[];
  /** Undefined when the settings can't be used. */
  readonly config: Config | undefined;
  /** With the values of the files that it names, unless they can't be read. */
  readonly environment: Readonly<Record<string, string | undefined>>;
}

export function checkSettings(
  environment: Readonly<Record<string, string | undefined>>,
  nodeVersion = process.versions.node,
): SettingsCheck {
  const isOld = Number(nodeVersion.split('.')[0]) < OLDEST_NODE;
  const unknown = unknownSettings(environment);
  const before: Finding[] = [
    ...(isOld ? [{ code: 'node-too-old', version: nodeVersion, oldest: String(OLDEST_NODE) } as const] : []),
    ...(unknown.length > 0 ? [{ code: 'settings-unknown', names: unknown } as const] : []),
  ];
  let whole = environment;
  try {
    whole = readSecretFiles(environment);
    const config = readConfig(whole);
    return {
      config,
      environment: whole,
      findings: [...before, described(config), ...cautions(config)],
    };
  } catch (error) {
    if (!(error instanceof ConfigError)) throw error;
    return { config: undefined, environment: whole, findings: [...before, ...error.problems] };
  }
}

function described({ transport, databaseUrl, dataFolder, metrics, logLevel, setUpUsers }: Config): Finding {
  return {
    code: 'settings-fine',
    mode: transport.mode,
    database: databaseUrl === undefined ? 'data-folder' : 'postgres',
    folder: dataFolder,
    metrics: metrics ? 'on' : 'off',
    metricsPort: String(metrics?.port),
    logLevel,
    setUpBy: setUpBy(setUpUsers),
  };
}

function setUpBy(users: Config['setUpUsers']) {
  if (!users) return 'anybody';
  if (users.userIds.length === 0) return 'admins';
  return users.admins ? 'admins-and-named' : 'named';
}

function cautions({ logLevel }: Config): Finding[] {
  return logLevel === 'trace' || logLevel === 'debug' ? [{ code: 'log-holds-words', logLevel }] : [];
}
