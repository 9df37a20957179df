/** `files.*`: upload in three steps, and sharing. docs.slack.dev/messaging/working-with-files */

import type { StoredFile } from '../file-shelf.ts';
import { fileJson } from '../message-json.ts';
import type { Stage } from '../stage.ts';
import type { Conversation } from '../workspace.ts';
import { type ApiArgs, ApiFailure, type ApiMethods, conversationOf } from './api-method.ts';
import { TEXT_MAX } from './message-content.ts';

/** Longest description of a picture: half of what an image block may say. */
const ALT_TEXT_MAX = 1000;
/**
 * Only the id of a conversation, never a person's: their direct messages must be opened first
 * (github.com/slackapi/bolt-js/issues/2115).
 */
const CONVERSATION_ID = /^[CGDZ][A-Z0-9]{8,}$/;

export const fileMethods: ApiMethods = {
  'files.getUploadURLExternal': {
    tier: 4,
    scope: 'files:write',
    answer(args, stage) {
      const length = args.text('length') ?? '0';
      if (length === '0') throw new ApiFailure('missing_argument');
      if (!/^[1-9]\d*$/.test(length)) {
        throw new ApiFailure('invalid_arguments', ['must be a whole number of bytes [json-pointer:/length]']);
      }
      const altText = args.text('alt_txt') ?? '';
      if (altText.length > ALT_TEXT_MAX) throw new ApiFailure('alt_txt_too_large');
      const name = args.requiredText('filename');
      const file = stage.files.announce({
        name,
        userId: stage.workspace.bot.id,
        lengthBytes: Number(length),
        altText,
      });
      return { upload_url: `${stage.url}/upload/${file.id}/${file.ticket}`, file_id: file.id };
    },
  },

  'files.completeUploadExternal': {
    tier: 4,
    scope: 'files:write',
    answer(args, stage) {
      const to = sharingPlace(args, stage);
      const comment = args.text('initial_comment') ?? '';
      if (comment.length > TEXT_MAX) throw new ApiFailure('msg_too_long');
      const wanted = wantedFiles(args, stage);
      // All or none, as the files of one call make one message.
      for (const { file } of wanted)
        if (!stage.files.canComplete(file)) throw new ApiFailure('file_update_failed');
      for (const { file, title } of wanted) stage.files.complete(file, title);
      if (to) share(to, comment, wanted, stage);
      return { files: wanted.map(({ file }) => ({ id: file.id, title: file.title })) };
    },
  },

  'files.info': {
    tier: 4,
    scope: 'files:read',
    answer(args, stage) {
      const file = stage.files.get(args.requiredText('file'));
      if (!file?.isComplete) throw new ApiFailure('file_not_found');
      return { file: fileJson(file, stage), comments: [] };
    },
  },
};

interface WantedFile {
  file: StoredFile;
  title: string | undefined;
}

function wantedFiles(args: ApiArgs, stage: Stage): WantedFile[] {
  const given = args.json('files', 'invalid_arguments');
  if (!Array.isArray(given) || given.length === 0) {
    throw new ApiFailure('invalid_arguments', ['missing required field: files [json-pointer:/]']);
  }
  const wanted = given.map((one: { id?: unknown; title?: unknown } | null) => {
    const file = stage.files.get(String(one?.id));
    if (!file) throw new ApiFailure('file_not_found');
    return { file, title: typeof one?.title === 'string' ? one.title : undefined };
  });
  if (new Set(wanted.map(({ file }) => file)).size < wanted.length)
    throw new ApiFailure('file_update_failed');
  return wanted;
}

/**
 * Where the files are to be shared; undefined when they stay private.
 * Files need membership even where the bot may write without (`chat:write.public`).
 */
function sharingPlace(args: ApiArgs, stage: Stage): Conversation | undefined {
  for (const name of ['channels', 'thread_ts', 'blocks'])
    if (args.has(name)) throw new ApiFailure('invalid_arguments', [notPlayed(name)]);
  const id = args.text('channel_id');
  if (id === undefined) return undefined;
  if (!CONVERSATION_ID.test(id)) {
    throw new ApiFailure('invalid_arguments', [
      `input must match regex pattern: ${CONVERSATION_ID.source} [json-pointer:/channel_id]`,
    ]);
  }
  const place = conversationOf(stage, id);
  if (place.isArchived) throw new ApiFailure('is_archived');
  if (!place.memberIds.has(stage.workspace.bot.id)) throw new ApiFailure('not_in_channel');
  return place;
}

function notPlayed(name: string): string {
  return `${name} can't be shown in a rehearsal: use channel_id and initial_comment [json-pointer:/${name}]`;
}

function share(to: Conversation, comment: string, wanted: readonly WantedFile[], stage: Stage): void {
  stage.log.add({
    text: comment,
    blocks: [],
    fileIds: wanted.map(({ file }) => file.id),
    channelId: to.id,
    userId: stage.workspace.bot.id,
    byBot: true,
  });
  stage.changed();
}
