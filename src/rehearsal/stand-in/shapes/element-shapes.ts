/**
 * Interactive elements and the rules between their own fields.
 * Limits come from docs.slack.dev/reference/block-kit/block-elements. Pure: no state of the workspace.
 */
import { z } from 'zod';
import {
  confirmDialog,
  idShape,
  imageSource,
  oneImageSource,
  optionGroup,
  overflowOption,
  placeholder,
  plainOption,
  plainText,
  richOption,
  webUrl,
} from './text-shapes.ts';

const action = { action_id: idShape.optional() };
const confirmable = { confirm: confirmDialog.optional() };
const focusable = { focus_on_load: z.boolean().optional() };
const placeholdable = { placeholder: placeholder.optional() };
const menu = { ...action, ...confirmable, ...focusable, ...placeholdable };
const limited = { max_selected_items: z.int().min(1).optional() };
const choices = {
  options: z.array(plainOption).min(1).max(100).optional(),
  option_groups: z.array(optionGroup).min(1).max(100).optional(),
};

const button = z.strictObject({
  type: z.literal('button'),
  ...action,
  ...confirmable,
  text: plainText(75),
  value: z.string().max(2000).optional(),
  url: webUrl().optional(),
  style: z.enum(['primary', 'danger']).optional(),
  accessibility_label: z.string().min(1).max(75).optional(),
});

/** `options` or `option_groups`, and a first choice that is one of them. */
function checkChoices(menuElement: JsonMenu, context: z.RefinementCtx): void {
  if ((menuElement.options === undefined) === (menuElement.option_groups === undefined)) {
    context.addIssue({ code: 'custom', message: 'must define exactly one of `options` or `option_groups`' });
    return;
  }
  const all = menuElement.options ?? menuElement.option_groups?.flatMap((group) => group.options) ?? [];
  checkInitial(menuElement, all, context);
}

interface JsonOption {
  value: string;
  text: { text: string };
}
interface JsonMenu {
  options?: JsonOption[] | undefined;
  option_groups?: { options: JsonOption[] }[] | undefined;
  initial_option?: JsonOption | undefined;
  initial_options?: JsonOption[] | undefined;
}

function checkInitial(element: JsonMenu, all: JsonOption[], context: z.RefinementCtx): void {
  const chosen = [
    ...(element.initial_options ?? []),
    ...(element.initial_option ? [element.initial_option] : []),
  ];
  const known = (one: JsonOption) => all.some((o) => o.value === one.value && o.text.text === one.text.text);
  if (!chosen.every(known)) {
    context.addIssue({ code: 'custom', message: 'initial options must exactly match the provided options' });
  }
}

const staticSelect = z
  .strictObject({
    type: z.literal('static_select'),
    ...menu,
    ...choices,
    initial_option: plainOption.optional(),
  })
  .superRefine(checkChoices);
const multiStaticSelect = z
  .strictObject({
    type: z.literal('multi_static_select'),
    ...menu,
    ...limited,
    ...choices,
    initial_options: z.array(plainOption).min(1).max(100).optional(),
  })
  .superRefine(checkChoices);

const conversationFilter = z
  .strictObject({
    include: z
      .array(z.enum(['im', 'mpim', 'private', 'public']))
      .min(1)
      .optional(),
    exclude_external_shared_channels: z.boolean().optional(),
    exclude_bot_users: z.boolean().optional(),
  })
  .refine((filter) => Object.keys(filter).length > 0, 'must define at least one filter');
const conversationMenu = {
  ...menu,
  default_to_current_conversation: z.boolean().optional(),
  filter: conversationFilter.optional(),
};
const respondable = { response_url_enabled: z.boolean().optional() };
const ids = z.array(z.string().min(1)).optional();

const pickers = [
  z.strictObject({ type: z.literal('users_select'), ...menu, initial_user: z.string().optional() }),
  z.strictObject({ type: z.literal('multi_users_select'), ...menu, ...limited, initial_users: ids }),
  z.strictObject({
    type: z.literal('conversations_select'),
    ...conversationMenu,
    ...respondable,
    initial_conversation: z.string().optional(),
  }),
  z.strictObject({
    type: z.literal('multi_conversations_select'),
    ...conversationMenu,
    ...limited,
    initial_conversations: ids,
  }),
  z.strictObject({
    type: z.literal('channels_select'),
    ...menu,
    ...respondable,
    initial_channel: z.string().optional(),
  }),
  z.strictObject({ type: z.literal('multi_channels_select'), ...menu, ...limited, initial_channels: ids }),
] as const;

const overflow = z.strictObject({
  type: z.literal('overflow'),
  ...action,
  ...confirmable,
  options: z.array(overflowOption).min(1).max(5),
});

const radioButtons = z
  .strictObject({
    type: z.literal('radio_buttons'),
    ...action,
    ...confirmable,
    ...focusable,
    options: z.array(richOption).min(1).max(10),
    initial_option: richOption.optional(),
  })
  .superRefine((element, context) => checkInitial(element, element.options, context));
const checkboxes = z
  .strictObject({
    type: z.literal('checkboxes'),
    ...action,
    ...confirmable,
    ...focusable,
    options: z.array(richOption).min(1).max(10),
    initial_options: z.array(richOption).min(1).max(10).optional(),
  })
  .superRefine((element, context) => checkInitial(element, element.options, context));

const dates = [
  z.strictObject({ type: z.literal('datepicker'), ...menu, initial_date: z.iso.date().optional() }),
  z.strictObject({
    type: z.literal('timepicker'),
    ...menu,
    initial_time: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time as HH:mm')
      .optional(),
    timezone: z.string().optional(),
  }),
  z.strictObject({
    type: z.literal('datetimepicker'),
    ...action,
    ...confirmable,
    ...focusable,
    initial_date_time: z.int().min(1_000_000_000).max(9_999_999_999).optional(),
  }),
] as const;

/** A small picture beside text. */
export const imageElement = z
  .strictObject({ type: z.literal('image'), alt_text: z.string().min(1).max(2000), ...imageSource })
  .refine(...oneImageSource);

const common = [staticSelect, multiStaticSelect, ...pickers, radioButtons, checkboxes, ...dates] as const;

/** What an actions block may hold. */
export const actionsElement = z.discriminatedUnion('type', [button, overflow, ...common]);
/** What may be beside the text of a section. */
export const sectionAccessory = z.discriminatedUnion('type', [button, overflow, imageElement, ...common]);
/** The menus and pickers that an input block may hold besides the typed ones. */
export const chosenInputs = common;
export const inputBase = { ...action, ...focusable, ...placeholdable };
