/** A short run of `npm run chaos`, with all that it brings: processes that die, a real database that goes away. */
import { expect, it } from 'vitest';
import { removeLogs, runChaos } from './run-chaos.ts';

/** Setting up, the run itself, and settling, which waits for posts whose process died. */
const LIMIT_MS = 420_000;

it('bots that are killed, cut off and turned away ask each once and lose no answer', {
  timeout: LIMIT_MS,
}, async () => {
  const said: string[] = [];
  const report = await runChaos({ seed: 1, seconds: 25, bots: 2, say: (line) => void said.push(line) });
  expect(report.findings, `${said.join('\n')}\nLogs: ${report.folder}`).toEqual([]);
  expect(report.counts['prompts asked']).toBeGreaterThan(0);
  expect(report.counts['acts acknowledged']).toBeGreaterThan(0);
  await removeLogs(report);
});
