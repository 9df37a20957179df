import { fileJson } from '../file-json.ts';
import type { Message } from '../message-log.ts';
import type { JsonObject } from '../page-state.ts';
import type { Stage } from '../stage.ts';

/** A message as the platform describes it in answers, histories and payloads. */
export function messageJson(
  message: Message,
  stage: Stage,
  options: { metadata?: boolean } = {},
): JsonObject {
  const { teamId, botId, appId } = stage.workspace;
  return {
    type: 'message',
    user: message.userId,
    ts: message.ts,
    text: message.text,
    team: teamId,
    ...(message.byBot ? { bot_id: botId, app_id: appId } : {}),
    ...(message.blocks.length > 0 ? { blocks: message.blocks } : {}),
    ...(message.fileIds ? { files: filesOf(message, stage), upload: true } : {}),
    ...(message.editedTs ? { edited: { user: message.userId, ts: message.editedTs } } : {}),
    ...(options.metadata && message.metadata && 'event_type' in message.metadata
      ? { metadata: message.metadata }
      : {}),
  };
}

function filesOf(message: Message, stage: Stage): JsonObject[] {
  return (message.fileIds ?? []).flatMap((id) => {
    const file = stage.files.get(id);
    return file ? [fileJson(file, stage)] : [];
  });
}
