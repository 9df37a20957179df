/** How the bot is connected to the platform: with one workspace's token, or with those of all that installed it. */
import type { TokenKeyProblem } from '../../app/workspaces/check-token-keys.ts';
import type { MessageView } from '../views/message-view.ts';
import type { PlatformProblem } from './check-platform.ts';
import type { PageRoutes } from './install-pages.ts';
import type { Removals } from './removals.ts';
import type { Workspaces } from './workspaces.ts';

export interface Connection {
  readonly workspaces: Workspaces;
  /** The same for posts, which nobody waits for: looks them up without taking anything from requests. */
  readonly bulkWorkspaces: Workspaces;
  /** Undefined with one workspace, which nobody else can join. */
  readonly distribution: DistributionParts | undefined;
  /** For the log. */
  readonly workspaceName: string | undefined;
}

/** What belongs to the installation by workspaces themselves. */
export interface DistributionParts {
  /** What people read in a workspace without the bot. */
  readonly notInstalled: MessageView;
  readonly pages: PageRoutes;
  readonly removals: Removals;
}

/** The bot can't be connected: the token or its scopes don't serve, or stored tokens can't be read. */
export class ConnectionRefused extends Error {
  override readonly name = 'ConnectionRefused';
  readonly problems: readonly (PlatformProblem | TokenKeyProblem)[];

  constructor(problems: readonly (PlatformProblem | TokenKeyProblem)[]) {
    super(problems.map(({ code }) => code).join(', '));
    this.problems = problems;
  }
}
