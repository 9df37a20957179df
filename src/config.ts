/**
 * The environment as a frozen, checked configuration. Reports every problem at once. Must not print a secret, nor know a
 * default for one.
 */
import { z } from 'zod';
import {
  allowedWorkspaces,
  apiUrl,
  appToken,
  botToken,
  clientId,
  clientSecret,
  databaseCa,
  databaseUrl,
  given,
  healthPort,
  host,
  isLoopback,
  type LogLevelName,
  logLevel,
  metricsPort,
  metricsToken,
  mode,
  type NamedKey,
  port,
  problemsIn,
  publicUrl,
  type RuleProblem,
  requestsPerMinute,
  ruled,
  type SettingProblem,
  type SetUpUsers,
  setUpUsers,
  signingSecret,
  tokenKeys,
  trustedProxies,
} from './setting-rules.ts';

/** How the platform's requests come in: over a socket that the bot opens, or to the bot's own address. */
export type Transport =
  | { readonly mode: 'socket'; readonly appToken: string }
  | { readonly mode: 'http'; readonly signingSecret: string };

/** Whose tokens the bot works with: its own workspace's, or those of all workspaces that install it. */
export type Access =
  | { readonly kind: 'one-workspace'; readonly botToken: string }
  | ({ readonly kind: 'many-workspaces' } & Distribution);

/** What lets workspaces install the bot themselves. */
export interface Distribution {
  readonly clientId: string;
  readonly clientSecret: string;
  /** The first encrypts the tokens of workspaces, all decrypt; 32 bytes each. */
  readonly tokenKeys: readonly [NamedKey, ...NamedKey[]];
  /** Where browsers reach the bot, e.g. `https://loadline.example.org`: no path, no slash at the end. */
  readonly publicUrl: string;
  /** Ids of the workspaces, and of the organisations with all of theirs, that the bot serves; `*`: any. */
  readonly allowedWorkspaces: '*' | readonly string[];
}

/** Where the metrics are served. Without a token only on this machine. */
interface MetricsSettings {
  readonly port: number;
  readonly host: string;
  readonly token: string | undefined;
}

export interface Config {
  readonly access: Access;
  readonly transport: Transport;
  /** Requests in HTTP mode, and the health routes where they have no port of their own. */
  readonly port: number;
  /** The address of this machine at which both are open; undefined: all of them. */
  readonly host: string | undefined;
  readonly healthPort: number | undefined;
  /** Addresses and networks whose word about a sender's address counts; empty: nobody's. */
  readonly trustedProxies: readonly string[];
  /** Undefined: an in-process database in the data folder. */
  readonly databaseUrl: string | undefined;
  /** Certificates, in PEM, of the only authorities that may vouch for the database server. */
  readonly databaseCa: string | undefined;
  readonly dataFolder: string;
  readonly logLevel: LogLevelName;
  /** What one person may ask for in a minute; 0: no limit. */
  readonly requestsPerMinute: number;
  /** Who may set teams up; undefined: anybody in the channel who is neither guest nor outsider. */
  readonly setUpUsers: SetUpUsers | undefined;
  /** Undefined: the platform's usual address. Its separate clouds have addresses of their own. */
  readonly apiUrl: string | undefined;
  /** Undefined: no metrics are kept or served. */
  readonly metrics: MetricsSettings | undefined;
}

/** The environment can't be used. */
export class ConfigError extends Error {
  override readonly name = 'ConfigError';
  readonly code = 'bad-config';
  readonly problems: readonly SettingProblem[];

  constructor(problems: readonly SettingProblem[]) {
    super(problems.map(({ code, variable }) => `${variable}: ${code}`).join(', '));
    this.problems = problems;
  }
}

/** Any of these means that workspaces install the bot themselves. */
const MANY_SETTINGS = [
  'LOADLINE_CLIENT_ID',
  'LOADLINE_CLIENT_SECRET',
  'LOADLINE_TOKEN_KEYS',
  'LOADLINE_PUBLIC_URL',
  'LOADLINE_ALLOWED_WORKSPACES',
] as const;
const common = z.object({
  LOADLINE_MODE: mode,
  PORT: port,
  LOADLINE_HOST: host,
  LOADLINE_HEALTH_PORT: healthPort,
  LOADLINE_TRUSTED_PROXIES: trustedProxies,
  DATABASE_URL: databaseUrl,
  LOADLINE_DATABASE_CA: databaseCa,
  LOADLINE_DATA_FOLDER: given.transform((value) => value ?? './data'),
  LOG_LEVEL: logLevel,
  LOADLINE_API_URL: apiUrl,
  LOADLINE_REQUESTS_PER_MINUTE: requestsPerMinute,
  LOADLINE_SETUP_USERS: setUpUsers,
  LOADLINE_METRICS_PORT: metricsPort,
  LOADLINE_METRICS_HOST: given.transform((value) => value ?? '127.0.0.1'),
  LOADLINE_METRICS_TOKEN: metricsToken,
});
/** Metrics that other machines can reach need a token. */
const closedMetrics = common
  .pick({ LOADLINE_METRICS_PORT: true, LOADLINE_METRICS_HOST: true, LOADLINE_METRICS_TOKEN: true })
  .refine(
    (set) =>
      set.LOADLINE_METRICS_PORT === undefined ||
      set.LOADLINE_METRICS_TOKEN !== undefined ||
      isLoopback(set.LOADLINE_METRICS_HOST),
    {
      path: ['LOADLINE_METRICS_TOKEN'],
      params: { code: 'metrics-token-missing' } satisfies RuleProblem,
    },
  );
const forOneWorkspace = z.object({ LOADLINE_BOT_TOKEN: botToken });
const forManyWorkspaces = z.object({
  LOADLINE_CLIENT_ID: clientId,
  LOADLINE_CLIENT_SECRET: clientSecret,
  LOADLINE_TOKEN_KEYS: tokenKeys,
  LOADLINE_PUBLIC_URL: publicUrl,
  LOADLINE_ALLOWED_WORKSPACES: allowedWorkspaces,
  LOADLINE_BOT_TOKEN: ruled(() => false, { code: 'bot-token-beside-many' }),
});
const forSocket = z.object({ LOADLINE_APP_TOKEN: appToken });
const forHttp = z.object({ LOADLINE_SIGNING_SECRET: signingSecret });

const SETTINGS: ReadonlySet<string> = new Set(
  [common, forOneWorkspace, forManyWorkspaces, forSocket, forHttp].flatMap(({ shape }) => Object.keys(shape)),
);
/** What a cluster sets for each service, by the service's name. */
const OF_A_CLUSTER = /_SERVICE_(?:HOST|PORT)|_PORT_\d+_(?:TCP|UDP)|^LOADLINE(?:_PROXY)?_PORT$/;

/**
 * Names that are written like the bot's settings and are none, mostly slips. A start goes on, since a version that is put
 * back in place of a newer one doesn't know the newer one's settings.
 */
export function unknownSettings(environment: Readonly<Record<string, string | undefined>>): string[] {
  return Object.keys(environment).filter(
    (name) =>
      name.startsWith('LOADLINE_') && !SETTINGS.has(name.replace(/_FILE$/, '')) && !OF_A_CLUSTER.test(name),
  );
}

/** Some ways to pass an environment take quotation marks for a part of the value. */
function quotedIn(environment: Readonly<Record<string, string | undefined>>): SettingProblem[] {
  return [...SETTINGS]
    .filter((name) => /^(["']).*\1$/s.test(environment[name]?.trim() ?? ''))
    .map((variable) => ({
      code: 'quoted',
      variable,
    }));
}

/** The metrics' port that is also open for something else, unless at another address. */
function portsTwice(base: z.infer<typeof common> | undefined): SettingProblem[] {
  const port = base?.LOADLINE_METRICS_PORT;
  if (!base || !port) return [];
  const [host, metricsHost] = [base.LOADLINE_HOST, base.LOADLINE_METRICS_HOST];
  if (host !== undefined && host !== metricsHost && ![host, metricsHost].some(isAnyAddress)) return [];
  const name = (['PORT', 'LOADLINE_HEALTH_PORT'] as const).find((other) => base[other] === port);
  return name === undefined ? [] : [{ code: 'port-twice', variable: 'LOADLINE_METRICS_PORT', name }];
}

/**
 * @param environment e.g. `process.env`; other variables are ignored
 * @throws ConfigError with every problem found
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const isForMany = MANY_SETTINGS.some((name) => environment[name]?.trim());
  const one = isForMany ? undefined : forOneWorkspace.safeParse(environment);
  const many = isForMany ? forManyWorkspaces.safeParse(environment) : undefined;
  const base = common.safeParse(environment);
  // A wrong mode doesn't ask for its secret too: one mistake, one problem.
  const chosen = mode.safeParse(environment.LOADLINE_MODE);
  const socket = chosen.data === 'socket' ? forSocket.safeParse(environment) : undefined;
  const http = chosen.data === 'http' ? forHttp.safeParse(environment) : undefined;
  // Looked at only when each of its settings is right: one mistake, one problem.
  const metrics = base.success ? closedMetrics.safeParse(environment) : undefined;
  const quoted = quotedIn(environment);
  const others = [one, many, base, socket, http, metrics].flatMap(problemsIn);
  const problems = [
    ...quoted,
    ...[...others, ...portsTwice(base.data)].filter(
      ({ variable }) => !quoted.some((problem) => problem.variable === variable),
    ),
  ];
  if (!base.success || problems.length > 0) throw new ConfigError(problems);
  const transport: Transport = http?.success
    ? { mode: 'http', signingSecret: http.data.LOADLINE_SIGNING_SECRET }
    : { mode: 'socket', appToken: socket?.data?.LOADLINE_APP_TOKEN ?? '' };
  return Object.freeze({
    access: Object.freeze(accessOf(one?.data, many?.data)),
    transport: Object.freeze(transport),
    port: base.data.PORT,
    host: base.data.LOADLINE_HOST,
    // The same one is none of its own.
    healthPort:
      base.data.LOADLINE_HEALTH_PORT === base.data.PORT && base.data.PORT !== 0
        ? undefined
        : base.data.LOADLINE_HEALTH_PORT,
    trustedProxies: base.data.LOADLINE_TRUSTED_PROXIES,
    databaseUrl: base.data.DATABASE_URL,
    databaseCa: base.data.LOADLINE_DATABASE_CA,
    dataFolder: base.data.LOADLINE_DATA_FOLDER,
    logLevel: base.data.LOG_LEVEL,
    apiUrl: base.data.LOADLINE_API_URL,
    requestsPerMinute: base.data.LOADLINE_REQUESTS_PER_MINUTE,
    setUpUsers: base.data.LOADLINE_SETUP_USERS,
    metrics:
      base.data.LOADLINE_METRICS_PORT === undefined
        ? undefined
        : Object.freeze({
            port: base.data.LOADLINE_METRICS_PORT,
            host: base.data.LOADLINE_METRICS_HOST,
            token: base.data.LOADLINE_METRICS_TOKEN,
          }),
  });
}

function isAnyAddress(host: string): boolean {
  return host === '0.0.0.0' || host === '::';
}

function accessOf(
  one: z.infer<typeof forOneWorkspace> | undefined,
  many: z.infer<typeof forManyWorkspaces> | undefined,
): Access {
  if (!many) return { kind: 'one-workspace', botToken: one?.LOADLINE_BOT_TOKEN ?? '' };
  return {
    kind: 'many-workspaces',
    clientId: many.LOADLINE_CLIENT_ID,
    clientSecret: many.LOADLINE_CLIENT_SECRET,
    tokenKeys: many.LOADLINE_TOKEN_KEYS,
    publicUrl: many.LOADLINE_PUBLIC_URL,
    allowedWorkspaces: many.LOADLINE_ALLOWED_WORKSPACES,
  };
}
