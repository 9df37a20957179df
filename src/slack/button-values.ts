/**
 * What a button's `value` holds, as JSON. It comes back from outside, so it is read with a schema and
 * trusted for nothing: whether the person may touch that sprint is for the use case to decide.
 */
import { z } from 'zod';
import { visibleText } from '../app/visible-text.ts';
import { isDay } from '../sprint/calendar.ts';

/** Longest `value` of a button, in characters (docs.slack.dev/reference/block-kit/block-elements). */
const BUTTON_VALUE_MAX_LENGTH = 2_000;

/** An id of ours or of the platform's, in visible ASCII. */
export const id = z
  .string()
  .max(64)
  .regex(/^[\x21-\x7e]+$/);
/** Looks like an ISO date; whether it is one the use case decides. */
export const day = z.string().refine(isDay);
const typed = z.string().max(3_000).transform(visibleText);

/** A sprint and, unless today is meant, one of its days. */
export const sprintDayValue = z.strictObject({ sprintId: id, day: day.optional() });

/** A card by its short name or number, and the day of the message. */
export const cardDayValue = z.strictObject({ sprintId: id, day, card: z.string().min(1).max(100) });

export const sprintValue = z.strictObject({ sprintId: id });

/** A card of a sprint, by its number. */
export const sprintCardValue = z.strictObject({ sprintId: id, card: z.string().regex(/^\d{1,4}$/) });

/** The channel of the team that is meant, wherever the button was pressed. */
export const placeValue = z.strictObject({ channelId: id });

/** Whether the verdicts of the team in a channel are wanted. */
export const verdictsValue = z.strictObject({ channelId: id, isWanted: z.boolean() });

/** A card as somebody called it, of the team in a channel. */
export const cardValue = z.strictObject({
  channelId: id,
  reference: z.string().max(64).transform(visibleText),
});

/** What somebody wants to try, of the team in a channel. */
export const tryValue = z.strictObject({ channelId: id, text: z.string().max(300).transform(visibleText) });

export const experimentValue = z.strictObject({ experimentId: id });

/** A body of work that is kept. */
export const bodyValue = z.strictObject({ bodyId: id });

const points = z.number().min(0).max(1e9);

/** A planning question; whether its days and amounts make sense the use case decides. */
const question = z.discriminatedUnion('about', [
  z.strictObject({ about: z.literal('odds') }),
  z.strictObject({
    about: z.literal('range'),
    startsOn: day.optional(),
    endsOn: day.optional(),
    awayDays: points.optional(),
    points: points.optional(),
  }),
  z.strictObject({
    about: z.literal('forecast'),
    backlogPoints: points.optional(),
    growthPoints: points.optional(),
    growthMostPoints: points.optional(),
    sharePercent: points.optional(),
    byDay: day.optional(),
  }),
  z.strictObject({ about: z.literal('history') }),
  z.strictObject({ about: z.literal('kept') }),
]);

/** A planning question to a team. */
export const adviceValue = z.strictObject({ teamId: id, question });

/** Answers as they were typed, on their way through a button: card, worked, left, surprise, note, and why it is blocked. */
export const answersValue = z.strictObject({
  sprintId: id,
  day,
  answers: z
    .array(
      z
        .tuple([id, typed, typed, typed, typed], typed)
        .transform(([cardId, worked, left, surprise, note, blocked]) => ({
          ...{ cardId, worked, left, surprise, note },
          ...(blocked !== undefined && { blocked }),
        })),
    )
    .min(1),
  /** The order of the latest answer about these cards when it was asked. */
  asOf: z.int().min(0).optional(),
});

/** Writes a button's value. */
export function encodeValue(
  value: z.infer<
    | typeof sprintDayValue
    | typeof cardDayValue
    | typeof sprintValue
    | typeof sprintCardValue
    | typeof placeValue
    | typeof cardValue
    | typeof tryValue
    | typeof verdictsValue
    | typeof experimentValue
    | typeof bodyValue
    | typeof adviceValue
  >,
): string {
  return JSON.stringify(value);
}

/** Writes answers as a button's value, or gives undefined when they are too long for one. */
export function encodeAnswers({
  sprintId,
  day,
  answers,
  asOf,
}: z.infer<typeof answersValue>): string | undefined {
  const rows = answers.map(({ cardId, worked, left, surprise, note, blocked }) => [
    ...[cardId, worked, left, surprise, note],
    ...(blocked ? [blocked] : []),
  ]);
  const value = JSON.stringify({ sprintId, day, answers: rows, asOf });
  return value.length <= BUTTON_VALUE_MAX_LENGTH ? value : undefined;
}

/** Reads a button's value or a form's context; undefined when it is not what the schema says. */
export function decodeValue<T>(schema: z.ZodType<T>, value: string | undefined): T | undefined {
  try {
    const parsed = schema.safeParse(JSON.parse(value ?? ''));
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}

/** A button or form holds something that this version of the bot can't read: it is old, or was altered. */
export class StaleControl extends Error {
  override readonly name = 'StaleControl';
  readonly code = 'stale-control';
}
