import type { ApiArgs } from './api-args.ts';
import { ApiFailure } from './api-failure.ts';

export interface Page<T> {
  items: T[];
  /** Empty when this was the last page. */
  nextCursor: string;
}

/**
 * Cuts a list into the page that a call asks for. Cursors name the last item seen, so that items added in between
 * neither repeat nor skip any.
 * @throws ApiFailure `invalid_cursor`, `invalid_limit`
 */
export function pageOf<T>(
  all: readonly T[],
  idOf: (item: T) => string,
  args: ApiArgs,
  absent = 100,
): Page<T> {
  const limit = args.count('limit', absent, 1000);
  const cursor = args.text('cursor');
  let start = 0;
  if (cursor) {
    const after = Buffer.from(cursor, 'base64url')
      .toString('utf8')
      .replace(/^after:/, '');
    start = all.findIndex((item) => idOf(item) === after) + 1;
    if (start === 0) throw new ApiFailure('invalid_cursor');
  }
  const items = all.slice(start, start + limit);
  const last = items.at(-1);
  const more = start + limit < all.length && last !== undefined;
  return { items, nextCursor: more ? Buffer.from(`after:${idOf(last)}`).toString('base64url') : '' };
}
