/** The bot's own messages that are to be deleted on the platform, in the store. */

/** Progress in one conversation. */
export interface MessageRemoval {
  readonly id: string;
  readonly workspaceId: string;
  readonly channelId: string;
  /** Messages from here on stay, or have been looked at. */
  readonly beforeTs: string;
  readonly removedCount: number;
  /** Those that the platform doesn't let the bot delete. */
  readonly leftCount: number;
}

export interface RemovalWriting {
  /**
   * Records that the bot's messages to the person up to now are to be deleted, where it knows of their conversation.
   * @returns whether it does
   */
  begin(person: { readonly workspaceId: string; readonly userId: string }, at: Date): Promise<boolean>;
  /** Goes on then. */
  goOn(removal: MessageRemoval, nextAt: Date): Promise<void>;
  end(removalId: string): Promise<void>;
}
