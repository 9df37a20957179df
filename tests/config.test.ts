import { rootCertificates } from 'node:tls';
import { describe, expect, it } from 'vitest';
import { ConfigError, readConfig, unknownSettings } from '../src/config.ts';
import { sayCode } from '../src/words/say.ts';

const SOCKET = { LOADLINE_BOT_TOKEN: 'xoxb-1-abc', LOADLINE_APP_TOKEN: 'xapp-1-abc' };
const HTTP = {
  LOADLINE_BOT_TOKEN: 'xoxb-1-abc',
  LOADLINE_MODE: 'http',
  LOADLINE_SIGNING_SECRET: '0123456789abcdef0123456789abcdef',
};

function problemsOf(environment: Record<string, string | undefined>): readonly string[] {
  try {
    readConfig(environment);
  } catch (error) {
    if (error instanceof ConfigError) return error.problems.map((problem) => sayCode('start', problem));
    throw error;
  }
  return [];
}

describe('readConfig', () => {
  it('needs only the two tokens in socket mode, which is the default', () => {
    expect(readConfig(SOCKET)).toEqual({
      access: { kind: 'one-workspace', botToken: 'xoxb-1-abc' },
      transport: { mode: 'socket', appToken: 'xapp-1-abc' },
      port: 3000,
      host: undefined,
      healthPort: undefined,
      trustedProxies: [],
      databaseUrl: undefined,
      databaseCa: undefined,
      dataFolder: './data',
      logLevel: 'info',
      apiUrl: undefined,
      requestsPerMinute: 120,
      setUpUsers: undefined,
      metrics: undefined,
    });
  });

  it('needs the signing secret instead of the app token in HTTP mode', () => {
    expect(readConfig(HTTP).transport).toEqual({
      mode: 'http',
      signingSecret: HTTP.LOADLINE_SIGNING_SECRET,
    });
  });

  it('takes every setting', () => {
    const config = readConfig({
      ...SOCKET,
      PORT: '8080',
      LOADLINE_HOST: '127.0.0.1',
      LOADLINE_HEALTH_PORT: '8081',
      LOADLINE_TRUSTED_PROXIES: '10.0.0.7, 2001:db8::/32',
      DATABASE_URL: 'postgres://loadline:secret@db:5432/loadline',
      LOADLINE_DATA_FOLDER: '/var/lib/loadline',
      LOG_LEVEL: 'WARN',
      LOADLINE_API_URL: 'https://slack.example/api/',
      LOADLINE_REQUESTS_PER_MINUTE: '300',
      LOADLINE_SETUP_USERS: 'U0123ABCD, admins W0456EFGH',
    });
    expect(config).toMatchObject({
      requestsPerMinute: 300,
      setUpUsers: { admins: true, userIds: ['U0123ABCD', 'W0456EFGH'] },
      port: 8080,
      host: '127.0.0.1',
      healthPort: 8081,
      trustedProxies: ['10.0.0.7', '2001:db8::/32'],
      databaseUrl: 'postgres://loadline:secret@db:5432/loadline',
      dataFolder: '/var/lib/loadline',
      logLevel: 'warn',
      apiUrl: 'https://slack.example/api/',
    });
  });

  it.each(['ana', 'T0123ABCD', '*', 'U0123ABCD,owners'])('lets nobody called %s set teams up', (value) => {
    expect(problemsOf({ ...SOCKET, LOADLINE_SETUP_USERS: value })).toEqual([
      'LOADLINE_SETUP_USERS must hold ids of people (U… or W…) or the word admins, parted by commas, for example U0123ABCD,admins.',
    ]);
  });

  it.each(['9', '-1', '1.5', 'none', '1000001'])('takes no allowance of %s requests a minute', (value) => {
    expect(problemsOf({ ...SOCKET, LOADLINE_REQUESTS_PER_MINUTE: value })).toEqual([
      'LOADLINE_REQUESTS_PER_MINUTE must be a whole number from 10 to 1000000, for example 120, or 0 for no limit.',
    ]);
    expect(readConfig({ ...SOCKET, LOADLINE_REQUESTS_PER_MINUTE: '0' }).requestsPerMinute).toBe(0);
  });

  it.each(['proxy.example', '10.0.0.0/33', '10.0.0.0/', '10.0.0', '10.0.0.1,', '::/129', '10.0.0.0/8/8'])(
    'takes %s for no proxy',
    (value) => {
      expect(problemsOf({ ...SOCKET, LOADLINE_TRUSTED_PROXIES: value })).toEqual([
        expect.stringMatching(/^LOADLINE_TRUSTED_PROXIES must hold addresses or networks/),
      ]);
    },
  );

  it.each(['/etc/ssl/ca.pem', '-----BEGIN CERTIFICATE-----\nMIIB\n-----END CERTIFICATE-----'])(
    'refuses as an authority what is no certificate (%#)',
    (value) => {
      expect(problemsOf({ ...SOCKET, LOADLINE_DATABASE_CA: value })).toEqual([
        expect.stringMatching(/^LOADLINE_DATABASE_CA must hold one or more certificates in PEM/),
      ]);
    },
  );

  it('takes authorities with notes between them, as providers give them out', () => {
    const pem = `Root of the first kind\n${rootCertificates[0]}\n\nRoot of the second kind\n${rootCertificates[1]}`;
    expect(readConfig({ ...SOCKET, LOADLINE_DATABASE_CA: pem }).databaseCa).toBe(pem);
  });

  it('is frozen', () => {
    const config = readConfig(SOCKET);
    expect(Object.isFrozen(config) && Object.isFrozen(config.transport)).toBe(true);
  });

  it('counts an empty or blank variable as absent and drops spaces around a pasted value', () => {
    expect(problemsOf({ ...SOCKET, LOADLINE_BOT_TOKEN: '  ' })).toHaveLength(1);
    expect(readConfig({ ...SOCKET, LOADLINE_BOT_TOKEN: ' xoxb-1-abc\n', DATABASE_URL: '' })).toMatchObject({
      access: { kind: 'one-workspace', botToken: 'xoxb-1-abc' },
      databaseUrl: undefined,
    });
  });

  it('reports every problem at once, each with its variable and how to correct it', () => {
    const problems = problemsOf({ PORT: '70000', DATABASE_URL: 'mysql://x', LOG_LEVEL: 'loud' });
    expect(problems.map((problem) => problem.split(' ')[0])).toEqual([
      'LOADLINE_BOT_TOKEN',
      'PORT',
      'DATABASE_URL',
      'LOG_LEVEL',
      'LOADLINE_APP_TOKEN',
    ]);
    expect(problems[0]).toContain('OAuth & Permissions');
    expect(problems[3]).toContain('trace, debug, info');
  });

  it.each([
    ['the bot token', { ...SOCKET, LOADLINE_BOT_TOKEN: 'xapp-swapped' }, 'LOADLINE_BOT_TOKEN'],
    ['a token that expires', { ...SOCKET, LOADLINE_BOT_TOKEN: 'xoxe.xoxb-1-abc' }, 'LOADLINE_BOT_TOKEN'],
    ['a refresh token', { ...SOCKET, LOADLINE_BOT_TOKEN: 'xoxe-1-abc' }, 'LOADLINE_BOT_TOKEN'],
    ['the app token', { ...SOCKET, LOADLINE_APP_TOKEN: 'xoxb-swapped' }, 'LOADLINE_APP_TOKEN'],
    ['a missing signing secret', { ...HTTP, LOADLINE_SIGNING_SECRET: undefined }, 'LOADLINE_SIGNING_SECRET'],
    ['a signing secret cut short', { ...HTTP, LOADLINE_SIGNING_SECRET: '0123' }, 'LOADLINE_SIGNING_SECRET'],
    ['an unknown mode', { ...SOCKET, LOADLINE_MODE: 'pigeon' }, 'LOADLINE_MODE'],
    ['a host that is a name', { ...SOCKET, LOADLINE_HOST: 'localhost' }, 'LOADLINE_HOST'],
    ['a port that is no number', { ...SOCKET, PORT: '80a' }, 'PORT'],
    [
      'an address to which the token would go unprotected',
      { ...SOCKET, LOADLINE_API_URL: 'http://slack.example/api/' },
      'LOADLINE_API_URL',
    ],
    ['an address that is none', { ...SOCKET, LOADLINE_API_URL: 'slack.example' }, 'LOADLINE_API_URL'],
    ['a negative port', { ...SOCKET, PORT: '-1' }, 'PORT'],
  ])('refuses %s and names its variable', (_what, environment, variable) => {
    const problems = problemsOf(environment);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(new RegExp(`^${variable} `));
  });

  it.each(['xoxe.xoxb-1-abc', 'xoxe-1-abc'])(
    'says of a token of an app with token rotation that another app is needed: %s',
    (token) => {
      expect(problemsOf({ ...SOCKET, LOADLINE_BOT_TOKEN: token })).toEqual([
        expect.stringMatching(/^LOADLINE_BOT_TOKEN holds a token that expires\..*Create another app/),
      ]);
    },
  );

  it.each(['"xoxb-1-abc"', "'xoxb-1-abc'", ' "xoxb-1-abc"\r'])(
    'says that quotation marks are not taken off: %s',
    (token) => {
      expect(problemsOf({ ...SOCKET, LOADLINE_BOT_TOKEN: token })).toEqual([
        expect.stringMatching(/^LOADLINE_BOT_TOKEN has quotation marks around its value/),
      ]);
    },
  );

  it.each(['postgres://u:p@ss@h/d', 'postgres://u:p/w@h/d', 'postgres://u:a@b/w@h:5432/d'])(
    'says how to write signs in a password that end it too early: %s',
    (DATABASE_URL) => {
      const problems = problemsOf({ ...SOCKET, DATABASE_URL });
      expect(problems).toEqual([
        expect.stringMatching(/^DATABASE_URL .*(?:Percent-encode|must be an address)/),
      ]);
      expect(problems.join()).not.toMatch(/ss@|w@/);
    },
  );

  it('refuses the same port for metrics and something else, unless at another address', () => {
    const both = { ...HTTP, PORT: '3000', LOADLINE_METRICS_PORT: '3000' };
    expect(problemsOf(both)).toEqual([
      expect.stringMatching(/^LOADLINE_METRICS_PORT is the port of PORT as well/),
    ]);
    const health = { ...HTTP, LOADLINE_HEALTH_PORT: '3001', LOADLINE_METRICS_PORT: '3001' };
    expect(problemsOf(health)).toEqual([expect.stringContaining('the port of LOADLINE_HEALTH_PORT')]);
    expect(readConfig({ ...both, LOADLINE_HOST: '10.0.0.5' }).metrics?.port).toBe(3000);
    expect(readConfig({ ...HTTP, PORT: '0', LOADLINE_METRICS_PORT: '0' }).metrics?.port).toBe(0);
  });

  it('takes a port of health that is the one of requests for that one', () => {
    expect(readConfig({ ...HTTP, PORT: '3000', LOADLINE_HEALTH_PORT: '3000' }).healthPort).toBeUndefined();
  });

  it('knows its settings from what looks like one, also in a file, and from what a cluster sets', () => {
    expect(
      unknownSettings({
        ...SOCKET,
        LOADLINE_PULBIC_URL: 'x',
        LOADLINE_SETUP_USER_FILE: '/x',
        LOADLINE_BOT_TOKEN_FILE: '/x',
        LOADLINE_PORT: 'tcp://10.0.0.1:3000',
        LOADLINE_SERVICE_HOST: '10.0.0.1',
        LOADLINE_PORT_3000_TCP_ADDR: '10.0.0.1',
        LOADLINE_PROXY_SERVICE_PORT_HTTPS: '443',
        PORT_OF_CALL: 'Lisbon',
      }),
    ).toEqual(['LOADLINE_PULBIC_URL', 'LOADLINE_SETUP_USER_FILE']);
  });

  it('prints no value of any variable in its problems', () => {
    const secrets = {
      LOADLINE_BOT_TOKEN: 'xapp-SECRETONE',
      LOADLINE_APP_TOKEN: 'xoxb-SECRETTWO',
      DATABASE_URL: 'mysql://u:SECRETTHREE@h/d',
      LOADLINE_SIGNING_SECRET: 'SECRETFOUR',
    };
    const said = [...problemsOf(secrets), ...problemsOf({ ...secrets, LOADLINE_MODE: 'http' })].join(' ');
    expect(said).not.toMatch(/SECRET(?:ONE|TWO|THREE|FOUR)/);
  });

  it('serves metrics only when a port is set, and then to this machine only', () => {
    expect(readConfig({ ...SOCKET, LOADLINE_METRICS_HOST: '127.0.0.1' }).metrics).toBeUndefined();
    expect(readConfig({ ...SOCKET, LOADLINE_METRICS_PORT: '9464' }).metrics).toEqual({
      port: 9464,
      host: '127.0.0.1',
      token: undefined,
    });
  });

  it.each(['0.0.0.0', '::', '10.1.2.3', 'bot.example', '127.0.0.1.example'])(
    'does not serve metrics on %s to everybody: it wants a token',
    (host) => {
      const open = { ...SOCKET, LOADLINE_METRICS_PORT: '9464', LOADLINE_METRICS_HOST: host };
      expect(problemsOf(open)).toEqual([expect.stringMatching(/^LOADLINE_METRICS_TOKEN is missing/)]);
      const token = 'a-token-for-the-test-only';
      expect(readConfig({ ...open, LOADLINE_METRICS_TOKEN: token }).metrics?.token).toBe(token);
    },
  );

  it.each(['short', 'with a space in between', 'line\nend-in-the-middle-of-it'])(
    'refuses a token for metrics that no header can carry or that can be guessed: %j',
    (token) => {
      expect(problemsOf({ ...SOCKET, LOADLINE_METRICS_TOKEN: token })).toEqual([
        expect.stringMatching(/^LOADLINE_METRICS_TOKEN must have at least 16 characters/),
      ]);
    },
  );
});
