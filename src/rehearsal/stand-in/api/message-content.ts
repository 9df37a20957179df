/**
 * Checks what a message is to say, however it comes: by a call, a response URL or the answer to a command.
 */
import type { JsonObject } from '../page-state.ts';
import { areTextsTooLong, messageProblems } from '../shapes/check-blocks.ts';
import type { Stage } from '../stage.ts';
import { type ApiArgs, ApiFailure } from './api-method.ts';

/** The platform asks for 4,000 characters at most and cuts or refuses above; here nothing longer passes. */
export const TEXT_MAX = 4000;

export interface MessageContent {
  text: string;
  blocks: JsonObject[];
  metadata?: JsonObject;
}

/**
 * @throws ApiFailure `no_text`, `msg_too_long`, `invalid_blocks_format`, `invalid_blocks` (with every problem),
 *   `msg_blocks_too_long`, `invalid_metadata_format` or `invalid_metadata_schema`
 */
export function messageContent(args: ApiArgs, stage: Stage): MessageContent {
  if (args.has('attachments')) throw notPlayed('attachments');
  if (args.has('thread_ts')) throw notPlayed('thread_ts');
  const text = args.text('text') ?? '';
  const given = args.json('blocks', 'invalid_blocks_format');
  if (given !== undefined && !Array.isArray(given)) throw new ApiFailure('invalid_blocks_format');
  if (text.trim() === '' && (given === undefined || given.length === 0)) throw new ApiFailure('no_text');
  if (text.length > TEXT_MAX) throw new ApiFailure('msg_too_long');
  const problems = given === undefined ? [] : messageProblems(given, stage.files);
  if (problems.length > 0) throw new ApiFailure('invalid_blocks', problems, { errors: problems });
  if (areTextsTooLong(given)) throw new ApiFailure('msg_blocks_too_long');
  const blocks = stage.ids.withIds((given ?? []) as JsonObject[]);
  const metadata = metadataOf(args.json('metadata', 'invalid_metadata_format'));
  return metadata === undefined ? { text, blocks } : { text, blocks, metadata };
}

/** An empty object takes metadata away from a message that had some. */
function metadataOf(given: unknown): JsonObject | undefined {
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

function notPlayed(name: string): ApiFailure {
  return new ApiFailure('invalid_arguments', [
    `${name} can't be shown in a rehearsal [json-pointer:/${name}]`,
  ]);
}
