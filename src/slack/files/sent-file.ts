/** A file that somebody gave with a form, as far as the bot reads what the platform says of it. */
import { z } from 'zod';
import { visibleText } from '../../app/visible-text.ts';

export interface SentFile {
  /** The field that it was given in. */
  readonly field: string;
  readonly id: string;
  readonly name: string;
  readonly sizeBytes: number;
  /** Address that only those who may read the file can read; undefined when the platform names none. */
  readonly url: string | undefined;
}

const stated = z.looseObject({
  id: z
    .string()
    .max(255)
    .regex(/^[\x21-\x7e]+$/),
  name: z.string().max(1_000).nullish(),
  size: z.number().nonnegative().nullish(),
  url_private_download: z.string().max(3_000).nullish(),
});

/** @returns undefined when this is no file */
export function sentFile(field: string, value: unknown): SentFile | undefined {
  const parsed = stated.safeParse(value);
  if (!parsed.success) return undefined;
  const { id, name, size, url_private_download: url } = parsed.data;
  return {
    field,
    id,
    name:
      visibleText(name ?? '')
        .replace(/\s+/g, ' ')
        .trim() || 'file',
    sizeBytes: size ?? 0,
    url: url || undefined,
  };
}
