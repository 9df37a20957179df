/** `files.*`: upload in three steps. docs.slack.dev/messaging/working-with-files */
import { pictureType, type StoredFile } from '../file-shelf.ts';
import type { JsonObject } from '../page-state.ts';
import type { Stage } from '../stage.ts';
import { ApiFailure } from './api-failure.ts';
import type { ApiMethods } from './api-method.ts';

/** Longest description of a picture, as for image blocks. */
const ALT_TEXT_MAX = 2000;

export const fileMethods: ApiMethods = {
  'files.getUploadURLExternal': {
    tier: 4,
    scope: 'files:write',
    answer(args, stage) {
      const length = args.requiredText('length');
      if (!/^[1-9]\d*$/.test(length)) {
        throw new ApiFailure('invalid_arguments', ['must be a whole number of bytes [json-pointer:/length]']);
      }
      const altText = args.text('alt_txt') ?? '';
      if (altText.length > ALT_TEXT_MAX) throw new ApiFailure('alt_txt_too_large');
      const name = args.requiredText('filename');
      const file = stage.files.announce({ name, lengthBytes: Number(length), altText });
      return { upload_url: `${stage.url}/upload/${file.id}/${file.ticket}`, file_id: file.id };
    },
  },

  'files.completeUploadExternal': {
    tier: 4,
    scope: 'files:write',
    answer(args, stage) {
      if (args.has('channel_id')) {
        const why =
          'upload privately and show the file by an image block in a rehearsal [json-pointer:/channel_id]';
        throw new ApiFailure('invalid_arguments', [why]);
      }
      const wanted = args.json('files', 'invalid_arguments');
      if (!Array.isArray(wanted) || wanted.length === 0) {
        throw new ApiFailure('invalid_arguments', ['missing required field: files [json-pointer:/]']);
      }
      const files = wanted.map((one: { id?: unknown; title?: unknown }) => {
        const file = stage.files.get(String(one?.id));
        if (!file) throw new ApiFailure('file_not_found');
        const title = typeof one.title === 'string' ? one.title : undefined;
        if (!stage.files.complete(file.id, title)) throw new ApiFailure('file_update_failed');
        return { id: file.id, title: file.title };
      });
      return { files };
    },
  },

  'files.info': {
    tier: 4,
    scope: 'files:read',
    answer(args, stage) {
      const file = stage.files.get(args.requiredText('file'));
      if (file?.completedAtMs === undefined) throw new ApiFailure('file_not_found');
      return { file: fileJson(file, stage), comments: [], response_metadata: { next_cursor: '' } };
    },
  },
};

/** A file that is still being worked on has no type yet. */
function fileJson(file: StoredFile, stage: Stage): JsonObject {
  const picture = file.bytes && stage.files.isReady(file) ? pictureType(file.bytes) : undefined;
  const address = `${stage.url}/files/${file.id}/${encodeURIComponent(file.name)}`;
  return {
    id: file.id,
    name: file.name,
    title: file.title,
    alt_txt: file.altText,
    mimetype: picture?.mime ?? '',
    filetype: picture?.type ?? '',
    size: file.lengthBytes,
    user: stage.workspace.bot.id,
    is_public: false,
    is_external: false,
    url_private: address,
    url_private_download: address,
    channels: [],
    groups: [],
    ims: [],
  };
}
