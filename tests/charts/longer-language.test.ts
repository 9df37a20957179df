/** Every chart where words are 40% longer: no text lies on another, and none leaves the picture. */
import { afterAll, beforeAll, describe, test } from 'vitest';
import { speak } from '../../src/words/say.ts';
import { pseudoLanguage } from '../words/pseudo-language.ts';
import { type ChartExample, everyChart } from './every-chart.ts';
import { expectLegible, lookingAt } from './looking-at.ts';

beforeAll(() => speak(pseudoLanguage('de')));
afterAll(() => speak(undefined));

describe.each([
  ['as long as they may be', 'W'.repeat(80)],
  ['as they usually are', 'Harbour team of the north quay'],
])('with names %s', (_, name) => {
  const kinds = ['burndown', 'odds', 'range', 'forecast', 'history', 'joint', 'kept'];
  test.each(kinds)('the picture of %s is legible', async (kind) => {
    const charts = everyChart(name).filter((chart: ChartExample) => chart.name.startsWith(`${kind} `));
    for (const { picture } of charts) await lookingAt(picture, expectLegible);
  });
});
