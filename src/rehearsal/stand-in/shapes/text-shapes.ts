/**
 * Text objects and the small objects made of them, with the platform's limits.
 * Limits come from docs.slack.dev/reference/block-kit/composition-objects. Pure: no state of the workspace.
 */
import { z } from 'zod';

/** Longest text of any text object, in characters. */
export const TEXT_MAX = 3000;
const ID_MAX = 255;
const OPTION_MAX = 75;

export const idShape = z.string().min(1).max(ID_MAX);

export function plainText(maxChars: number = TEXT_MAX) {
  return z.strictObject({
    type: z.literal('plain_text'),
    text: z.string().min(1).max(maxChars),
    emoji: z.boolean().optional(),
  });
}

export function mrkdwnText(maxChars: number = TEXT_MAX) {
  return z.strictObject({
    type: z.literal('mrkdwn'),
    text: z.string().min(1).max(maxChars),
    verbatim: z.boolean().optional(),
  });
}

export function anyText(maxChars: number = TEXT_MAX) {
  return z.discriminatedUnion('type', [plainText(maxChars), mrkdwnText(maxChars)]);
}

/** A web address; only http and https can be opened by a client. */
export function webUrl(maxChars = 3000) {
  return z
    .string()
    .min(1)
    .max(maxChars)
    .refine((value) => /^https?:\/\/[^\s]+$/i.test(value), 'must be a valid url');
}

const optionFields = {
  value: z.string().min(1).max(OPTION_MAX),
  description: plainText(OPTION_MAX).optional(),
};

/** An option of a select menu: plain text only. */
export const plainOption = z.strictObject({ text: plainText(OPTION_MAX), ...optionFields });

/** An option of radio buttons and checkboxes: may be formatted. */
export const richOption = z.strictObject({
  text: anyText(OPTION_MAX),
  value: optionFields.value,
  description: anyText(OPTION_MAX).optional(),
});

/** An option of an overflow menu: may open a link. */
export const overflowOption = z.strictObject({
  text: plainText(OPTION_MAX),
  ...optionFields,
  url: webUrl().optional(),
});

export const optionGroup = z.strictObject({
  label: plainText(OPTION_MAX),
  options: z.array(plainOption).min(1).max(100),
});

export const confirmDialog = z.strictObject({
  title: plainText(100).optional(),
  text: anyText(300),
  confirm: plainText(30).optional(),
  deny: plainText(30).optional(),
  style: z.enum(['primary', 'danger']).optional(),
});

export const placeholder = plainText(150);

/** Exactly one way to say where a picture comes from; both and none are refused. */
export const imageSource = {
  image_url: webUrl().optional(),
  slack_file: z
    .strictObject({ id: z.string().min(1).optional(), url: webUrl().optional() })
    .refine(
      (file) => (file.id === undefined) !== (file.url === undefined),
      'must define exactly one of `id` or `url`',
    )
    .optional(),
};

export const oneImageSource = [
  (image: { image_url?: unknown; slack_file?: unknown }) =>
    (image.image_url === undefined) !== (image.slack_file === undefined),
  'must define exactly one of `image_url` or `slack_file`',
] as const;
