/**
 * What each setting may hold. Which settings go together is the business of `config.ts`. A problem is a code and never
 * holds the variable's value, which may be a secret.
 */
import { X509Certificate } from 'node:crypto';
import { isIP, isIPv6 } from 'node:net';
import { z } from 'zod';

export const LOG_LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'] as const;
export type LogLevelName = (typeof LOG_LEVELS)[number];

export interface NamedKey {
  readonly name: string;
  readonly key: Uint8Array;
}

/** What is wrong with a setting. */
export type SettingProblem = { readonly variable: string } & (
  | {
      readonly code:
        | 'bot-token-missing'
        | 'bot-token-wrong'
        | 'bot-token-rotates'
        | 'bot-token-beside-many'
        | 'app-token-missing'
        | 'app-token-wrong'
        | 'client-id-missing'
        | 'client-id-wrong'
        | 'client-secret-missing'
        | 'client-secret-short'
        | 'token-keys-missing'
        | 'token-keys-empty'
        | 'allowed-workspaces-missing'
        | 'allowed-workspaces-wrong'
        | 'set-up-users-wrong'
        | 'public-url-missing'
        | 'public-url-wrong'
        | 'signing-secret-missing'
        | 'signing-secret-short'
        | 'port-wrong'
        | 'host-wrong'
        | 'health-port-wrong'
        | 'trusted-proxies-wrong'
        | 'metrics-port-wrong'
        | 'metrics-token-missing'
        | 'database-url-wrong'
        | 'database-url-unencoded'
        | 'database-ca-wrong'
        | 'api-url-wrong'
        | 'mode-wrong'
        | 'quoted'
        | 'file-too-large'
        | 'file-empty'
        | 'file-missing';
    }
  | { readonly code: 'token-key-unnamed'; readonly entry: number }
  | { readonly code: 'token-key-wrong'; readonly name: string; readonly bytes: number }
  | { readonly code: 'token-key-twice'; readonly name: string }
  | { readonly code: 'metrics-token-weak'; readonly characters: number }
  | { readonly code: 'log-level-wrong'; readonly levels: readonly string[] }
  | { readonly code: 'requests-per-minute-wrong'; readonly lowest: string; readonly highest: string }
  | { readonly code: 'file-and-value' | 'port-twice'; readonly name: string }
  | { readonly code: 'file-unreadable'; readonly reason: string }
);

type WithoutVariable<Problem> = Problem extends unknown ? Omit<Problem, 'variable'> : never;
/** The problem of a rule, which doesn't know the variable that it is used for. */
export type RuleProblem = WithoutVariable<SettingProblem>;

const HIGHEST_PORT = 65_535;
/** AES-256. */
const KEY_BYTES = 32;
/** The platform's signing secrets have 32 characters; anything much shorter was cut off while pasting. */
const SHORTEST_SECRET = 16;
const EVERYBODY = '*';
const ADMINS = 'admins';
const LOWEST_REQUESTS_PER_MINUTE = 10;
const HIGHEST_REQUESTS_PER_MINUTE = 1_000_000;

/** Spaces around a pasted value are dropped; an empty variable counts as absent. */
export const given = z
  .string()
  .optional()
  .transform((value) => value?.trim() || undefined);

/** Refuses what `accepts` doesn't accept. zod carries the problem as `params`, for `problemsIn` to find. */
export function ruled(accepts: (value: string) => boolean, problem: RuleProblem) {
  return given.refine((value) => value === undefined || accepts(value), { params: problem });
}

function required(missing: RuleProblem) {
  return given.transform((value, context) => {
    if (value !== undefined) return value;
    context.addIssue({ code: 'custom', params: missing });
    return z.NEVER;
  });
}

/** The problems that rules found, in the order in which zod reports them. */
export function problemsIn(result: { readonly error?: z.ZodError } | undefined): SettingProblem[] {
  return (result?.error?.issues ?? []).map((issue) => {
    if (issue.code !== 'custom') throw new TypeError(`A setting has an issue of zod's own: ${issue.code}.`);
    return { ...(issue.params as RuleProblem), variable: issue.path.join('.') } as SettingProblem;
  });
}

/** How the tokens of an app with token rotation begin (docs.slack.dev/authentication/using-token-rotation). */
const ROTATING_TOKEN = /^xoxe[.-]/;

export const botToken = required({ code: 'bot-token-missing' })
  .refine((token) => !ROTATING_TOKEN.test(token), {
    params: { code: 'bot-token-rotates' } satisfies RuleProblem,
    abort: true,
  })
  .refine((token) => token.startsWith('xoxb-'), {
    params: { code: 'bot-token-wrong' } satisfies RuleProblem,
  });

export const appToken = required({ code: 'app-token-missing' }).refine((token) => token.startsWith('xapp-'), {
  params: { code: 'app-token-wrong' } satisfies RuleProblem,
});

export const clientId = required({ code: 'client-id-missing' }).refine((id) => /^[\w.-]{1,100}$/.test(id), {
  params: { code: 'client-id-wrong' } satisfies RuleProblem,
});

export const clientSecret = required({ code: 'client-secret-missing' }).refine(isLongEnough, {
  params: { code: 'client-secret-short' } satisfies RuleProblem,
});

export const tokenKeys = required({ code: 'token-keys-missing' }).transform(
  (value, context): readonly [NamedKey, ...NamedKey[]] => {
    const read = readTokenKeys(value);
    if (!('code' in read)) return read;
    context.addIssue({ code: 'custom', params: read });
    return z.NEVER;
  },
);

/** Ids of workspaces, and of organisations with all of theirs; or everybody, when that is said. */
export const allowedWorkspaces = required({ code: 'allowed-workspaces-missing' })
  .refine((value) => value === EVERYBODY || partsOf(value).every((id) => /^[TE][0-9A-Z]{2,30}$/.test(id)), {
    params: { code: 'allowed-workspaces-wrong' } satisfies RuleProblem,
  })
  .transform((value) => (value === EVERYBODY ? EVERYBODY : partsOf(value)));

/** Who may set teams up. */
export interface SetUpUsers {
  /** Those who administer the workspace. */
  readonly admins: boolean;
  readonly userIds: readonly string[];
}

/** Anybody in the channel, unless it is given. */
export const setUpUsers = ruled(
  (value) => partsOf(value).every((id) => id === ADMINS || /^[UW][0-9A-Z]{2,30}$/.test(id)),
  { code: 'set-up-users-wrong' },
).transform((value): SetUpUsers | undefined => {
  if (value === undefined) return undefined;
  const ids = partsOf(value);
  return { admins: ids.includes(ADMINS), userIds: ids.filter((id) => id !== ADMINS) };
});

export const publicUrl = required({ code: 'public-url-missing' })
  .refine((value) => isSafeUrl(value) && isOrigin(value), {
    params: { code: 'public-url-wrong' } satisfies RuleProblem,
  })
  .transform((value) => new URL(value).origin);

export const signingSecret = required({ code: 'signing-secret-missing' }).refine(isLongEnough, {
  params: { code: 'signing-secret-short' } satisfies RuleProblem,
});

export const port = ruled(isPort, { code: 'port-wrong' }).transform((value) => Number(value ?? '3000'));

/** None, unless it is given. */
function ownPort(problem: RuleProblem) {
  return ruled(isPort, problem).transform((value) => (value === undefined ? undefined : Number(value)));
}

/** Not a name: that might mean another address tomorrow. */
export const host = ruled((value) => isIP(value) !== 0, { code: 'host-wrong' });

export const healthPort = ownPort({ code: 'health-port-wrong' });

/** Addresses and networks of proxies whose word about a sender's address counts. */
export const trustedProxies = ruled((value) => partsOf(value).every(isNetwork), {
  code: 'trusted-proxies-wrong',
}).transform((value) => (value === undefined ? [] : partsOf(value)));

export const metricsPort = ownPort({ code: 'metrics-port-wrong' });

export const metricsToken = ruled((value) => isLongEnough(value) && /^[!-~]+$/.test(value), {
  code: 'metrics-token-weak',
  characters: SHORTEST_SECRET,
});

/** An `@` behind the host is a password's, cut off by a sign that ends it; its rest would be taken for host and database. */
export const databaseUrl = ruled((value) => !value.replace(/^[^@]*@/, '').includes('@'), {
  code: 'database-url-unencoded',
}).refine((value) => value === undefined || isPostgresUrl(value), {
  params: { code: 'database-url-wrong' } satisfies RuleProblem,
});

/** One at least that can be read; a file of authorities may hold text between them. */
export const databaseCa = ruled(holdsCertificates, { code: 'database-ca-wrong' });

export const logLevel = ruled((value) => LOG_LEVELS.some((level) => level === value.toLowerCase()), {
  code: 'log-level-wrong',
  levels: LOG_LEVELS,
}).transform((value) => (value ?? 'info').toLowerCase() as LogLevelName);

export const requestsPerMinute = ruled((value) => /^\d{1,7}$/.test(value) && isAllowance(Number(value)), {
  code: 'requests-per-minute-wrong',
  lowest: String(LOWEST_REQUESTS_PER_MINUTE),
  highest: String(HIGHEST_REQUESTS_PER_MINUTE),
}).transform((value) => Number(value ?? '120'));

export const apiUrl = ruled(isSafeUrl, { code: 'api-url-wrong' });

export const mode = ruled((value) => /^(?:socket|http)$/i.test(value), { code: 'mode-wrong' }).transform(
  (value) => (value?.toLowerCase() ?? 'socket') as 'socket' | 'http',
);

function isLongEnough(secret: string): boolean {
  return secret.length >= SHORTEST_SECRET;
}

function readTokenKeys(value: string): readonly [NamedKey, ...NamedKey[]] | RuleProblem {
  const keys: NamedKey[] = [];
  for (const [index, entry] of value.split(/[\s,]+/).entries()) {
    const [, name, text = ''] = /^([\w-]{1,40}):(.*)$/.exec(entry) ?? [];
    if (name === undefined) return { code: 'token-key-unnamed', entry: index + 1 };
    const key = Buffer.from(text, 'base64');
    // The decoder skips what isn't base64, so encoding again must give the same text.
    if (key.length !== KEY_BYTES || key.toString('base64') !== text) {
      return { code: 'token-key-wrong', name, bytes: KEY_BYTES };
    }
    if (keys.some((other) => other.name === name)) return { code: 'token-key-twice', name };
    keys.push({ name, key });
  }
  const [first, ...others] = keys;
  return first ? [first, ...others] : { code: 'token-keys-empty' };
}

function partsOf(list: string): readonly string[] {
  return list.split(/[\s,]+/);
}

/** An address, or the first addresses of a network with the number of bits that are its own. */
function isNetwork(value: string): boolean {
  const [address = '', bits, ...others] = value.split('/');
  if (isIP(address) === 0 || others.length > 0) return false;
  return bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= (isIPv6(address) ? 128 : 32));
}

function isOrigin(value: string): boolean {
  const { pathname, search, hash, username, password } = new URL(value);
  return pathname === '/' && `${search}${hash}${username}${password}` === '';
}

function protocolOf(value: string): string {
  return URL.canParse(value) ? new URL(value).protocol : '';
}

function isPort(value: string): boolean {
  return /^\d{1,5}$/.test(value) && Number(value) <= HIGHEST_PORT;
}

/** Fewer than 10 would hold up people who answer for many cards, or look at some charts in a row. */
function isAllowance(perMinute: number): boolean {
  return (
    perMinute === 0 || (perMinute >= LOWEST_REQUESTS_PER_MINUTE && perMinute <= HIGHEST_REQUESTS_PER_MINUTE)
  );
}

/** Whether only this machine can reach the address. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(?:\.\d{1,3}){3}$/.test(host);
}

function isPostgresUrl(value: string): boolean {
  return /^postgres(?:ql)?:$/.test(protocolOf(value));
}

function holdsCertificates(pem: string): boolean {
  const certificates = pem.match(/-----BEGIN CERTIFICATE-----[^-]+-----END CERTIFICATE-----/g) ?? [];
  try {
    for (const text of certificates) new X509Certificate(text);
    return certificates.length > 0;
  } catch {
    return false;
  }
}

/** Every call sends the token there, so it must be encrypted on its way, unless it stays on this machine. */
function isSafeUrl(value: string): boolean {
  if (!URL.canParse(value)) return false;
  const { protocol, hostname } = new URL(value);
  return (
    protocol === 'https:' || (protocol === 'http:' && /^(?:127\.0\.0\.1|localhost|\[::1\])$/.test(hostname))
  );
}
