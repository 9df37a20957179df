import type { ImageBlock } from '@slack/types';
import { visibleText } from '../../app/visible-text.ts';
import { shortened } from '../../words/typed-text.ts';

/** A chart that has been uploaded to the platform. */
export interface ChartImage {
  readonly fileId: string;
  /** What the chart shows, numbers included. */
  readonly altText: string;
}

const ALT_TEXT_MAX_LENGTH = 2_000;

/** The block that shows the chart; none when there is no chart. */
export function chartBlocks(chart: ChartImage | undefined): ImageBlock[] {
  if (!chart) return [];
  return [
    {
      type: 'image',
      slack_file: { id: chart.fileId },
      alt_text: shortened(visibleText(chart.altText), ALT_TEXT_MAX_LENGTH),
    },
  ];
}
