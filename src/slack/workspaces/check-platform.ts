/**
 * Checks at the start that the bot has the permissions that it needs, so that a missing one shows in the first second and
 * not at the first verdict.
 */
import { WebAPIPlatformError, WebAPIRequestError, type WebClient } from '@slack/web-api';
import { DISPENSABLE_SCOPES, NEEDED_SCOPES, type NeededScope } from './manifest-needs.ts';

/** Who the bot is, as the platform says. */
interface BotIdentity {
  readonly workspaceId: string;
  readonly workspaceName: string;
  readonly botUserId: string;
  readonly botId: string;
}

export type PlatformCheck =
  | {
      readonly ok: true;
      readonly identity: BotIdentity;
      /** Scopes that the bot can do without. */
      readonly lacking: readonly MissingScope[];
    }
  | { readonly ok: false; readonly problems: readonly PlatformProblem[] };

/** Why the bot can't work with the platform. */
export type PlatformProblem =
  | {
      readonly code:
        | 'token-not-sent'
        | 'token-unknown'
        | 'token-revoked'
        | 'token-expired'
        | 'bot-removed'
        | 'token-of-person'
        | 'platform-unreachable'
        | 'app-token-scope'
        | 'socket-mode-off'
        | 'sockets-taken'
        | 'socket-unreachable';
    }
  | { readonly code: 'token-refused' | 'app-token-refused' | 'platform-odd-answer'; readonly reason: string }
  | ({ readonly code: 'scope-missing' } & MissingScope);

interface MissingScope {
  readonly scope: NeededScope;
  readonly use: (typeof NEEDED_SCOPES)[NeededScope];
}

/** What the platform answers for a token that it does not accept (docs.slack.dev/reference/methods/auth.test). */
const TOKEN_PROBLEMS: Readonly<Record<string, PlatformProblem>> = {
  not_authed: { code: 'token-not-sent' },
  invalid_auth: { code: 'token-unknown' },
  token_revoked: { code: 'token-revoked' },
  token_expired: { code: 'token-expired' },
  account_inactive: { code: 'bot-removed' },
};

export async function checkPlatform(client: WebClient): Promise<PlatformCheck> {
  const answer = await client.auth.test().catch((error: unknown) => error);
  if (answer instanceof WebAPIPlatformError) {
    const { error } = answer.data;
    return refused(TOKEN_PROBLEMS[error] ?? { code: 'token-refused', reason: error });
  }
  if (answer instanceof WebAPIRequestError) return refused({ code: 'platform-unreachable' });
  if (answer instanceof Error) return refused({ code: 'platform-odd-answer', reason: answer.name });
  const { team_id, team, user_id, bot_id, response_metadata } = answer as Awaited<
    ReturnType<WebClient['auth']['test']>
  >;
  if (!team_id || !user_id || !bot_id) return refused({ code: 'token-of-person' });
  const granted = response_metadata?.scopes ?? [];
  const missing = (Object.keys(NEEDED_SCOPES) as NeededScope[])
    .filter((scope) => !granted.includes(scope))
    .map((scope): MissingScope => ({ scope, use: NEEDED_SCOPES[scope] }));
  if (missing.some(({ scope }) => !DISPENSABLE_SCOPES.has(scope))) {
    return refused(...missing.map((one) => ({ code: 'scope-missing', ...one }) as const));
  }
  return {
    ok: true,
    identity: { workspaceId: team_id, workspaceName: team ?? team_id, botUserId: user_id, botId: bot_id },
    lacking: missing,
  };
}

function refused(...problems: PlatformProblem[]): PlatformCheck {
  return { ok: false, problems };
}

/** The platform's word when an app has ten sockets open (docs.slack.dev/apis/events-api/using-socket-mode). */
export const TOO_MANY_SOCKETS = 'too_many_websockets';

/**
 * Why the socket did not open.
 *
 * @param code the platform's answer; undefined when there was none
 */
export function socketProblem(code: string | undefined): PlatformProblem {
  if (code === undefined) return { code: 'socket-unreachable' };
  if (code === 'missing_scope' || code === 'not_allowed_token_type') return { code: 'app-token-scope' };
  if (code === 'forbidden_team' || code === 'socket_mode_not_enabled') return { code: 'socket-mode-off' };
  if (code === TOO_MANY_SOCKETS) return { code: 'sockets-taken' };
  return { code: 'app-token-refused', reason: code };
}
