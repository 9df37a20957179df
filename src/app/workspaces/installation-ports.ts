/** What is needed of the store, inside a transaction, for workspaces that installed the bot, when it serves many. */
import type { InstallAttempt, Installation, SealedToken } from './installation.ts';

export interface InstallationQueries {
  installationOf(workspaceId: string): Promise<Installation | undefined>;
  /** Inserts the workspace's installation, or replaces it. */
  saveInstallation(installation: Installation): Promise<void>;
  /**
   * Marks the installation as revoked and erases its token. With `onlyToken` only while that is its token, so that a
   * later installation is left alone. @returns false when there was nothing to revoke
   */
  revokeInstallation(workspaceId: string, at: Date, onlyToken?: SealedToken): Promise<boolean>;
  /** Deletes the installation. @returns false when there was none */
  forgetInstallation(workspaceId: string): Promise<boolean>;
  /** Installations that hold a token, in order of workspace; without those of one key, from one workspace on. */
  sealedInstallations(page: {
    readonly exceptKey?: string | undefined;
    readonly after?: string | undefined;
    readonly limit: number;
  }): Promise<Installation[]>;
  /** Puts the same token under another key; false when the stored one has changed meanwhile. */
  replaceSealedToken(workspaceId: string, from: SealedToken, to: SealedToken): Promise<boolean>;
  /** Remembers an attempt and forgets expired ones; false when `most` are under way. */
  addInstallAttempt(attempt: InstallAttempt, now: Date, most: number): Promise<boolean>;
  /** Gives the attempt back and forgets it, so that it serves once. */
  takeInstallAttempt(stateHash: string): Promise<InstallAttempt | undefined>;
  /** Queues the delivery of all posts that the workspace is still owed. @returns how many */
  queuePostsOf(workspaceId: string): Promise<number>;
}
