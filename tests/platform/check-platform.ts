/**
 * Holds bot and stand-in against samples of the platform's shapes: `npm run check:platform -- FOLDER`. Exits with 1 when
 * something differs, with 2 when there are no samples.
 */
import { checkManifests } from './check-manifests.ts';
import { checkStandIn } from './check-stand-in.ts';
import { CheckedBot } from './checked-bot.ts';
import type { Finding } from './finding.ts';
import { readResponses } from './read-responses.ts';
import { readSamples, type Samples, SamplesError } from './read-samples.ts';
import { sendEvents } from './send-events.ts';
import { sendInteractions } from './send-interactions.ts';

async function allFindings(samples: Samples): Promise<Record<string, readonly Finding[]>> {
  const bot = await CheckedBot.start();
  try {
    return {
      'Events, sent to the bot': await sendEvents(bot, samples.events),
      'Interactions, sent to the bot': await sendInteractions(bot, samples.interactions),
      'Responses, read by the bot’s client': await readResponses(samples.responses),
      'What the stand-in sends': await checkStandIn(samples),
      'App manifests': checkManifests(samples.manifestSchema),
    };
  } finally {
    await bot.stop();
  }
}

function print(title: string, findings: readonly Finding[]): void {
  console.log(`\n${title}`);
  const width = Math.max(...findings.map(({ what }) => what.length));
  for (const { what, seen, problems } of findings) {
    console.log(`  ${what.padEnd(width)}  ${problems.length === 0 ? seen : 'DIFFERS'}`);
    for (const problem of problems) console.log(`    - ${problem}`);
  }
}

async function check(folder: string | undefined): Promise<number> {
  if (folder === undefined) {
    throw new SamplesError('Name the folder of the samples: npm run check:platform -- FOLDER');
  }
  const sections = await allFindings(readSamples(folder));
  for (const [title, findings] of Object.entries(sections)) print(title, findings);
  const differing = Object.values(sections)
    .flat()
    .filter(({ problems }) => problems.length > 0).length;
  const total = Object.values(sections).flat().length;
  console.log(
    differing === 0 ? `\nAll ${total} agree with the platform.` : `\n${differing} of ${total} differ.`,
  );
  return differing === 0 ? 0 : 1;
}

try {
  process.exitCode = await check(process.argv[2]);
} catch (error) {
  if (!(error instanceof SamplesError)) throw error;
  console.error(error.message);
  process.exitCode = 2;
}
