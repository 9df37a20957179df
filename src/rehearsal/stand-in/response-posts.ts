/**
 * Posts that answer an interaction in its place: through a response URL, or in the answer to a command.
 * docs.slack.dev/interactivity/handling-user-interaction
 */
import { ApiArgs, ApiFailure } from './api/api-method.ts';
import { shortMessageContent } from './api/message-content.ts';
import type { JsonObject } from './page-state.ts';
import type { Stage } from './stage.ts';
import type { ResponsePlace } from './triggers.ts';

/**
 * Shows, replaces or deletes a message. Seen only by the person who acted unless `response_type` is `in_channel`.
 * @throws ApiFailure as `chat.postMessage` does
 */
export function respondIn(place: ResponsePlace, given: unknown, stage: Stage): void {
  const args = new ApiArgs(typeof given === 'string' ? { text: given } : (given as JsonObject));
  const original = place.ts === undefined ? undefined : stage.log.find(place.channelId, place.ts);
  if (args.flag('delete_original') && original) {
    original.deleted = true;
    stage.changed();
    if (!args.has('text') && !args.has('blocks')) return;
  }
  const content = shortMessageContent(args, stage);
  if (args.flag('replace_original') && original && !original.deleted) {
    stage.log.change(original, content);
  } else {
    const shared = args.text('response_type') === 'in_channel';
    stage.log.add({
      ...content,
      channelId: place.channelId,
      userId: stage.workspace.bot.id,
      byBot: true,
      ...(shared ? {} : { ephemeralFor: place.userId }),
    });
  }
  stage.changed();
}

/** A call to a response URL. @returns status and body of the answer */
export function answerResponseUrl(
  key: string,
  body: Buffer,
  stage: Stage,
): { status: number; body: JsonObject } {
  let given: unknown;
  try {
    given = JSON.parse(body.toString('utf8'));
  } catch {
    return { status: 400, body: { ok: false, error: 'invalid_payload' } };
  }
  if (typeof given !== 'object' || given === null)
    return { status: 400, body: { ok: false, error: 'invalid_payload' } };
  const place = stage.responseUrls.use(key);
  if ('error' in place) return { status: 404, body: { ok: false, error: place.error } };
  try {
    respondIn(place, given, stage);
    return { status: 200, body: { ok: true } };
  } catch (error) {
    if (!(error instanceof ApiFailure)) throw error;
    return { status: 400, body: { ok: false, error: error.code, ...error.extra } };
  }
}
