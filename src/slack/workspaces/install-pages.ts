/**
 * Two addresses at which a workspace installs the bot: one where somebody begins, one to which the platform sends them
 * back. What comes back must be what this browser left with (docs.slack.dev/authentication/installing-with-oauth). Both
 * lead to fixed addresses only.
 */
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { AppDependencies } from '../../app/ports/app-dependencies.ts';
import { visibleText } from '../../app/visible-text.ts';
import { ATTEMPT_LIFE_MS, installAttempts } from '../../app/workspaces/install-attempt.ts';
import { isAllowed } from '../../app/workspaces/installation.ts';
import { recordInstallation } from '../../app/workspaces/keep-installation.ts';
import type { TokenKeys } from '../../app/workspaces/token-keys.ts';
import type { Distribution } from '../../config.ts';
import type { Logger } from '../../logger.ts';
import { currentReference } from '../../reference.ts';
import { requestGrant } from './grant.ts';
import {
  beginPage,
  declinedPage,
  type InstallPage,
  installedPage,
  notAllowedPage,
  PAGE_HEADERS,
  problemPage,
  staleAttemptPage,
  troublePage,
} from './install-page.ts';
import { NEEDED_SCOPES } from './manifest-needs.ts';

export const INSTALL_PATH = '/slack/install';
export const RETURN_PATH = '/slack/oauth';

/** The prefix binds the cookie to this very host, over a secure connection. */
const COOKIE = '__Host-loadline-install';
const COOKIE_MARKS = 'Path=/; Secure; HttpOnly; SameSite=Lax';
const PLATFORM = 'https://slack.com';
const CODE_MAX_LENGTH = 500;

/** Answers a request that it knows. @returns false when the request is for something else */
export type PageRoutes = (request: IncomingMessage, response: ServerResponse) => Promise<boolean>;

/**
 * Questions to the platform at one time, by whoever brings a code: anybody can begin an installation, and made-up codes must
 * not use up what the platform lets the app ask.
 */
const MOST_ASKING = 5;

interface InstallPagesOptions {
  readonly ports: Pick<AppDependencies, 'store' | 'clock'>;
  readonly keys: TokenKeys;
  readonly distribution: Omit<Distribution, 'tokenKeys'>;
  readonly apiUrl: string | undefined;
  readonly logger: Logger;
}

type Answer = InstallPage & { readonly cookie?: string };

export function installPages(options: InstallPagesOptions): PageRoutes {
  const { ports, keys, distribution, apiUrl, logger } = options;
  const installUrl = `${distribution.publicUrl}${INSTALL_PATH}`;
  const redirectUri = `${distribution.publicUrl}${RETURN_PATH}`;

  const attempts = installAttempts(distribution.clientSecret);
  let asking = 0;

  function begin(): Answer {
    const attempt = attempts.begin(ports.clock.now());
    const url = new URL('/oauth/v2/authorize', apiUrl ?? PLATFORM);
    url.search = new URLSearchParams({
      client_id: distribution.clientId,
      scope: Object.keys(NEEDED_SCOPES).join(','),
      redirect_uri: redirectUri,
      state: attempt.state,
    }).toString();
    const cookie = `${COOKIE}=${attempt.browserKey}; Max-Age=${ATTEMPT_LIFE_MS / 1_000}; ${COOKIE_MARKS}`;
    return { ...beginPage(url.href), cookie };
  }

  async function finish(request: IncomingMessage): Promise<Answer> {
    const query = new URL(request.url ?? '', distribution.publicUrl).searchParams;
    const state = only(query, 'state');
    const browserKey = cookieOf(request);
    if (!attempts.isUnderWay({ state, browserKey }, ports.clock.now())) return staleAttemptPage(installUrl);
    const code = only(query, 'code');
    if (query.has('error') || code === '') return declinedPage(installUrl);
    if (code.length > CODE_MAX_LENGTH) return problemPage({ why: 'code refused' }, installUrl);
    const { clientId, clientSecret } = distribution;
    if (asking >= MOST_ASKING) return problemPage({ why: 'no answer' }, installUrl);
    asking += 1;
    const grant = requestGrant({ apiUrl, clientId, clientSecret, code, redirectUri });
    const granted = await grant.finally(() => {
      asking -= 1;
    });
    if ('why' in granted) {
      // What only the operator can change.
      const level = granted.why === 'settings refused' || granted.why === 'tokens rotate' ? 'error' : 'warn';
      logger[level]({ problem: granted }, 'A workspace could not install the bot.');
      return problemPage(granted, installUrl);
    }
    if (!isAllowed(distribution.allowedWorkspaces, granted)) {
      const { workspaceId, enterpriseId } = granted;
      const actorId = granted.installedBy;
      const event = {
        event: 'workspace-refused',
        by: 'person',
        workspaceId,
        actorId,
        reason: 'not-allowed',
      } as const;
      logger.warn(
        { ...event, enterpriseId },
        'A workspace that is not on the list wanted to install the bot.',
      );
      return notAllowedPage(workspaceId);
    }
    const workspaceName = visibleText(granted.workspaceName) || granted.workspaceId;
    const waiting = await recordInstallation(ports, keys, { ...granted, workspaceName });
    logger.info({ waiting }, 'A workspace installed the bot.');
    return installedPage(workspaceName);
  }

  return async (request, response) => {
    const path = request.url?.split('?')[0];
    if (request.method !== 'GET' || (path !== INSTALL_PATH && path !== RETURN_PATH)) return false;
    try {
      if (path === INSTALL_PATH) show(response, begin());
      else show(response, { cookie: `${COOKIE}=; Max-Age=0; ${COOKIE_MARKS}`, ...(await finish(request)) });
    } catch (err) {
      logger.error({ err }, 'A page of the installation could not be made.');
      show(response, troublePage(currentReference()));
    }
    return true;
  };
}

function show(response: ServerResponse, { status, html, cookie }: Answer): void {
  response.writeHead(status, { ...PAGE_HEADERS, ...(cookie === undefined ? {} : { 'set-cookie': cookie }) });
  response.end(html);
}

/** The parameter when it is given once, else nothing: two would be somebody's try. */
function only(query: URLSearchParams, name: string): string {
  const [value = '', ...others] = query.getAll(name);
  return others.length === 0 ? value : '';
}

function cookieOf({ headers }: IncomingMessage): string {
  const pairs = (headers.cookie ?? '').split(';').map((pair) => pair.trim().split('='));
  const [value = '', ...others] = pairs.filter(([name]) => name === COOKIE).map(([, text = '']) => text);
  return others.length === 0 ? value : '';
}
