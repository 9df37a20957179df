/**
 * Signs requests to the app the way the platform does.
 * Scheme: docs.slack.dev/authentication/verifying-requests-from-slack.
 */
import { createHmac } from 'node:crypto';

/**
 * @param timestampSeconds whole seconds since 1970
 * @param body the raw body, byte for byte as it is sent
 * @returns the value of `X-Slack-Signature`
 */
export function requestSignature(signingSecret: string, timestampSeconds: number, body: string): string {
  return `v0=${createHmac('sha256', signingSecret).update(`v0:${timestampSeconds}:${body}`).digest('hex')}`;
}
