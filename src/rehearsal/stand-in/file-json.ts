/** Files as the platform describes them in answers, messages and forms. docs.slack.dev/reference/objects/file-object */
import { pictureType, type StoredFile } from './file-shelf.ts';
import type { JsonObject } from './page-state.ts';
import type { Stage } from './stage.ts';

interface FileKind {
  type: string;
  mime: string;
}

/** The kinds that a rehearsal meets besides pictures, by the ending of the name. */
const KINDS: Record<string, FileKind> = {
  csv: { type: 'csv', mime: 'text/csv' },
  tsv: { type: 'tsv', mime: 'text/tab-separated-values' },
  txt: { type: 'text', mime: 'text/plain' },
  json: { type: 'json', mime: 'application/json' },
};
const OTHER: FileKind = { type: 'binary', mime: 'application/octet-stream' };

/** The part of a name after its last dot, in small letters; empty when there is none. */
export function endingOf(name: string): string {
  return /\.([^.]+)$/.exec(name)?.[1]?.toLowerCase() ?? '';
}

export function fileKind(file: StoredFile): FileKind {
  const ending = endingOf(file.name);
  const named = Object.hasOwn(KINDS, ending) ? KINDS[ending] : undefined;
  return (file.bytes && pictureType(file.bytes)) ?? named ?? OTHER;
}

/** A file that is still being worked on has no type yet. */
export function fileJson(file: StoredFile, stage: Stage): JsonObject {
  const kind = stage.files.isReady(file) ? fileKind(file) : undefined;
  const places = stage.log.placesOf(file.id);
  const kindOf = (id: string) => stage.workspace.conversations.get(id)?.kind;
  const isPrivate = (id: string) => stage.workspace.conversations.get(id)?.isPrivate ?? true;
  const name = encodeURIComponent(file.name);
  return {
    id: file.id,
    name: file.name,
    title: file.title,
    alt_txt: file.altText,
    mimetype: kind?.mime ?? '',
    filetype: kind?.type ?? '',
    size: file.lengthBytes,
    mode: 'hosted',
    user: file.userId,
    is_public: places.some((id) => !isPrivate(id)),
    is_external: false,
    url_private: `${stage.url}/files/${file.id}/${name}`,
    url_private_download: `${stage.url}/files/${file.id}/download/${name}`,
    channels: places.filter((id) => !isPrivate(id)),
    groups: places.filter((id) => isPrivate(id) && kindOf(id) === 'channel'),
    ims: places.filter((id) => kindOf(id) === 'dm'),
  };
}
