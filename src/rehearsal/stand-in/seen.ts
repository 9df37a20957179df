/**
 * What a person sees, and what was posted so far: read-only pictures of the stage.
 */
import type { StoredFile } from './file-shelf.ts';
import type { Message } from './message-log.ts';
import type { PageState, PageUser, SeenFile, SeenMessage } from './page-state.ts';
import { imagesOf } from './shapes/check-blocks.ts';
import type { Stage } from './stage.ts';
import type { Person } from './workspace.ts';

/** One message with its history, for those who check what the bot said. */
export interface Post extends Message {
  /** Set for messages in a channel. */
  channelName?: string;
  /** Set for direct messages: the person who talks with the bot. */
  memberId?: string;
  /** Alternative texts of all pictures in it, in order. */
  altTexts: string[];
  /** Files that it shares, in order. */
  files: SeenFile[];
}

/** When people last looked at a place. */
export class ReadMarks {
  readonly #marks = new Map<string, string>();

  read(userId: string, channelId: string, ts: string): void {
    this.#marks.set(`${userId} ${channelId}`, ts);
  }

  /** Fixed-width timestamps compare as strings, as seconds have ten digits until the year 2286. */
  isUnread(userId: string, message: Message): boolean {
    const mark = this.#marks.get(`${userId} ${message.channelId}`) ?? '';
    return message.userId !== userId && message.ts > mark;
  }
}

export function allPosts(stage: Stage): Post[] {
  return stage.log.all().map((message) => {
    const place = stage.workspace.conversations.get(message.channelId);
    return structuredClone({
      ...message,
      ...(place?.partnerId ? { memberId: place.partnerId } : { channelName: place?.name ?? '' }),
      altTexts: imagesOf(message.blocks).map((image) => String(image.alt_text)),
      files: filesOf(stage, message),
    });
  });
}

export function messagesOf(stage: Stage, userId: string, channelId: string): SeenMessage[] {
  const place = stage.workspace.placeOf(userId, channelId);
  if (!place) throw new Error(`${userId} is not in ${channelId}`);
  return stage.log.of(place.id, userId).map((message) => ({
    ts: message.ts,
    channel: message.channelId,
    user: message.userId,
    byBot: message.byBot,
    text: message.text,
    blocks: structuredClone(message.blocks),
    files: filesOf(stage, message),
    ephemeral: message.ephemeralFor !== undefined,
    ...(message.threadTs ? { threadTs: message.threadTs } : {}),
    ...(message.editedTs ? { editedTs: message.editedTs } : {}),
  }));
}

function filesOf(stage: Stage, message: Message): SeenFile[] {
  return (message.fileIds ?? []).flatMap((id) => {
    const file = stage.files.get(id);
    return file ? [seenFile(file)] : [];
  });
}

export function seenFile({ id, name, lengthBytes }: StoredFile): SeenFile {
  return { id, name, sizeBytes: lengthBytes };
}

/** A file that this person may read: it is their own, or shared where they are. */
export function readableFile(stage: Stage, userId: string, fileId: string): StoredFile | undefined {
  const file = stage.files.get(fileId);
  if (!file?.isComplete) return undefined;
  const isShared = stage.log.placesOf(fileId).some((id) => stage.workspace.placeOf(userId, id) !== undefined);
  return file.userId === userId || isShared ? file : undefined;
}

export function pageState(stage: Stage, userId: string, marks: ReadMarks): PageState {
  const me = stage.workspace.actor(userId);
  const places = stage.workspace.conversationsOf(userId);
  const unread = (id: string) => stage.log.of(id, userId).filter((one) => marks.isUnread(userId, one)).length;
  return {
    now: stage.options.now().toISOString(),
    me: pageUser(me),
    users: [...stage.workspace.people.values()].filter((person) => !person.deleted).map(pageUser),
    channels: places.map((one) => ({
      id: one.id,
      name: one.kind === 'dm' ? stage.workspace.bot.realName : one.name,
      kind: one.kind,
      unread: unread(one.id),
    })),
    messages: Object.fromEntries(places.map((one) => [one.id, messagesOf(stage, userId, one.id)])),
    view: stage.surfaces.topOf(userId) ?? null,
    home: stage.surfaces.homeOf(userId) ?? null,
  };
}

function pageUser(person: Person): PageUser {
  const { id, name, realName, timeZone, isBot } = person;
  return { id, name, realName, timeZone, isBot };
}
