/**
 * What a form carries in `private_metadata`, as JSON: what it is about and where to reply. It comes back
 * from outside; read it with `decodeValue` and trust it for nothing.
 */
import { z } from 'zod';
import { visibleText } from '../app/visible-text.ts';
import { day, id } from './button-values.ts';

/** The conversation in which the form was asked for, where the reply belongs; undefined: the person's own. */
const replyTo = id.optional();

/** `shown`: who was on the team when the form was opened. */
export const setupContext = z.strictObject({
  channelId: id,
  shown: z.array(id).max(1_000).optional(),
  replyTo,
});
export const personContext = z.strictObject({ replyTo });
export const teamContext = z.strictObject({ teamId: id, replyTo });
/** `seen`: the fingerprint of the plan that is shown. */
export const planPreviewContext = z.strictObject({ teamId: id, seen: id, replyTo });
/** `changes`: the experiment that gives way. */
export const tryContext = z.strictObject({ teamId: id, changes: id.optional(), replyTo });
/** A body of work that is kept; undefined: a new one. */
export const bodyContext = z.strictObject({ teamId: id, bodyId: id.optional(), replyTo });
export const sprintContext = z.strictObject({ sprintId: id, replyTo });
/** An imported sprint that may be taken out. */
export const removalContext = z.strictObject({ teamId: id, sprintId: id, replyTo });
export const cardContext = z.strictObject({ sprintId: id, number: z.int().min(1).max(10_000), replyTo });
/** A card that is to be made of a message; the team isn't chosen yet. */
export const cardDraftContext = z.strictObject({
  title: z.string().max(200).transform(visibleText),
  link: z.string().max(500).optional(),
  replyTo,
});
export const answerContext = z.strictObject({ sprintId: id, day, replyTo });

/** A file that was given in an earlier round of a form. */
const keptFile = z.strictObject({
  id,
  name: z.string().min(1).max(100).transform(visibleText),
  /** In bytes, where it matters how much there is to read. */
  size: z.int().min(0).optional(),
});
export const importContext = z.strictObject({
  teamId: id,
  replyTo,
  /** How often the form has been shown, this time included. */
  round: z.int().min(1).max(1_000),
  /** The fingerprint of the preview that it shows. */
  seen: id.optional(),
  files: z.array(keptFile).max(10),
});

/** The place of a column in a row. */
const place = z.int().min(0).max(99).optional();
export const cardFileContext = z.strictObject({
  teamId: id,
  replyTo,
  file: keptFile,
  /** How often the form has been shown, this time included. */
  round: z.int().min(1).max(1_000),
  /** The columns under which it shows the rows, when these can be filled in. */
  seen: z.strictObject({ title: place, estimate: place, owner: place, link: place, key: place }).optional(),
});

export const valuesPreviewContext = z.strictObject({
  teamId: id,
  replyTo,
  file: keptFile,
  /** The fingerprint of the values that it shows. */
  seen: id,
});

export const daysOffPreviewContext = z.strictObject({
  teamId: id,
  replyTo,
  whose: z.enum(['own', 'team']),
  source: z.union([
    z.strictObject({ file: keptFile }),
    z.strictObject({ holidaysOf: z.string().min(1).max(100) }),
  ]),
  /** The fingerprint of the days that it shows. */
  seen: id,
});

export type KeptFile = z.infer<typeof keptFile>;

export type FormContext = z.infer<
  | typeof setupContext
  | typeof personContext
  | typeof teamContext
  | typeof planPreviewContext
  | typeof tryContext
  | typeof bodyContext
  | typeof sprintContext
  | typeof cardContext
  | typeof cardDraftContext
  | typeof answerContext
  | typeof importContext
  | typeof removalContext
  | typeof cardFileContext
  | typeof daysOffPreviewContext
  | typeof valuesPreviewContext
>;
