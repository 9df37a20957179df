/** The picture of surprise odds by size. Its words for those who cannot see it: odds-alt-text. */
import type { OddsAdvice } from '../app/advice/advice.ts';
import { oddsChart } from './odds-option.ts';
import { renderPng } from './render-png.ts';

/** A PNG 1600 pixels wide, the higher the more sizes there are. The same odds always give the same bytes. */
export async function oddsPng(advice: OddsAdvice): Promise<Uint8Array> {
  const { option, size } = oddsChart(advice);
  return renderPng(option, size);
}
