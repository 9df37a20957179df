/**
 * Inputs that may only be in an input block: those that are typed (text, numbers, addresses), and files.
 * Limits come from docs.slack.dev/reference/block-kit/block-elements. Pure: no state of the workspace.
 */
import { z } from 'zod';
import { chosenInputs, inputBase } from './element-shapes.ts';
import { idShape } from './text-shapes.ts';

const dispatchable = {
  dispatch_action_config: z
    .strictObject({
      trigger_actions_on: z
        .array(z.enum(['on_enter_pressed', 'on_character_entered']))
        .min(1)
        .optional(),
    })
    .optional(),
};

const plainTextInput = z
  .strictObject({
    type: z.literal('plain_text_input'),
    ...inputBase,
    ...dispatchable,
    initial_value: z.string().max(3000).optional(),
    multiline: z.boolean().optional(),
    min_length: z.int().min(0).max(3000).optional(),
    max_length: z.int().min(1).max(3000).optional(),
  })
  .refine(
    (input) => (input.min_length ?? 0) <= (input.max_length ?? 3000),
    '`min_length` must not exceed `max_length`',
  );

/** Numbers travel as strings, so that no digit is lost on the way. */
const numberString = z.string().regex(/^-?\d+(\.\d+)?$/, 'must be a number in a string');

const numberInput = z
  .strictObject({
    type: z.literal('number_input'),
    ...inputBase,
    ...dispatchable,
    is_decimal_allowed: z.boolean(),
    initial_value: numberString.optional(),
    min_value: numberString.optional(),
    max_value: numberString.optional(),
  })
  .superRefine((input, context) => {
    const say = (message: string) => context.addIssue({ code: 'custom', message });
    const min = input.min_value === undefined ? Number.NEGATIVE_INFINITY : Number(input.min_value);
    const max = input.max_value === undefined ? Number.POSITIVE_INFINITY : Number(input.max_value);
    if (min > max) say('`min_value` cannot be greater than `max_value`');
    if (input.initial_value === undefined) return;
    const initial = Number(input.initial_value);
    if (initial < min || initial > max) say('`initial_value` must lie between `min_value` and `max_value`');
    if (!input.is_decimal_allowed && input.initial_value.includes('.'))
      say('`initial_value` must not be a decimal');
  });

const addressInput = <T extends string>(type: T) =>
  z.strictObject({
    type: z.literal(type),
    ...inputBase,
    ...dispatchable,
    initial_value: z.string().optional(),
  });

/** docs.slack.dev/reference/block-kit/block-elements/file-input-element; where it is allowed, `check-blocks.ts` says. */
const fileInput = z.strictObject({
  type: z.literal('file_input'),
  action_id: idShape.optional(),
  filetypes: z.array(z.string().min(1)).min(1).optional(),
  max_files: z.int().min(1).max(10).optional(),
});

/** What an input block may hold. */
export const inputElement = z.discriminatedUnion('type', [
  plainTextInput,
  numberInput,
  addressInput('url_text_input'),
  addressInput('email_text_input'),
  fileInput,
  ...chosenInputs,
]);
