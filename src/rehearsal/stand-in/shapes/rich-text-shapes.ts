/**
 * Rich text: formatted text as a tree. Pure: no state of the workspace.
 * Shape from docs.slack.dev/reference/block-kit/blocks/rich-text-block.
 */
import { z } from 'zod';
import { idShape } from './text-shapes.ts';

const flag = z.boolean().optional();
const style = z
  .strictObject({ bold: flag, italic: flag, strike: flag, code: flag, underline: flag })
  .optional();
const border = z.union([z.literal(0), z.literal(1)]).optional();

const text = z.strictObject({ type: z.literal('text'), text: z.string().min(1), style });
const link = z.strictObject({
  type: z.literal('link'),
  url: z.string().min(1),
  text: z.string().optional(),
  unsafe: flag,
  style,
});
const leaf = z.discriminatedUnion('type', [
  text,
  link,
  z.strictObject({ type: z.literal('user'), user_id: z.string().min(1), style }),
  z.strictObject({ type: z.literal('channel'), channel_id: z.string().min(1), style }),
  z.strictObject({ type: z.literal('usergroup'), usergroup_id: z.string().min(1), style }),
  z.strictObject({
    type: z.literal('emoji'),
    name: z.string().min(1),
    unicode: z.string().optional(),
    style,
  }),
  z.strictObject({ type: z.literal('broadcast'), range: z.enum(['here', 'channel', 'everyone']), style }),
  z.strictObject({
    type: z.literal('date'),
    timestamp: z.int(),
    format: z.string().min(1),
    url: z.string().optional(),
    fallback: z.string().optional(),
    style,
  }),
]);

const section = z.strictObject({ type: z.literal('rich_text_section'), elements: z.array(leaf) });
const list = z.strictObject({
  type: z.literal('rich_text_list'),
  style: z.enum(['bullet', 'ordered']),
  elements: z.array(section),
  indent: z.int().min(0).max(8).optional(),
  offset: z.int().min(0).optional(),
  border,
});
const quote = z.strictObject({ type: z.literal('rich_text_quote'), elements: z.array(leaf), border });
const preformatted = z.strictObject({
  type: z.literal('rich_text_preformatted'),
  elements: z.array(z.discriminatedUnion('type', [text, link])),
  border,
});

export const richTextBlock = z.strictObject({
  type: z.literal('rich_text'),
  block_id: idShape.optional(),
  elements: z.array(z.discriminatedUnion('type', [section, list, quote, preformatted])).min(1),
});
