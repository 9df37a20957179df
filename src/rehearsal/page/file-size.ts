/** The size of a file in words, as people say it: `640 bytes`, `12 kB`, `1.4 MB`; steps of a thousand. */
export function fileSize(sizeBytes: number): string {
  if (sizeBytes < 1000) return sizeBytes === 1 ? '1 byte' : `${sizeBytes} bytes`;
  // Whatever would round to a thousand kilobytes is a megabyte.
  const inKilobytes = sizeBytes < 999_500;
  const size = sizeBytes / (inKilobytes ? 1000 : 1_000_000);
  const rounded = size < 9.95 ? Number(size.toFixed(1)) : Math.round(size);
  return `${rounded} ${inKilobytes ? 'kB' : 'MB'}`;
}
