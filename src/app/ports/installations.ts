/** Workspaces that installed the bot, in the store of a bot that serves many. */
import type { Installation, SealedToken } from '../workspaces/installation.ts';

export interface InstallationReading {
  installationOf(workspaceId: string): Promise<Installation | undefined>;
  /** Installations that hold a token, in order of workspace; without those of one key, from one workspace on. */
  sealedInstallations(page: {
    readonly exceptKey?: string | undefined;
    readonly after?: string | undefined;
    readonly limit: number;
  }): Promise<Installation[]>;
}

export interface InstallationWriting {
  /** Inserts the workspace's installation, or replaces it. */
  save(installation: Installation): Promise<void>;
  /**
   * Marks the installation as revoked and erases its token. With `onlyToken` only while that is its token, so that a
   * later installation is left alone. @returns false when there was nothing to revoke
   */
  revoke(workspaceId: string, at: Date, onlyToken?: SealedToken): Promise<boolean>;
  /** Deletes the installation. @returns false when there was none */
  forget(workspaceId: string): Promise<boolean>;
  /** Puts the same token under another key; false when the stored one has changed. */
  replaceToken(workspaceId: string, from: SealedToken, to: SealedToken): Promise<boolean>;
}
