/** Serves the stand-in alone, without the bot, for anybody to hold against the platform's documentation. */
import { randomBytes } from 'node:crypto';
import { type StandIn, startStandIn } from './stand-in/stand-in.ts';

/** What a caller must know to make plain HTTP calls; `rehearse --stand-in-only` prints it. */
export interface StandInFacts {
  /** Methods follow directly: `${apiUrl}chat.postMessage`. */
  readonly apiUrl: string;
  readonly botToken: string;
  readonly channelId: string;
  /** The bot is not a member. */
  readonly privateChannelId: string;
  readonly memberId: string;
  readonly deactivatedId: string;
}

const CHANNEL_ID = 'C0HARBOUR01';
const PRIVATE_CHANNEL_ID = 'C0CABIN0001';
const MEMBER_ID = 'U0INES00001';
const DEACTIVATED_ID = 'U0ODD000001';

/** @param port a free one when left out */
export async function openStandIn(port = 0): Promise<{ standIn: StandIn; facts: StandInFacts }> {
  const botToken = `xoxb-${randomBytes(12).toString('hex')}`;
  const standIn = await startStandIn({
    signingSecret: randomBytes(16).toString('hex'),
    botToken,
    users: [
      { id: MEMBER_ID, name: 'ines', realName: 'Ines', timeZone: 'Europe/Lisbon' },
      { id: DEACTIVATED_ID, name: 'odd', realName: 'Odd', timeZone: 'Europe/Oslo', deleted: true },
    ],
    channels: [
      { id: CHANNEL_ID, name: 'harbour', memberIds: [MEMBER_ID] },
      { id: PRIVATE_CHANNEL_ID, name: 'cabin', memberIds: [MEMBER_ID], isPrivate: true, botIsMember: false },
    ],
    now: () => new Date(),
    fileReadyAfterMs: 1_000,
    port,
  });
  const facts = {
    apiUrl: `${standIn.url}/api/`,
    botToken,
    channelId: CHANNEL_ID,
    privateChannelId: PRIVATE_CHANNEL_ID,
    memberId: MEMBER_ID,
    deactivatedId: DEACTIVATED_ID,
  };
  return { standIn, facts };
}
