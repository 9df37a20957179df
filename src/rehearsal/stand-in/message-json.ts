/**
 * Messages and files as the platform describes them in answers, histories, payloads and forms.
 * docs.slack.dev/reference/objects/file-object
 */
import { fileKind, type StoredFile } from './file-shelf.ts';
import type { Message } from './message-log.ts';
import type { JsonObject } from './page-state.ts';
import type { Stage } from './stage.ts';

/** A message as the platform describes it in answers, histories and payloads. */
export function messageJson(
  message: Message,
  stage: Stage,
  options: { metadata?: 'whole' | 'type' } = {},
): JsonObject {
  const { teamId, botId, appId } = stage.workspace;
  return {
    type: 'message',
    user: message.userId,
    ts: message.ts,
    text: message.text,
    team: teamId,
    ...(message.byBot ? { bot_id: botId, app_id: appId, bot_profile: botProfile(stage) } : {}),
    ...(message.isPlaceholder ? { subtype: 'tombstone' } : {}),
    ...(message.blocks.length > 0 ? { blocks: message.blocks } : {}),
    ...(message.fileIds ? { files: filesOf(message, stage), upload: true } : {}),
    ...(message.threadTs ? { thread_ts: message.threadTs } : {}),
    ...(message.editedTs ? { edited: { user: message.userId, ts: message.editedTs } } : {}),
    ...(options.metadata && message.metadata && 'event_type' in message.metadata
      ? { metadata: options.metadata === 'whole' ? message.metadata : typeOf(message.metadata) }
      : {}),
  };
}

function botProfile({ workspace: { botId, appId, teamId, bot } }: Stage): JsonObject {
  return { id: botId, deleted: false, name: bot.name, updated: 0, app_id: appId, icons: {}, team_id: teamId };
}

function typeOf({ event_type }: JsonObject): JsonObject {
  return { event_type };
}

function filesOf(message: Message, stage: Stage): JsonObject[] {
  return (message.fileIds ?? []).flatMap((id) => {
    const file = stage.files.get(id);
    return file ? [fileJson(file, stage)] : [];
  });
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
    pretty_type: kind?.type.toUpperCase() ?? '',
    created: 0,
    timestamp: 0,
    size: file.lengthBytes,
    editable: false,
    mode: 'hosted',
    user: file.userId,
    user_team: stage.workspace.teamId,
    username: '',
    display_as_bot: false,
    file_access: 'visible',
    media_display_type: 'unknown',
    has_rich_preview: false,
    external_type: '',
    public_url_shared: false,
    comments_count: 0,
    permalink: `${stage.url}/files/${file.id}/${name}`,
    permalink_public: `${stage.url}/files/${file.id}/public/${name}`,
    is_public: places.some((id) => !isPrivate(id)),
    is_external: false,
    url_private: `${stage.url}/files/${file.id}/${name}`,
    url_private_download: `${stage.url}/files/${file.id}/download/${name}`,
    channels: places.filter((id) => !isPrivate(id)),
    groups: places.filter((id) => isPrivate(id) && kindOf(id) === 'channel'),
    ims: places.filter((id) => kindOf(id) === 'dm'),
  };
}
