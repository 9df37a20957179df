/**
 * Exchanges the code that a browser brought back for the workspace's token, and holds what was granted against what the
 * bot needs. Must not log a code, a secret or a token; so it calls by itself, and not through a client that may.
 */
import { z } from 'zod';
import type { Granted } from '../../app/workspaces/keep-installation.ts';
import { maybe } from '../door/incoming.ts';
import { withoutNulls } from '../door/request-content.ts';
import { NEEDED_SCOPES } from './manifest-needs.ts';

const PLATFORM_API = 'https://slack.com/api/';
const CALL_LIMIT_MS = 10_000;

interface GrantRequest {
  readonly apiUrl: string | undefined;
  readonly clientId: string;
  readonly clientSecret: string;
  readonly code: string;
  readonly redirectUri: string;
}

/**
 * Why there is no installation:
 * - `no answer`: the platform can't be reached, or answers with something else; nobody is at fault.
 * - `code refused`: it was used before, or is too old.
 * - `settings refused`: client ID, secret or redirect address are not the app's; `code` says which.
 * - `tokens rotate`: the app's tokens expire, which the platform doesn't let anybody switch off again.
 * - `whole organisation`: it was meant for all workspaces of an organisation at once.
 * - `scopes missing`: named in `scopes`.
 */
export type GrantProblem =
  | { readonly why: 'no answer' | 'code refused' | 'tokens rotate' | 'whole organisation' }
  | { readonly why: 'settings refused'; readonly code: string }
  | { readonly why: 'scopes missing'; readonly scopes: readonly string[] };

/** docs.slack.dev/reference/methods/oauth.v2.access */
const CODE_REFUSED = new Set([
  'invalid_code',
  'code_already_used',
  'code_expired',
  'oauth_authorization_url_mismatch',
]);

const id = z
  .string()
  .max(255)
  .regex(/^[\x21-\x7e]+$/);

const accessAnswer = z.discriminatedUnion('ok', [
  z.looseObject({ ok: z.literal(false), error: z.string().max(100) }),
  z.looseObject({
    ok: z.literal(true),
    access_token: z
      .string()
      .regex(/^xox(?:b-|e[.-])/)
      .max(1_000),
    refresh_token: maybe(z.string()),
    expires_in: z.number().optional(),
    token_type: z.literal('bot'),
    scope: z.string().max(10_000),
    bot_user_id: id,
    is_enterprise_install: z.boolean().default(false),
    team: z.looseObject({ id, name: z.string().max(500).default('') }).optional(),
    enterprise: z.looseObject({ id: maybe(id) }).optional(),
    authed_user: z.looseObject({ id: maybe(id) }).optional(),
  }),
]);

const testAnswer = z.looseObject({ ok: z.literal(true), team_id: id, user_id: id, bot_id: id });

export async function requestGrant(request: GrantRequest): Promise<Granted | GrantProblem> {
  const { apiUrl = PLATFORM_API, clientId, clientSecret, code, redirectUri } = request;
  const access = accessAnswer.safeParse(
    await call(apiUrl, 'oauth.v2.access', undefined, {
      client_id: clientId,
      client_secret: clientSecret,
      code,
      redirect_uri: redirectUri,
    }),
  );
  if (!access.success) return { why: 'no answer' };
  if (!access.data.ok) {
    const { error } = access.data;
    return CODE_REFUSED.has(error) ? { why: 'code refused' } : { why: 'settings refused', code: error };
  }
  const { access_token, refresh_token, expires_in } = access.data;
  if (!access_token.startsWith('xoxb-') || refresh_token !== undefined || expires_in !== undefined) {
    return { why: 'tokens rotate' };
  }
  const { scope, bot_user_id, team, enterprise, authed_user } = access.data;
  if (access.data.is_enterprise_install || !team) return { why: 'whole organisation' };
  const scopes = scope.split(',').map((one) => one.trim());
  const missing = Object.keys(NEEDED_SCOPES).filter((needed) => !scopes.includes(needed));
  if (missing.length > 0) return { why: 'scopes missing', scopes: missing };
  // The token itself says whose it is, and that it serves.
  const test = testAnswer.safeParse(await call(apiUrl, 'auth.test', access_token, {}));
  if (!test.success || test.data.team_id !== team.id || test.data.user_id !== bot_user_id) {
    return { why: 'no answer' };
  }
  return {
    workspaceId: team.id,
    workspaceName: team.name,
    enterpriseId: enterprise?.id,
    botUserId: bot_user_id,
    botId: test.data.bot_id,
    botToken: access_token,
    scopes,
    installedBy: authed_user?.id,
  };
}

/** @returns the answer's JSON; undefined when there is none */
async function call(
  apiUrl: string,
  method: string,
  token: string | undefined,
  fields: Record<string, string>,
): Promise<unknown> {
  try {
    const response = await fetch(new URL(method, apiUrl.endsWith('/') ? apiUrl : `${apiUrl}/`), {
      method: 'POST',
      headers: token === undefined ? {} : { authorization: `Bearer ${token}` },
      body: new URLSearchParams(fields),
      signal: AbortSignal.timeout(CALL_LIMIT_MS),
      // Secrets go where the settings say, and nowhere else.
      redirect: 'error',
    });
    return withoutNulls(await response.json());
  } catch {
    return undefined;
  }
}
