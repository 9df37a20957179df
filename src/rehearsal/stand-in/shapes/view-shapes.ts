/**
 * Forms (modals) and Home pages. Limits come from docs.slack.dev/reference/views.
 * Pure: no state of the workspace.
 */
import { z } from 'zod';
import { blockShape, VIEW_BLOCKS_MAX } from './block-shapes.ts';
import { plainText } from './text-shapes.ts';

/** Largest view as JSON, in bytes; the platform says 250 kB. */
export const VIEW_BYTES_MAX = 250_000;

const base = {
  blocks: z.array(blockShape).max(VIEW_BLOCKS_MAX),
  private_metadata: z.string().max(3000).optional(),
  callback_id: z.string().max(255).optional(),
  external_id: z.string().max(255).optional(),
};

const modal = z
  .strictObject({
    type: z.literal('modal'),
    ...base,
    title: plainText(24),
    submit: plainText(24).optional(),
    close: plainText(24).optional(),
    clear_on_close: z.boolean().optional(),
    notify_on_close: z.boolean().optional(),
  })
  .refine(
    (view) => view.submit !== undefined || !view.blocks.some((block) => block.type === 'input'),
    'missing required field: submit (a view with input blocks needs it)',
  );

const home = z.strictObject({ type: z.literal('home'), ...base });

export const viewShape = z.discriminatedUnion('type', [modal, home]);
