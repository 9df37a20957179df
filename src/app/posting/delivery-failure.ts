/**
 * Why a post did not go out, as far as is known:
 * - `rate-limited`: not posted; the platform says when to try again.
 * - `uncertain`: may have been posted (a timeout, a dropped connection, an error inside the platform).
 * - `not-sent`: surely not posted; worth trying again.
 * - `refused`: not posted, and trying again is useless (the channel is gone, the account deactivated).
 * - `not-installed`: not posted, since the workspace has removed the bot. The post waits, untried, until the bot is
 *   installed there again.
 */
export type DeliveryFailureKind = 'rate-limited' | 'uncertain' | 'not-sent' | 'refused' | 'not-installed';

/** Why trying again is useless: what would have to change first. */
export type RefusalCause = 'place-gone' | 'person-gone' | 'token-gone' | 'permission' | 'our-defect';

/** Why a post can't be delivered: the platform refused it, or all tries failed. */
export type UndeliveredCause = RefusalCause | 'tries-failed';

/** What is wrong with a channel: posts there fail, the bot was taken out of it, or others read it of whom nobody knew. */
export type ChannelCause = UndeliveredCause | 'bot-left' | 'shared';

/** The code that is kept of a post that waits, since people of another organisation would read it. */
export const HELD_BACK = 'channel_shared';

export class DeliveryFailure extends Error {
  override readonly name = 'DeliveryFailure';
  readonly kind: DeliveryFailureKind;
  /** The platform's own error code, e.g. `channel_not_found`. */
  readonly code: string;
  /** Only with `rate-limited`. */
  readonly retryAfterMs: number | undefined;
  /** Only with `refused`. */
  readonly because: RefusalCause | undefined;

  constructor(
    kind: DeliveryFailureKind,
    code: string,
    options: { retryAfterMs?: number; because?: RefusalCause; cause?: unknown } = {},
  ) {
    super(`${kind}: ${code}`, { cause: options.cause });
    this.kind = kind;
    this.code = code;
    this.retryAfterMs = options.retryAfterMs;
    this.because = options.because;
  }
}
