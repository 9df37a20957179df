/** Whether the environment can be read, and what it says. Prints no secret. */
import { type Config, ConfigError, readConfig } from '../config.ts';
import { readSecretFiles } from '../secret-files.ts';
import { type Finding, findingsOf } from './finding.ts';

const { ok, mend, warning } = findingsOf('settings');

/** The oldest that runs TypeScript as it is, as package.json says. */
const OLDEST_NODE = 24;

export interface SettingsCheck {
  readonly findings: readonly Finding[];
  /** Undefined: what needs the settings can't be looked at. */
  readonly config: Config | undefined;
  /** With the values of the files that it names; as it was given when they can't be read. */
  readonly environment: Readonly<Record<string, string | undefined>>;
}

export function checkSettings(
  environment: Readonly<Record<string, string | undefined>>,
  nodeVersion = process.versions.node,
): SettingsCheck {
  const old = Number(nodeVersion.split('.')[0]) < OLDEST_NODE;
  const aboutNode = old
    ? [mend(`Node.js ${nodeVersion} is too old.`, `Use Node.js ${OLDEST_NODE} or later.`)]
    : [];
  let whole = environment;
  try {
    whole = readSecretFiles(environment);
    const config = readConfig(whole);
    return {
      config,
      environment: whole,
      findings: [...aboutNode, ok(described(config)), ...cautions(config)],
    };
  } catch (error) {
    if (!(error instanceof ConfigError)) throw error;
    const problems = error.problems.map((problem) => {
      const [, variable, what = '', how] = /^(\S+) (.*?)\. (.+)$/s.exec(problem) ?? [];
      return variable === undefined || how === undefined
        ? mend(problem, 'Correct its value; docs/operating.md describes each setting.')
        : mend(`${variable} ${what}.`, how);
    });
    return { config: undefined, environment: whole, findings: [...aboutNode, ...problems] };
  }
}

function described(config: Config): string {
  const where = config.databaseUrl === undefined ? `data folder ${config.dataFolder}` : 'Postgres';
  const metrics = config.metrics ? `on port ${config.metrics.port}` : 'off';
  return `All can be read: ${config.transport.mode} mode, ${where}, metrics ${metrics}, log level ${config.logLevel}.`;
}

function cautions(config: Config): Finding[] {
  if (config.logLevel !== 'trace' && config.logLevel !== 'debug') return [];
  return [
    warning(
      `The log level is ${config.logLevel}, at which the log holds what people typed.`,
      'Set LOG_LEVEL=info unless you are looking for something.',
    ),
  ];
}
