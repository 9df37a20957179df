/**
 * Checks at the start that the bot may do what it will have to do, so that a missing permission shows in the
 * first second and not at the first verdict. Every problem is one sentence with its remedy.
 */
import { WebAPIPlatformError, WebAPIRequestError, type WebClient } from '@slack/web-api';
import { NEEDED_SCOPES } from './scopes.ts';

/** Who the bot is, as the platform says. */
export interface BotIdentity {
  readonly workspaceId: string;
  readonly workspaceName: string;
  readonly botUserId: string;
  readonly botId: string;
}

export type PlatformCheck =
  | { readonly ok: true; readonly identity: BotIdentity }
  | { readonly ok: false; readonly problems: readonly string[] };

const NEW_TOKEN =
  'open OAuth & Permissions of your app, install it to the workspace, and copy the Bot User OAuth Token into LOADLINE_BOT_TOKEN';

/** What the platform says of a token that it does not take (docs.slack.dev/reference/methods/auth.test). */
const TOKEN_PROBLEMS: Readonly<Record<string, string>> = {
  not_authed: `The bot token was not sent: ${NEW_TOKEN}.`,
  invalid_auth: `The platform does not know the bot token: ${NEW_TOKEN}.`,
  token_revoked: `The bot token was revoked: ${NEW_TOKEN}.`,
  token_expired: `The bot token has expired: ${NEW_TOKEN}.`,
  account_inactive: `The bot was removed from the workspace, so its token is void: ${NEW_TOKEN}.`,
};

export async function checkPlatform(client: WebClient): Promise<PlatformCheck> {
  const answer = await client.auth.test().catch((error: unknown) => error);
  if (answer instanceof WebAPIPlatformError)
    return { ok: false, problems: [tokenProblem(answer.data.error)] };
  if (answer instanceof WebAPIRequestError) {
    return {
      ok: false,
      problems: [
        'The platform can not be reached: check that this machine may open connections to slack.com on port 443, by its proxy and firewall.',
      ],
    };
  }
  if (answer instanceof Error) {
    return {
      ok: false,
      problems: [`The platform did not answer as expected (${answer.name}): try again in a minute.`],
    };
  }
  const { team_id, team, user_id, bot_id, response_metadata } = answer as Awaited<
    ReturnType<WebClient['auth']['test']>
  >;
  if (!team_id || !user_id || !bot_id) {
    return { ok: false, problems: [`The token in LOADLINE_BOT_TOKEN is not a bot's: ${NEW_TOKEN}.`] };
  }
  const problems = scopeProblems(response_metadata?.scopes ?? []);
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    identity: { workspaceId: team_id, workspaceName: team ?? team_id, botUserId: user_id, botId: bot_id },
  };
}

/** A sentence for each permission that was not granted. */
function scopeProblems(granted: readonly string[]): string[] {
  return Object.entries(NEEDED_SCOPES)
    .filter(([scope]) => !granted.includes(scope))
    .map(
      ([scope, purpose]) =>
        `The bot lacks the scope ${scope}, which it needs ${purpose}: add it under OAuth & Permissions, Bot Token Scopes, and install the app to the workspace again.`,
    );
}

function tokenProblem(code: string): string {
  return TOKEN_PROBLEMS[code] ?? `The platform refused the bot token (${code}): ${NEW_TOKEN}.`;
}

/**
 * Why the socket did not open, as a sentence for the operator.
 *
 * @param code the platform's answer; undefined when there was none
 */
export function socketProblem(code: string | undefined): string {
  const remedy =
    'make an app-level token with the scope connections:write on the page Basic Information of your app and put it into LOADLINE_APP_TOKEN';
  if (code === 'missing_scope' || code === 'not_allowed_token_type') {
    return `The app-level token lacks the scope connections:write: ${remedy}.`;
  }
  if (code === 'forbidden_team' || code === 'socket_mode_not_enabled') {
    return 'Socket Mode is off for the app: switch it on, on the page Socket Mode of your app.';
  }
  if (code !== undefined) return `The platform refused the app-level token (${code}): ${remedy}.`;
  return 'The socket to the platform could not be opened: check that this machine may open connections to slack.com on port 443, by its proxy and firewall.';
}
