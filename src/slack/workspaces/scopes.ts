/** What the bot asks of a workspace, and what for; the app manifest asks for exactly these. */
export const NEEDED_SCOPES = {
  'chat:write': 'to post prompts and verdicts',
  'chat:write.public': 'to post verdicts in a public channel without being invited first',
  'im:write': 'to open a direct message with a member',
  'im:history': 'to read answers in words and to find its own prompts again',
  'channels:read': 'to know who is in a public channel',
  'channels:history': 'to find its own posts in a public channel again',
  'groups:read': 'to know who is in a private channel',
  'groups:history': 'to find its own posts in a private channel again',
  commands: 'to hear /loadline',
  'files:write': 'to upload charts and exported files',
  'files:read': 'to know when a chart can be shown, and to read the files that are given with a form',
  'users:read': "to know people's names and time zones",
} as const;

export type NeededScope = keyof typeof NEEDED_SCOPES;
