/** The picture of the history. Its words for those who cannot see it: history-alt-text. */
import type { HistoryAdvice } from '../app/advice/advice.ts';
import { historyChart } from './history-option.ts';
import { renderPng } from './render-png.ts';

/** A PNG 1600 pixels wide. The same history always gives the same bytes. */
export async function historyPng(advice: HistoryAdvice): Promise<Uint8Array> {
  const { option, size } = historyChart(advice);
  return renderPng(option, size);
}
