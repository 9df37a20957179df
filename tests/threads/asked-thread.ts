/** A thread for tests: does as it is asked, sums or harm. */
import { answering } from '../../src/threads/answering.ts';

type Asked =
  | { readonly double: number }
  | { readonly sum: Uint8Array }
  | { readonly fail: string }
  | { readonly forever: true }
  | { readonly hoard: true };

answering((asked: Asked) => {
  if ('double' in asked) return 2 * asked.double;
  if ('sum' in asked) return asked.sum.reduce((sum, byte) => sum + byte, 0);
  if ('fail' in asked) throw new Error(asked.fail);
  const kept: number[][] = [];
  for (;;) if ('hoard' in asked) kept.push(Array.from({ length: 10_000 }, (_, i) => i + 0.5));
});
