import { expect, it } from 'vitest';
import { fileSize } from '../../../src/rehearsal/page/file-size.ts';

it.each([
  [0, '0 bytes'],
  [1, '1 byte'],
  [999, '999 bytes'],
  [1_000, '1 kB'],
  [1_449, '1.4 kB'],
  [9_949, '9.9 kB'],
  [9_950, '10 kB'],
  [999_499, '999 kB'],
  [999_500, '1 MB'],
  [10_000_000, '10 MB'],
])('%i bytes are told as %s', (bytes, words) => {
  expect(fileSize(bytes)).toBe(words);
});
