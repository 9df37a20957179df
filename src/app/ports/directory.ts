/** What the use cases need to know of people and channels. */

/** What the platform knows of a person. */
export interface Profile {
  readonly userId: string;
  readonly name: string;
  /** IANA name; undefined when the platform does not say. */
  readonly timeZone: string | undefined;
  readonly isBot: boolean;
  readonly isDeactivated: boolean;
}

export interface Directory {
  profile(workspaceId: string, userId: string): Promise<Profile>;
  /** People in a channel, bots and deactivated ones left out. */
  channelMembers(workspaceId: string, channelId: string): Promise<Profile[]>;
  channelName(workspaceId: string, channelId: string): Promise<string | undefined>;
}
