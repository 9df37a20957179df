/** The burndown picture for the status and the verdict. Its words for those who cannot see it: burndown-alt-text. */
import type { Burndown } from '../sprint/burndown.ts';
import { burndownSize } from './burndown-layout.ts';
import { burndownOption } from './burndown-option.ts';
import { renderPng } from './render-png.ts';

/**
 * A PNG of 1600 by 900 pixels. The same burndown always gives the same bytes.
 * Throws a `RangeError` when a day is no ISO date.
 */
export async function burndownPng(burndown: Burndown): Promise<Uint8Array> {
  return renderPng(burndownOption(burndown), burndownSize);
}
