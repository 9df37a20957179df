/** Whether the chat platform takes the tokens, grants the scopes and has the same time. */
import type { Config } from '../config.ts';
import type { Logger } from '../logger.ts';
import { interactiveClient } from '../slack/sending/web-clients.ts';
import { checkPlatform, type PlatformCheck, socketProblem } from '../slack/workspaces/check-platform.ts';
import { NEEDED_SCOPES } from '../slack/workspaces/scopes.ts';
import { clockFinding } from './check-clock.ts';
import { type Finding, findingsOf, splitSentence } from './finding.ts';

const tokens = findingsOf('tokens');
const scopes = findingsOf('scopes');
const clock = findingsOf('clock');

const PLATFORM_API = 'https://slack.com/api/';
const CALL_LIMIT_MS = 10_000;

export interface PlatformSide {
  readonly config: Pick<Config, 'access' | 'transport' | 'apiUrl'>;
  readonly logger: Logger;
  readonly nowMs: () => number;
}

export async function checkPlatformSide({ config, logger, nowMs }: PlatformSide): Promise<Finding[]> {
  const api = config.apiUrl ?? PLATFORM_API;
  const findings: Finding[] = [];
  // Without a token of its own, a bot for many workspaces learns the platform's time all the same.
  const botToken = config.access.kind === 'one-workspace' ? config.access.botToken : undefined;
  const answer = await call(api, 'auth.test', botToken ?? 'none', nowMs);
  if (botToken !== undefined) {
    const client = interactiveClient({ botToken, logger, slackApiUrl: config.apiUrl });
    findings.push(...tokenFindings(await checkPlatform(client)));
    findings.push(...unneededScopes(answer?.grantedScopes ?? []));
  }
  findings.push(...(await transportFindings(config, api, nowMs)));
  findings.push(
    answer?.platformNow
      ? clockFinding('the platform', answer.platformNow, answer.ownNow)
      : clock.warning(
          "The platform's clock could not be read.",
          'See that the platform can be reached, and look again.',
        ),
  );
  return findings;
}

function tokenFindings(checked: PlatformCheck): Finding[] {
  if (checked.ok) {
    return [
      tokens.ok(`The bot token is good for the workspace ${checked.identity.workspaceName}.`),
      scopes.ok('All that the bot needs are granted.'),
    ];
  }
  return checked.problems.map((problem) => {
    const { found, mend } = splitSentence(problem);
    return (/lacks the scope/.test(problem) ? scopes : tokens).mend(found, mend);
  });
}

/** A token that can do more than it must is worth more to a thief. */
function unneededScopes(granted: readonly string[]): Finding[] {
  const unneeded = granted.filter((scope) => scope !== '' && !Object.hasOwn(NEEDED_SCOPES, scope));
  if (unneeded.length === 0) return [];
  return [
    scopes.warning(
      `The bot token may do more than the bot needs: ${unneeded.join(', ')}.`,
      'Remove these under OAuth & Permissions, Bot Token Scopes, and install the app to the workspace again.',
    ),
  ];
}

async function transportFindings(
  { transport }: Pick<Config, 'transport'>,
  api: string,
  nowMs: () => number,
): Promise<Finding[]> {
  if (transport.mode === 'http') {
    return [
      tokens.ok(
        'A signing secret is set; whether it is the right one shows with the first request: type /loadline.',
      ),
    ];
  }
  // What the bot does at each start; the address that comes back is not used, and expires.
  const answer = await call(api, 'apps.connections.open', transport.appToken, nowMs);
  if (answer?.isOk) return [tokens.ok('The app-level token opens a socket.')];
  const { found, mend } = splitSentence(socketProblem(answer?.error));
  return [tokens.mend(found, mend)];
}

interface Answer {
  readonly isOk: boolean;
  readonly error: string | undefined;
  readonly grantedScopes: readonly string[];
  readonly platformNow: Date | undefined;
  /** Halfway through the call. */
  readonly ownNow: Date;
}

/** A bare call, for its headers. @returns undefined when there was no answer */
async function call(
  api: string,
  method: string,
  token: string,
  nowMs: () => number,
): Promise<Answer | undefined> {
  try {
    const beganMs = nowMs();
    const response = await fetch(new URL(method, api.endsWith('/') ? api : `${api}/`), {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/x-www-form-urlencoded' },
      signal: AbortSignal.timeout(CALL_LIMIT_MS),
      // The token goes where the settings say, and nowhere else.
      redirect: 'error',
    });
    const ownNow = new Date((beganMs + nowMs()) / 2);
    const body: unknown = await response.json().catch(() => undefined);
    const { ok, error } = (body ?? {}) as { ok?: unknown; error?: unknown };
    const date = new Date(response.headers.get('date') ?? '');
    return {
      isOk: ok === true,
      error: typeof error === 'string' ? error : undefined,
      grantedScopes: (response.headers.get('x-oauth-scopes') ?? '').split(',').map((scope) => scope.trim()),
      platformNow: Number.isNaN(date.getTime()) ? undefined : date,
      ownNow,
    };
  } catch {
    return undefined;
  }
}
