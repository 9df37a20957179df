/** Sends requests to a bot as the platform does: signed, over connections that stay open. */
import { Agent, request as httpRequest } from 'node:http';
import { requestSignature } from '../../src/rehearsal/stand-in/bot-link.ts';
import { SIGNING_SECRET } from './app-process.ts';
import { WORKSPACE_ID } from './quick-platform.ts';

const agent = new Agent({ keepAlive: true, maxSockets: 500 });

/** When it was sent and when the whole answer was there, on the clock of `performance.now()`. */
export interface Exchange {
  readonly sentMs: number;
  readonly answeredMs: number;
  readonly body: string;
}

/** @throws Error when the answer is not 200 */
export function sendSigned(url: string, fields: Readonly<Record<string, string>>): Promise<Exchange> {
  const body = new URLSearchParams(fields).toString();
  const timestamp = Math.floor(Date.now() / 1000);
  const headers = {
    'content-type': 'application/x-www-form-urlencoded',
    'content-length': String(Buffer.byteLength(body)),
    'x-slack-request-timestamp': String(timestamp),
    'x-slack-signature': requestSignature(SIGNING_SECRET, timestamp, body),
  };
  return new Promise((resolve, reject) => {
    const sentMs = performance.now();
    const request = httpRequest(url, { method: 'POST', agent, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => {
        text += part;
      });
      response.once('error', reject);
      response.once('end', () => {
        if (response.statusCode === 200) resolve({ sentMs, answeredMs: performance.now(), body: text });
        else reject(new Error(`The bot answered ${response.statusCode}: ${text}`));
      });
    });
    request.on('error', reject);
    request.end(body);
  });
}

let triggers = 0;

function nextTrigger(): string {
  triggers += 1;
  return `${triggers}.${process.pid}.bench`;
}

export interface FormOfBench {
  readonly userId: string;
  readonly callbackId: string;
  readonly context: string;
  /** What was typed, by field. */
  readonly values: Readonly<Record<string, string>>;
  /** The view's own; one for each person when left out. */
  readonly viewId?: string;
  /** What was picked in a field for files. */
  readonly files?: { readonly field: string; readonly picked: readonly PickedFile[] };
}

export interface PickedFile {
  readonly id: string;
  readonly name: string;
  readonly size: number;
  readonly url_private_download: string;
}

/** The payload of a form that was sent off. docs.slack.dev/reference/interaction-payloads/view-interactions-payload */
export function submissionFields({
  userId,
  callbackId,
  context,
  values,
  viewId = `V${userId}`,
  files,
}: FormOfBench): Record<string, string> {
  const blocks = Object.keys(values).map((field) => ({
    type: 'input',
    block_id: field,
    label: { type: 'plain_text', text: field },
    element: { type: 'plain_text_input', action_id: 'value' },
  }));
  const state: Record<string, object> = Object.fromEntries(
    Object.entries(values).map(([field, value]) => [field, { value: { type: 'plain_text_input', value } }]),
  );
  if (files) state[files.field] = { value: { type: 'file_input', files: files.picked } };
  return {
    payload: JSON.stringify({
      type: 'view_submission',
      team: { id: WORKSPACE_ID, domain: 'bench' },
      user: { id: userId, name: userId.toLowerCase(), team_id: WORKSPACE_ID },
      api_app_id: 'A0BENCH',
      token: 'bench',
      trigger_id: nextTrigger(),
      view: {
        id: viewId,
        type: 'modal',
        callback_id: callbackId,
        private_metadata: context,
        hash: '1.bench',
        title: { type: 'plain_text', text: 'Bench' },
        blocks,
        state: { values: state },
      },
      response_urls: [],
      is_enterprise_install: false,
      enterprise: null,
    }),
  };
}

/** The payload of a pressed button. docs.slack.dev/reference/interaction-payloads/block_actions-payload */
export function pressFields(
  userId: string,
  channelId: string,
  actionId: string,
  responseUrl: string,
): Record<string, string> {
  return {
    payload: JSON.stringify({
      type: 'block_actions',
      team: { id: WORKSPACE_ID, domain: 'bench' },
      user: { id: userId, name: userId.toLowerCase(), team_id: WORKSPACE_ID },
      api_app_id: 'A0BENCH',
      token: 'bench',
      trigger_id: nextTrigger(),
      container: { type: 'message', message_ts: '1.0', channel_id: channelId, is_ephemeral: true },
      channel: { id: channelId, name: 'bench' },
      response_url: responseUrl,
      actions: [{ type: 'button', action_id: actionId, block_id: 'bench', action_ts: nextTrigger() }],
      is_enterprise_install: false,
      enterprise: null,
    }),
  };
}

/** docs.slack.dev/interactivity/implementing-slash-commands */
export function commandFields(
  userId: string,
  channelId: string,
  text: string,
  responseUrl: string,
): Record<string, string> {
  return {
    token: 'bench',
    team_id: WORKSPACE_ID,
    team_domain: 'bench',
    channel_id: channelId,
    channel_name: 'bench',
    user_id: userId,
    user_name: userId.toLowerCase(),
    command: '/loadline',
    text,
    api_app_id: 'A0BENCH',
    is_enterprise_install: 'false',
    response_url: responseUrl,
    trigger_id: nextTrigger(),
  };
}
