/**
 * Blocks: the building stones of messages, forms and Home pages.
 * Limits come from docs.slack.dev/reference/block-kit/blocks. Pure: no state of the workspace.
 * Kinds that the platform has and a rehearsal doesn't show (video, table, cards, …) are refused as unsupported,
 * so that nothing is sent that nobody could see here.
 */
import { z } from 'zod';
import { actionsElement, imageElement, sectionAccessory } from './element-shapes.ts';
import { richTextBlock } from './rich-text-shapes.ts';
import { anyText, idShape, imageSource, mrkdwnText, oneImageSource, plainText } from './text-shapes.ts';
import { inputElement } from './typed-input-shapes.ts';

const base = { block_id: idShape.optional() };

const section = z
  .strictObject({
    type: z.literal('section'),
    ...base,
    text: anyText(3000).optional(),
    fields: z.array(anyText(2000)).min(1).max(10).optional(),
    accessory: sectionAccessory.optional(),
    expand: z.boolean().optional(),
  })
  .refine(
    (block) => block.text !== undefined || block.fields !== undefined,
    'must define `text` or `fields`',
  );

const header = z.strictObject({ type: z.literal('header'), ...base, text: plainText(150) });
const divider = z.strictObject({ type: z.literal('divider'), ...base });

const context = z.strictObject({
  type: z.literal('context'),
  ...base,
  elements: z
    .array(z.discriminatedUnion('type', [imageElement, plainText(), mrkdwnText()]))
    .min(1)
    .max(10),
});

const actions = z.strictObject({
  type: z.literal('actions'),
  ...base,
  elements: z.array(actionsElement).min(1).max(25),
});

const image = z
  .strictObject({
    type: z.literal('image'),
    ...base,
    alt_text: z.string().min(1).max(2000),
    title: plainText(2000).optional(),
    ...imageSource,
  })
  .refine(...oneImageSource);

const input = z.strictObject({
  type: z.literal('input'),
  ...base,
  label: plainText(2000),
  hint: plainText(2000).optional(),
  optional: z.boolean().optional(),
  dispatch_action: z.boolean().optional(),
  element: inputElement,
});

export const blockShape = z.discriminatedUnion('type', [
  section,
  header,
  divider,
  context,
  actions,
  image,
  input,
  richTextBlock,
]);

/** A message holds 50 blocks at most, a form or a Home page 100. */
export const MESSAGE_BLOCKS_MAX = 50;
export const VIEW_BLOCKS_MAX = 100;
