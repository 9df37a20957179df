/**
 * What a form carries in `private_metadata`, as JSON: what it is about and where to reply. It comes back
 * from outside; read it with `decodeValue` and trust it for nothing.
 */
import { z } from 'zod';
import { day, id } from './button-values.ts';

/** The conversation in which the form was asked for, where the reply belongs; undefined: the person's own. */
const replyTo = id.optional();

export const setupContext = z.strictObject({ channelId: id, replyTo });
export const teamContext = z.strictObject({ teamId: id, replyTo });
export const sprintContext = z.strictObject({ sprintId: id, replyTo });
export const answerContext = z.strictObject({ sprintId: id, day, replyTo });

export type SetupContext = z.infer<typeof setupContext>;
export type TeamContext = z.infer<typeof teamContext>;
export type SprintContext = z.infer<typeof sprintContext>;
export type AnswerContext = z.infer<typeof answerContext>;

/** Writes a form's context. */
export function encodeContext(context: SetupContext | TeamContext | SprintContext | AnswerContext): string {
  return JSON.stringify(context);
}
