/** `npm run chaos -- --seconds N --seed S`: see DEVELOPERS.md. Ends with code 1 when anything was found. */
import { parseArgs } from 'node:util';
import { removeLogs, runChaos } from './run-chaos.ts';

const HELP = 'npm run chaos -- [--seconds 60] [--seed 1] [--bots 3] [--quiet]';

function wholeNumber(name: string, text: string, from: number, to: number): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < from || value > to) {
    console.error(`--${name} must be a whole number from ${from} to ${to}.\n${HELP}`);
    process.exit(2);
  }
  return value;
}

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    bots: { type: 'string', default: '3' },
    quiet: { type: 'boolean', default: false },
  },
});
const seconds = wholeNumber('seconds', values.seconds, 5, 86_400);
const seed = wholeNumber('seed', values.seed, 0, 2 ** 31 - 1);
const bots = wholeNumber('bots', values.bots, 1, 8);

let killNow = (): void => undefined;
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(130));
process.once('exit', () => killNow());

const beganMs = performance.now();
const say = (line: string): void => {
  if (!values.quiet)
    console.log(`${((performance.now() - beganMs) / 1_000).toFixed(1).padStart(6)} s  ${line}`);
};
console.log(`Chaos: ${seconds} s, seed ${seed}, ${bots} bots.`);
const report = await runChaos({
  seed,
  seconds,
  bots,
  say,
  onKill: (kill) => {
    killNow = kill;
  },
});
for (const [what, count] of Object.entries(report.counts))
  console.log(`${String(count).padStart(6)}  ${what}`);
if (report.findings.length === 0) {
  console.log(`Nothing found (${seconds} s, seed ${seed}, ${bots} bots).`);
  await removeLogs(report);
  process.exit(0);
}
console.log(
  `Found ${report.findings.length} (${seconds} s, seed ${seed}, ${bots} bots; logs in ${report.folder}):`,
);
for (const { rule, what } of report.findings) console.log(`- ${rule}: ${what}`);
process.exit(1);
