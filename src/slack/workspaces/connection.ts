/** How the bot is connected to the platform: with one workspace's token, or with those of all that installed it. */

import type { MessageView } from '../views/message-view.ts';
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
  /** What people are told in a workspace without the bot. */
  readonly notInstalled: MessageView;
  readonly pages: PageRoutes;
  readonly removals: Removals;
}

/** The bot can't be connected; each sentence says what is missing and how to get it. */
export class ConnectionRefused extends Error {
  override readonly name = 'ConnectionRefused';
  readonly problems: readonly string[];

  constructor(problems: readonly string[]) {
    super(problems.join('\n'));
    this.problems = problems;
  }
}
