/** The picture of the commitment range. Its words for those who cannot see it: range-alt-text. */
import type { RangeAdvice } from '../app/advice/advice.ts';
import { rangeSize } from './range-layout.ts';
import { rangeOption } from './range-option.ts';
import { renderPng } from './render-png.ts';

/** A PNG of 1600 by 1000 pixels. The same range always gives the same bytes. */
export async function rangePng(advice: RangeAdvice): Promise<Uint8Array> {
  return renderPng(rangeOption(advice), rangeSize);
}
