/**
 * Messages, forms and Home pages as the platform takes them, with its limits
 * (docs.slack.dev/reference/block-kit, docs.slack.dev/reference/views). Pure: no state of the workspace.
 * Only what Loadline sends is here. What else the platform has (menus of people and places, radio buttons, rich
 * text, pictures from the web, …) is refused as unsupported, so that nothing is sent that the rehearsal's page could
 * not show.
 */
import { z } from 'zod';

const TEXT_MAX = 3000;
const OPTION_TEXT_MAX = 75;
const OPTION_VALUE_MAX = 150;

const id = z.string().min(1).max(255);

function plainText(maxChars: number = TEXT_MAX) {
  return z.strictObject({
    type: z.literal('plain_text'),
    text: z.string().min(1).max(maxChars),
    emoji: z.boolean().optional(),
  });
}

function mrkdwnText(maxChars: number = TEXT_MAX) {
  return z.strictObject({
    type: z.literal('mrkdwn'),
    text: z.string().min(1).max(maxChars),
    verbatim: z.boolean().optional(),
  });
}

function anyText(maxChars?: number) {
  return z.discriminatedUnion('type', [plainText(maxChars), mrkdwnText(maxChars)]);
}

const confirmDialog = z.strictObject({
  title: plainText(100).optional(),
  text: anyText(300),
  confirm: plainText(30).optional(),
  deny: plainText(30).optional(),
});

const action = { action_id: id.optional() };

const button = z.strictObject({
  type: z.literal('button'),
  ...action,
  text: plainText(75),
  value: z.string().max(2000).optional(),
  style: z.enum(['primary', 'danger']).optional(),
  confirm: confirmDialog.optional(),
});

const option = z.strictObject({
  text: plainText(OPTION_TEXT_MAX),
  value: z.string().min(1).max(OPTION_VALUE_MAX),
});
type Option = z.infer<typeof option>;

function checkInitial(
  element: { options: Option[]; initial_option?: Option | undefined; initial_options?: Option[] | undefined },
  context: z.RefinementCtx,
): void {
  const chosen = [element.initial_option ?? [], element.initial_options ?? []].flat();
  const known = (one: Option) =>
    element.options.some((other) => other.value === one.value && other.text.text === one.text.text);
  if (!chosen.every(known)) {
    context.addIssue({ code: 'custom', message: 'initial options must exactly match the provided options' });
  }
}

const staticSelect = z
  .strictObject({
    type: z.literal('static_select'),
    ...action,
    options: z.array(option).min(1).max(100),
    initial_option: option.optional(),
  })
  .superRefine(checkInitial);

const multiStaticSelect = z
  .strictObject({
    type: z.literal('multi_static_select'),
    ...action,
    options: z.array(option).min(1).max(100),
    initial_options: z.array(option).min(1).max(100).optional(),
  })
  .superRefine(checkInitial);

const checkboxes = z
  .strictObject({
    type: z.literal('checkboxes'),
    ...action,
    options: z.array(option).min(1).max(10),
    initial_options: z.array(option).min(1).max(10).optional(),
  })
  .superRefine(checkInitial);

const inputElement = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('plain_text_input'),
    ...action,
    initial_value: z.string().max(3000).optional(),
    multiline: z.boolean().optional(),
    max_length: z.int().min(1).max(3000).optional(),
  }),
  staticSelect,
  multiStaticSelect,
  checkboxes,
  z.strictObject({
    type: z.literal('multi_users_select'),
    ...action,
    initial_users: z.array(z.string().min(1)).optional(),
    max_selected_items: z.int().min(1).optional(),
  }),
  z.strictObject({ type: z.literal('datepicker'), ...action, initial_date: z.iso.date().optional() }),
  z.strictObject({
    type: z.literal('timepicker'),
    ...action,
    initial_time: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time as HH:mm')
      .optional(),
  }),
  z.strictObject({
    type: z.literal('file_input'),
    ...action,
    filetypes: z.array(z.string().min(1)).min(1).optional(),
    max_files: z.int().min(1).max(10).optional(),
  }),
]);

const blockId = { block_id: id.optional() };

const displayed = [
  z
    .strictObject({
      type: z.literal('section'),
      ...blockId,
      text: anyText().optional(),
      fields: z.array(anyText(2000)).min(1).max(10).optional(),
    })
    .refine(
      (block) => block.text !== undefined || block.fields !== undefined,
      'must define `text` or `fields`',
    ),
  z.strictObject({ type: z.literal('header'), ...blockId, text: plainText(150) }),
  z.strictObject({ type: z.literal('divider'), ...blockId }),
  z.strictObject({ type: z.literal('context'), ...blockId, elements: z.array(anyText()).min(1).max(10) }),
  z.strictObject({
    type: z.literal('actions'),
    ...blockId,
    elements: z
      .array(z.discriminatedUnion('type', [button]))
      .min(1)
      .max(25),
  }),
  z.strictObject({
    type: z.literal('image'),
    ...blockId,
    alt_text: z.string().min(1).max(2000),
    slack_file: z.strictObject({ id: z.string().min(1) }),
  }),
] as const;

const inputBlock = z.strictObject({
  type: z.literal('input'),
  ...blockId,
  label: plainText(2000),
  hint: plainText(2000).optional(),
  optional: z.boolean().optional(),
  element: inputElement,
});

const displayedBlock = z.discriminatedUnion('type', [...displayed]);
const formBlock = z.discriminatedUnion('type', [...displayed, inputBlock]);

export const messageShape = z.array(displayedBlock).max(50);

const view = {
  private_metadata: z.string().max(3000).optional(),
  callback_id: z.string().max(255).optional(),
  external_id: z.string().max(255).optional(),
};

export const viewShape = z.discriminatedUnion('type', [
  z
    .strictObject({
      type: z.literal('modal'),
      ...view,
      blocks: z.array(formBlock).max(100),
      title: plainText(24),
      submit: plainText(24).optional(),
      close: plainText(24).optional(),
      clear_on_close: z.boolean().optional(),
      notify_on_close: z.boolean().optional(),
    })
    .refine(
      (form) => form.submit !== undefined || !form.blocks.some((block) => block.type === 'input'),
      'missing required field: submit (a view with input blocks needs it)',
    ),
  z.strictObject({ type: z.literal('home'), ...view, blocks: z.array(displayedBlock).max(100) }),
]);
