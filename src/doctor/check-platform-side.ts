/** Whether the chat platform accepts the tokens, grants the scopes and has the same time. */
import type { Config } from '../config.ts';
import type { Logger } from '../logger.ts';
import { interactiveClient } from '../slack/sending/web-clients.ts';
import { checkPlatform, type PlatformCheck, socketProblem } from '../slack/workspaces/check-platform.ts';
import { NEEDED_SCOPES } from '../slack/workspaces/manifest-needs.ts';
import { clockFinding } from './check-machine.ts';
import type { Finding } from './finding.ts';

const PLATFORM_API = 'https://slack.com/api/';
const CALL_LIMIT_MS = 10_000;

interface PlatformSide {
  readonly config: Pick<Config, 'access' | 'transport' | 'apiUrl'>;
  readonly logger: Logger;
  readonly nowMs: () => number;
}

export async function checkPlatformSide({ config, logger, nowMs }: PlatformSide): Promise<Finding[]> {
  const api = config.apiUrl ?? PLATFORM_API;
  const findings: Finding[] = [];
  // Without a token the platform refuses the call, but still says what time it is.
  const botToken = config.access.kind === 'one-workspace' ? config.access.botToken : undefined;
  const answer = await call(api, 'auth.test', botToken ?? 'none', nowMs);
  if (botToken !== undefined) {
    const client = interactiveClient({ botToken, logger, slackApiUrl: config.apiUrl });
    findings.push(...tokenFindings(await checkPlatform(client)));
    findings.push(...unneededScopes(answer?.grantedScopes ?? []));
  }
  findings.push(await transportFinding(config, api, nowMs));
  findings.push(
    answer?.platformNow
      ? clockFinding('platform', answer.platformNow, answer.ownNow)
      : { code: 'clock-unread' },
  );
  return findings;
}

function tokenFindings(checked: PlatformCheck): readonly Finding[] {
  if (!checked.ok) return checked.problems;
  const token: Finding = { code: 'token-fine', workspace: checked.identity.workspaceName };
  const { lacking } = checked;
  if (lacking.length === 0) return [token, { code: 'scopes-fine' }];
  return [token, ...lacking.map((one): Finding => ({ code: 'scope-lacking', ...one }))];
}

/** A stolen token does less harm when it can do only what the bot needs. */
function unneededScopes(granted: readonly string[]): Finding[] {
  const unneeded = granted.filter((scope) => scope !== '' && !Object.hasOwn(NEEDED_SCOPES, scope));
  return unneeded.length === 0 ? [] : [{ code: 'scopes-unneeded', scopes: unneeded }];
}

async function transportFinding(
  { transport }: Pick<Config, 'transport'>,
  api: string,
  nowMs: () => number,
): Promise<Finding> {
  if (transport.mode === 'http') return { code: 'signing-secret-set' };
  // What the bot does at each start; the address that comes back is not used, and expires.
  const answer = await call(api, 'apps.connections.open', transport.appToken, nowMs);
  return answer?.isOk ? { code: 'socket-opens' } : socketProblem(answer?.error);
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
