/**
 * A trial of the real platform, for a developer sandbox: `npm run trial`. Some fifty calls; each is printed with what
 * the documents promise and what came. Prints no token, name or id. Exits with 1 when something differs, with 2 when
 * the settings don’t do.
 */
import { setTimeout as wait } from 'node:timers/promises';
import { createCanvas } from '@napi-rs/canvas';
import { App, LogLevel } from '@slack/bolt';
import { WebClient } from '@slack/web-api';
import { allSteps } from './all-steps.ts';
import { pressesOf } from './presses.ts';
import { printedResult, runSteps, type TrialWorld } from './trial-step.ts';

const USAGE = `Set, for a sandbox workspace that nobody works in:
  LOADLINE_BOT_TOKEN              the bot’s token (xoxb-…)
  LOADLINE_TRIAL_CHANNEL          id of a public channel that the bot is in
  LOADLINE_TRIAL_PERSON           your own id; you must be in that channel
and, as far as there are any:
  LOADLINE_APP_TOKEN              the app’s token for socket mode (xapp-…), to hear what you press
  LOADLINE_TRIAL_OTHER_CHANNEL    id of a public channel that the bot is not in
  LOADLINE_TRIAL_PRIVATE_CHANNEL  id of a private channel that the bot is not in
  LOADLINE_TRIAL_DEACTIVATED      id of somebody deactivated`;

/** Readable at the size in which a message shows it. */
function drawPicture(): Uint8Array {
  const canvas = createCanvas(480, 120);
  const context = canvas.getContext('2d');
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, 480, 120);
  context.fillStyle = '#1b1b1b';
  context.font = '32px sans-serif';
  context.fillText('A trial of pictures', 40, 70);
  return canvas.toBuffer('image/png');
}

async function listen(token: string, appToken: string | undefined) {
  if (appToken === undefined) return undefined;
  const app = new App({ token, appToken, socketMode: true, logLevel: LogLevel.ERROR });
  const presses = pressesOf(app);
  await app.start();
  return { presses, stop: () => app.stop() };
}

const {
  LOADLINE_BOT_TOKEN: token,
  LOADLINE_APP_TOKEN: appToken,
  LOADLINE_TRIAL_CHANNEL: channelId,
  LOADLINE_TRIAL_PERSON: personId,
  LOADLINE_TRIAL_OTHER_CHANNEL: otherChannelId,
  LOADLINE_TRIAL_PRIVATE_CHANNEL: privateChannelId,
  LOADLINE_TRIAL_DEACTIVATED: deactivatedId,
} = process.env;

if (!token || !channelId || !personId) {
  console.error(USAGE);
  process.exitCode = 2;
} else {
  const ears = await listen(token, appToken || undefined);
  const world: TrialWorld = {
    // The client waits by itself when it is told to slow down.
    client: new WebClient(token, { logLevel: LogLevel.ERROR, retryConfig: { retries: 3 } }),
    stranger: new WebClient('xoxb-nobody', { logLevel: LogLevel.ERROR, retryConfig: { retries: 0 } }),
    channelId,
    personId,
    otherChannelId: otherChannelId || undefined,
    privateChannelId: privateChannelId || undefined,
    deactivatedId: deactivatedId || undefined,
    presses: ears?.presses,
    picture: drawPicture(),
    wait,
    posted: [],
    pictureId: undefined,
  };
  const counts = new Map<string, number>();
  let number = 0;
  for await (const result of runSteps(allSteps(world))) {
    number += 1;
    console.log(printedResult(result, number));
    counts.set(result.verdict, (counts.get(result.verdict) ?? 0) + 1);
  }
  console.log(
    `\n${number} calls: ${[...counts].map(([verdict, count]) => `${count} ${verdict}`).join(', ')}`,
  );
  await ears?.stop();
  process.exitCode = counts.has('DIFFERS') ? 1 : 0;
}
