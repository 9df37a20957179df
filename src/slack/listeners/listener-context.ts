/** What every listener works with, and how it reaches the listener from where the workspace of a request is found. */

import type { Context } from '@slack/bolt';
import type { WebClient } from '@slack/web-api';
import type { UndecodedFile } from '../../app/csv/given-file.ts';
import type { Directory } from '../../app/ports/app-dependencies.ts';
import type { PostImage } from '../../app/ports/messenger.ts';
import type { Actor } from '../../app/team/team.ts';
import type { ChannelChange } from '../../app/team/watch-channel.ts';
import type { UseCases } from '../../app/use-cases.ts';
import type { Logger } from '../../logger.ts';
import type { SentFile } from '../files/download-file.ts';
import type { GivenBytes } from '../files/reading-turns.ts';
import type { SharedFiles } from '../sending/upload-files.ts';

export interface ListenerContext {
  /** Whose bot was asked. Everybody who asks it acts there, also people of other workspaces in a shared channel. */
  readonly workspaceId: string;
  /** The bot itself, as people mention it. */
  readonly botUserId: string;
  readonly useCases: UseCases;
  readonly directory: Directory;
  /** The client for what a person waits for. */
  readonly client: WebClient;
  readonly logger: Logger;
  /** Uploads a chart privately; gives the file's id. */
  readonly upload: (image: PostImage) => Promise<string>;
  /**
   * Fetches a file that came with a form; takes up to a quarter of a minute.
   * @throws Refusal `file-unreadable`
   */
  readonly download: (file: SentFile) => Promise<UndecodedFile>;
  /**
   * Does what fetches and reads files when it is its turn.
   * @throws Refusal `reading-yours`, `reading-others`
   */
  readonly inTurn: <T>(given: Omit<GivenBytes, 'workspaceId'>, work: () => Promise<T>) => Promise<T>;
  /** Hands files to one person, as one message in their direct messages. */
  readonly shareFiles: (shared: SharedFiles) => Promise<void>;
  /** False when this has been seen before, by any replica. */
  readonly isNew: (eventKey: string) => Promise<boolean>;
  /** Sees to it that a form which failed is not carried out when it comes again; false when it came before. */
  readonly giveUp: (eventKey: string) => Promise<boolean>;
  /** Sees to what follows from a change of a channel. */
  readonly watchChannel: (change: ChannelChange) => Promise<void>;
  /** Shows the home page to somebody who has opened it. */
  readonly openHome: (actor: Actor) => Promise<void>;
  /**
   * Brings the person's home page up to date, if they have ever opened it. Never throws.
   *
   * @param openChannelId the team of this channel is shown with all its buttons
   * @returns whether they find it up to date
   */
  readonly refreshHome: (actor: Actor, openChannelId?: string) => Promise<boolean>;
  /** Resolves when a form's answer can't wait for its use case any longer. */
  readonly answerDue: () => Promise<void>;
}

const NAME = 'loadlineListenerContext';

export function keepContext(bolt: Context, context: ListenerContext): void {
  (bolt as Record<string, unknown>)[NAME] = context;
}

/** The context of the request's own workspace. */
export function contextOf(bolt: Context): ListenerContext {
  const context = (bolt as Record<string, unknown>)[NAME];
  if (context === undefined)
    throw new TypeError('a request came to a listener before its workspace was found');
  return context as ListenerContext;
}
