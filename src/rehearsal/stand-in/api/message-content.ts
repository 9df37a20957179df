/**
 * Checks what a message is to say, however it comes: by a call, a response URL or the answer to a command.
 */
import type { JsonObject } from '../page-state.ts';
import { areTextsTooLong, messageProblems } from '../shapes/check-blocks.ts';
import type { Stage } from '../stage.ts';
import { type ApiArgs, ApiFailure } from './api-method.ts';

/** Longest text of a message that doesn't come by `chat.postMessage`; beyond, it is refused. */
export const TEXT_MAX = 4000;
/** `chat.postMessage` cuts a longer text and doesn't say so. */
export const POSTED_TEXT_MAX = 40_000;

interface MessageContent {
  text: string;
  blocks: JsonObject[];
  metadata?: JsonObject;
  /** The message under which this one is a reply. */
  threadTs?: string;
}

/**
 * @throws ApiFailure `no_text`, `invalid_blocks_format`, `invalid_blocks` (with every problem),
 *   `msg_blocks_too_long`, `invalid_metadata_format` or `invalid_metadata_schema`
 */
export function messageContent(args: ApiArgs, stage: Stage): MessageContent {
  // An empty list takes away attachments, of which there are none.
  const attachments = args.json('attachments', 'invalid_attachments') ?? [];
  if (!Array.isArray(attachments) || attachments.length > 0) {
    throw new ApiFailure('invalid_arguments', [
      "attachments can't be shown in a rehearsal [json-pointer:/attachments]",
    ]);
  }
  const text = args.text('text') ?? '';
  const given = args.json('blocks', 'invalid_blocks_format');
  if (given !== undefined && !Array.isArray(given)) throw new ApiFailure('invalid_blocks_format');
  if (text.trim() === '' && (given === undefined || given.length === 0)) throw new ApiFailure('no_text');
  const problems = given === undefined ? [] : messageProblems(given, stage.files);
  if (problems.length > 0) throw new ApiFailure('invalid_blocks', problems, { errors: problems });
  if (areTextsTooLong(given)) throw new ApiFailure('msg_blocks_too_long');
  const blocks = stage.ids.withIds((given ?? []) as JsonObject[]);
  const metadata = metadataOf(args);
  const threadTs = args.text('thread_ts');
  return {
    text,
    blocks,
    ...(metadata === undefined ? {} : { metadata }),
    ...(threadTs === undefined ? {} : { threadTs }),
  };
}

/** As `messageContent`, for every way but `chat.postMessage`. @throws ApiFailure also `msg_too_long` */
export function shortMessageContent(args: ApiArgs, stage: Stage): MessageContent {
  if ((args.text('text') ?? '').length > TEXT_MAX) throw new ApiFailure('msg_too_long');
  return messageContent(args, stage);
}

/** An empty object takes metadata away from a message that had some. */
export function metadataOf(args: ApiArgs): JsonObject | undefined {
  const given = args.json('metadata', 'invalid_metadata_format');
  if (given === undefined) return undefined;
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    throw new ApiFailure('invalid_metadata_format');
  }
  const { event_type, event_payload, ...rest } = given as JsonObject;
  if (Object.keys(given).length === 0) return {};
  const wellFormed =
    typeof event_type === 'string' &&
    event_type !== '' &&
    typeof event_payload === 'object' &&
    event_payload !== null &&
    !Array.isArray(event_payload) &&
    Object.keys(rest).length === 0;
  if (!wellFormed) throw new ApiFailure('invalid_metadata_schema');
  return { event_type, event_payload };
}
