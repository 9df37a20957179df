import { describe, expect, test } from 'vitest';
import { charts } from '../../src/charts/charts.ts';
import { jointChart } from '../../src/charts/joint-chart.ts';
import { ALT_TEXT_MAX_LENGTH } from '../../src/words/charts/chart-text.ts';
import { decodedPng } from './decoded-png.ts';
import * as examples from './joint-examples.ts';
import { expectLegible, lookingAt } from './looking-at.ts';

const drawn = Object.entries(examples).flatMap(([name, advice]) =>
  typeof advice === 'function' || !advice.joint ? [] : [[name, advice] as const],
);

describe('the picture of a joint date', () => {
  test.each(drawn)('%s: is legible', async (_, advice) => {
    await lookingAt(jointChart(advice), expectLegible);
  });

  test('is 800 wide and opaque, names the work and no team, and its words hold the bounds', async () => {
    const { png, altText } = await charts.joint(examples.ordinaryJoint);
    expect(await decodedPng(png)).toMatchObject({ widthPx: 800, opaque: true });
    expect(altText.length).toBeLessThanOrEqual(ALT_TEXT_MAX_LENGTH);
    expect(altText).toContain('Chance that all 3 parts of “Harbour lights” are done.');
    expect(altText).not.toContain('Crew');
    await lookingAt(jointChart(examples.ordinaryJoint), ({ texts }) => {
      expect(texts.join(' ')).not.toContain('Crew');
      expect(texts.join(' ')).toContain('85% at least by');
    });
  });
});
