/** The compose file: it follows the specification, and neither service can do more than it must. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DCLinter } from 'dclint';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import packageJson from '../../package.json' with { type: 'json' };
import { knownSettings, settingOf, stopLimitSeconds } from './known-settings.ts';

const FILE = join(import.meta.dirname, '../../deploy/compose.yaml');

interface Service {
  readonly image: string;
  readonly build?: object;
  readonly pull_policy?: string;
  readonly environment: Readonly<Record<string, string>>;
  readonly secrets: readonly string[];
  readonly networks: readonly string[];
  readonly volumes?: readonly string[];
  readonly ports?: unknown;
  readonly read_only: boolean;
  readonly cap_drop: readonly string[];
  readonly cap_add?: unknown;
  readonly privileged?: unknown;
  readonly security_opt: readonly string[];
  readonly user?: string;
  readonly stop_grace_period: string;
  readonly healthcheck?: { readonly test: readonly string[] };
  readonly depends_on?: Readonly<Record<string, { readonly condition: string }>>;
}
const compose = parse(await readFile(FILE, 'utf8')) as {
  readonly services: { readonly bot: Service; readonly database: Service };
  readonly networks: Readonly<Record<string, { readonly internal?: boolean }>>;
  readonly secrets: Readonly<Record<string, { readonly file: string }>>;
  readonly volumes: Readonly<Record<string, unknown>>;
};
const { bot, database } = compose.services;

describe('the compose file', () => {
  it('passes the linter, which holds it against the schema of the specification', () => {
    const linter = new DCLinter({
      rules: { 'no-build-and-image': [2, { checkPullPolicy: true }] },
      quiet: false,
      debug: false,
      exclude: [],
    });
    const [result, ...others] = linter.lintFiles([FILE], false) as unknown as { messages: object[] }[];
    expect(others).toEqual([]);
    expect(result?.messages).toEqual([]);
  });

  it.each(['bot', 'database'] as const)('lets the %s neither write, nor gain rights, nor be root', (name) => {
    const service = compose.services[name];
    expect(service).toMatchObject({
      read_only: true,
      cap_drop: ['ALL'],
      security_opt: ['no-new-privileges:true'],
    });
    expect([service.cap_add, service.privileged, service.ports]).toEqual([undefined, undefined, undefined]);
    // The bot's image says so itself.
    expect(name === 'bot' || /^[1-9]/.test(service.user ?? '')).toBe(true);
  });

  it('hands over secrets as files, and only to who needs them', () => {
    expect(bot.secrets).toEqual(['app-token', 'bot-token', 'database-url']);
    expect(database.secrets).toEqual(['database-admin-password', 'database-password']);
    expect(Object.keys(compose.secrets).toSorted()).toEqual([...bot.secrets, ...database.secrets].toSorted());
    const variables = Object.entries({ ...bot.environment, ...database.environment });
    for (const [variable, value] of variables) {
      if (!/TOKEN|PASSWORD|DATABASE_URL|SECRET/.test(variable)) continue;
      expect([variable, value]).toEqual([
        expect.stringMatching(/_FILE$/),
        expect.stringMatching(/^\/run\/secrets\//),
      ]);
      expect(Object.keys(compose.secrets)).toContain(value.replace('/run/secrets/', ''));
    }
  });

  it('keeps its secrets out of the repository', async () => {
    const ignored = await readFile(join(FILE, '../../.gitignore'), 'utf8');
    expect(ignored.split('\n')).toContain('deploy/secrets/');
    for (const { file } of Object.values(compose.secrets)) expect(file).toMatch(/^secrets\//);
  });

  it('sets only variables that the bot knows', async () => {
    const known = await knownSettings();
    expect(Object.keys(bot.environment).filter((name) => !known.has(settingOf(name)))).toEqual([]);
  });

  it('builds the bot from this project, at this version, and fetches it from nowhere', () => {
    expect(bot.build).toMatchObject({ context: '..', dockerfile: 'deploy/Dockerfile' });
    expect([bot.image, bot.pull_policy]).toEqual([`loadline:${packageJson.version}`, 'build']);
  });

  it('lets only the bot reach the database, and starts it when the database answers', () => {
    expect(database.networks).toEqual(['inside']);
    expect(bot.networks).toContain('inside');
    expect(compose.networks.inside?.internal).toBe(true);
    expect(bot.depends_on).toEqual({ database: { condition: 'service_healthy' } });
    expect(database.healthcheck?.test.slice(0, 3)).toEqual(['CMD', 'pg_isready', '--host=127.0.0.1']);
  });

  it('lets the database make a user for the bot who is no superuser', () => {
    expect(database.environment).not.toHaveProperty('POSTGRES_USER');
    expect(database.volumes).toContain('./database/owner.sql:/docker-entrypoint-initdb.d/owner.sql:ro');
  });

  it('uses a Postgres that is recent enough', () => {
    expect(Number(/postgres:(\d+)/.exec(database.image)?.[1])).toBeGreaterThanOrEqual(15);
  });

  it('waits longer for a stop than a stop may take', async () => {
    expect(Number.parseInt(bot.stop_grace_period, 10)).toBeGreaterThan(await stopLimitSeconds());
  });
});
