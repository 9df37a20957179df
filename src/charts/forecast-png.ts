/** The picture of the release forecast. Its words for those who cannot see it: forecast-alt-text. */
import type { ForecastAdvice } from '../app/advice/advice.ts';
import { forecastSize } from './forecast-layout.ts';
import { forecastOption } from './forecast-option.ts';
import { renderPng } from './render-png.ts';

/** A PNG of 1600 by 900 pixels. The same forecast always gives the same bytes. */
export async function forecastPng(advice: ForecastAdvice): Promise<Uint8Array> {
  return renderPng(forecastOption(advice), forecastSize);
}
