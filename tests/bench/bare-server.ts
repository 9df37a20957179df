/** What the bare Bolt apps of the benches share: a signed door of their own, and the line that says that they run. */
import type { AddressInfo } from 'node:net';
import { App, HTTPReceiver, LogLevel } from '@slack/bolt';

const { LOADLINE_BOT_TOKEN = '', LOADLINE_SIGNING_SECRET = '', LOADLINE_API_URL } = process.env;

export function bareApp(): App {
  const receiver = new HTTPReceiver({
    signingSecret: LOADLINE_SIGNING_SECRET,
    endpoints: '/slack/events',
    port: 0,
    logLevel: LogLevel.ERROR,
  });
  return new App({
    receiver,
    authorize: async () => ({ botToken: LOADLINE_BOT_TOKEN, botId: 'B0BOT', botUserId: 'U0BOT' }),
    logLevel: LogLevel.ERROR,
    convoStore: false,
    clientOptions: { ...(LOADLINE_API_URL !== undefined && { slackApiUrl: LOADLINE_API_URL }) },
  });
}

/** @param close what has to be done before the process ends */
export async function serve(app: App, close: () => Promise<void> = async () => {}): Promise<void> {
  const server = await app.start(0);
  console.log(
    JSON.stringify({ port: (server.address() as AddressInfo).port, msg: 'The bare app is running' }),
  );
  process.once('SIGTERM', () => {
    void close().then(() => process.exit(0));
  });
}
