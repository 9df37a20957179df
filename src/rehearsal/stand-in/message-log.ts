/**
 * Every message of the workspace, with its changes. Must not know who is allowed to see a conversation: the workspace does.
 */
import type { JsonObject } from './page-state.ts';

interface MessageVersion {
  text: string;
  blocks: JsonObject[];
}

export interface Message extends MessageVersion {
  ts: string;
  channelId: string;
  /** Author. */
  userId: string;
  byBot: boolean;
  /** The only person who sees it; undefined when everybody in the conversation does. */
  ephemeralFor?: string;
  metadata?: JsonObject;
  /** The message under which this one is a reply. */
  threadTs?: string;
  /** Ids of the files that it shares; changes of its words leave them. */
  fileIds?: readonly string[];
  editedTs?: string;
  /** What it said before each change, oldest first. */
  earlier: MessageVersion[];
  /** It stays on record, hidden. */
  deleted: boolean;
  /** It was deleted, and holds the place for its replies. */
  isPlaceholder?: boolean;
}

type NewMessage = Omit<Message, 'ts' | 'earlier' | 'editedTs' | 'deleted'>;

export class MessageLog {
  readonly #now: () => Date;
  readonly #all: Message[] = [];
  #lastMicros = 0;

  constructor(now: () => Date) {
    this.#now = now;
  }

  /**
   * A timestamp of the simulated moment, in the platform's form. Always later than every one before, even if the
   * simulated calendar did not move or was turned back.
   */
  nextTs(): string {
    this.#lastMicros = Math.max(this.#now().getTime() * 1000, this.#lastMicros + 1);
    const seconds = Math.floor(this.#lastMicros / 1_000_000);
    return `${seconds}.${String(this.#lastMicros % 1_000_000).padStart(6, '0')}`;
  }

  add(message: NewMessage): Message {
    const added: Message = { ...message, ts: this.nextTs(), earlier: [], deleted: false };
    this.#all.push(added);
    return added;
  }

  change(message: Message, next: MessageVersion & { metadata?: JsonObject }): void {
    message.earlier.push({ text: message.text, blocks: message.blocks });
    message.text = next.text;
    message.blocks = next.blocks;
    if (next.metadata !== undefined) message.metadata = next.metadata;
    message.editedTs = this.nextTs();
  }

  /** With replies, a placeholder stays in its place (docs.slack.dev/reference/methods/chat.delete). */
  delete(message: Message): void {
    const { channelId, ts } = message;
    message.isPlaceholder = this.of(channelId).some(({ threadTs }) => threadTs === ts);
    message.deleted = !message.isPlaceholder;
    if (!message.isPlaceholder) return;
    message.earlier.push({ text: message.text, blocks: message.blocks });
    Object.assign(message, {
      text: 'This message was deleted.',
      blocks: [],
      userId: 'USLACKBOT',
      byBot: false,
    });
  }

  find(channelId: string, ts: string): Message | undefined {
    return this.#all.find((one) => one.channelId === channelId && one.ts === ts && !one.deleted);
  }

  /** Messages of one conversation, oldest first; with the ephemeral ones of one person. */
  of(channelId: string, seenBy?: string): Message[] {
    return this.#all.filter(
      (one) =>
        one.channelId === channelId &&
        !one.deleted &&
        (one.ephemeralFor === undefined || one.ephemeralFor === seenBy),
    );
  }

  /** The messages under one, oldest first; those that one person alone sees are no replies. */
  repliesTo(channelId: string, ts: string): Message[] {
    return this.of(channelId).filter((one) => one.threadTs === ts);
  }

  /** Ids of the conversations in which a file is shared now. */
  placesOf(fileId: string): string[] {
    const sharing = this.#all.filter((one) => !one.deleted && one.fileIds?.includes(fileId));
    return [...new Set(sharing.map((one) => one.channelId))];
  }

  /** Everything ever posted, in order. */
  all(): readonly Message[] {
    return this.#all;
  }
}
