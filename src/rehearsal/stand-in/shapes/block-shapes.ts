/**
 * Messages, forms and Home pages as the platform takes them, with its limits
 * (docs.slack.dev/reference/block-kit, docs.slack.dev/reference/views). Pure: no state of the workspace.
 * Kinds that Loadline never sends (rich text, video, tables, pickers of conversations, inputs for numbers and addresses,
 * groups of options) are refused as unsupported, so that nothing is sent that the rehearsal’s page could not name.
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

/** Only http and https can be opened by a client. */
const webUrl = z
  .string()
  .min(1)
  .max(3000)
  .refine((value) => /^https?:\/\/[^\s]+$/i.test(value), 'must be a valid url');

const image = {
  type: z.literal('image'),
  alt_text: z.string().min(1).max(2000),
  image_url: webUrl.optional(),
  slack_file: z.strictObject({ id: z.string().min(1) }).optional(),
};
const ONE_SOURCE = [
  (given: { image_url?: unknown; slack_file?: unknown }) =>
    (given.image_url === undefined) !== (given.slack_file === undefined),
  'must define exactly one of `image_url` or `slack_file`',
] as const;

const smallImage = z.strictObject(image).refine(...ONE_SOURCE);

const action = { action_id: id.optional() };
const menu = { ...action, placeholder: plainText(150).optional() };

const button = z.strictObject({
  type: z.literal('button'),
  ...action,
  text: plainText(75),
  value: z.string().max(2000).optional(),
  url: webUrl.optional(),
  style: z.enum(['primary', 'danger']).optional(),
  confirm: confirmDialog.optional(),
});

const option = z.strictObject({
  text: plainText(OPTION_TEXT_MAX),
  value: z.string().min(1).max(OPTION_VALUE_MAX),
  description: plainText(OPTION_TEXT_MAX).optional(),
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
    ...menu,
    options: z.array(option).min(1).max(100),
    initial_option: option.optional(),
  })
  .superRefine(checkInitial);

const multiStaticSelect = z
  .strictObject({
    type: z.literal('multi_static_select'),
    ...menu,
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

const radioButtons = z
  .strictObject({
    type: z.literal('radio_buttons'),
    ...action,
    options: z.array(option).min(1).max(10),
    initial_option: option.optional(),
  })
  .superRefine(checkInitial);

const overflow = z.strictObject({
  type: z.literal('overflow'),
  ...action,
  options: z.array(option).min(1).max(5),
});

/** Menus and pickers, in forms and beside buttons. */
const menus = [
  staticSelect,
  multiStaticSelect,
  checkboxes,
  radioButtons,
  z.strictObject({
    type: z.literal('multi_users_select'),
    ...menu,
    initial_users: z.array(z.string().min(1)).optional(),
    max_selected_items: z.int().min(1).optional(),
  }),
  z.strictObject({ type: z.literal('datepicker'), ...menu, initial_date: z.iso.date().optional() }),
  z.strictObject({
    type: z.literal('timepicker'),
    ...menu,
    initial_time: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time as HH:mm')
      .optional(),
  }),
] as const;

const inputElement = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('plain_text_input'),
    ...menu,
    initial_value: z.string().max(3000).optional(),
    multiline: z.boolean().optional(),
    max_length: z.int().min(1).max(3000).optional(),
  }),
  ...menus,
  z.strictObject({
    type: z.literal('file_input'),
    ...action,
    filetypes: z.array(z.string().min(1)).min(1).optional(),
    max_files: z.int().min(1).max(10).optional(),
  }),
]);

const blockId = { block_id: id.optional() };

const block = z.discriminatedUnion('type', [
  z
    .strictObject({
      type: z.literal('section'),
      ...blockId,
      text: anyText().optional(),
      fields: z.array(anyText(2000)).min(1).max(10).optional(),
      accessory: z.discriminatedUnion('type', [button, overflow, smallImage, ...menus]).optional(),
    })
    .refine(
      (section) => section.text !== undefined || section.fields !== undefined,
      'must define `text` or `fields`',
    ),
  z.strictObject({ type: z.literal('header'), ...blockId, text: plainText(150) }),
  z.strictObject({ type: z.literal('divider'), ...blockId }),
  z.strictObject({
    type: z.literal('context'),
    ...blockId,
    elements: z
      .array(z.discriminatedUnion('type', [smallImage, plainText(), mrkdwnText()]))
      .min(1)
      .max(10),
  }),
  z.strictObject({
    type: z.literal('actions'),
    ...blockId,
    elements: z
      .array(z.discriminatedUnion('type', [button, overflow, ...menus]))
      .min(1)
      .max(25),
  }),
  z.strictObject({ ...image, ...blockId, title: plainText(2000).optional() }).refine(...ONE_SOURCE),
  z.strictObject({
    type: z.literal('input'),
    ...blockId,
    label: plainText(2000),
    hint: plainText(2000).optional(),
    optional: z.boolean().optional(),
    dispatch_action: z.boolean().optional(),
    element: inputElement,
  }),
]);

export const messageShape = z.array(block).max(50);

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
      blocks: z.array(block).max(100),
      title: plainText(24),
      submit: plainText(24).optional(),
      close: plainText(24).optional(),
      clear_on_close: z.boolean().optional(),
      notify_on_close: z.boolean().optional(),
    })
    .refine(
      (form) => form.submit !== undefined || !form.blocks.some((one) => one.type === 'input'),
      'missing required field: submit (a view with input blocks needs it)',
    ),
  z.strictObject({ type: z.literal('home'), ...view, blocks: z.array(block).max(100) }),
]);
