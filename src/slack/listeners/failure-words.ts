/**
 * What a person is told when something was not done: what was wrong and how to mend it. What nobody foresaw
 * gets a code that leads the operator to the log.
 */
import { randomInt } from 'node:crypto';
import { WebAPIPlatformError, WebAPIRateLimitedError } from '@slack/web-api';
import type { InputProblem } from '../../app/refusal.ts';
import { Refusal } from '../../app/refusal.ts';
import { refusalWords } from '../../app/refusal-words.ts';
import type { Logger } from '../../logger.ts';
import type { MessageView } from '../views/message-view.ts';
import { refusalMessage } from '../views/refusal-message.ts';
import { troubleMessage } from '../views/trouble-views.ts';
import { StaleControl } from './stale-control.ts';

export type Failure =
  | {
      readonly kind: 'refusal';
      readonly words: { readonly what: string; readonly mend: string };
      readonly problems: readonly InputProblem[];
    }
  | { readonly kind: 'trouble'; readonly errorId: string };

/** The platform's answers when a form comes too late (docs.slack.dev/interactivity/handling-user-interaction). */
const TOO_LATE = new Set([
  'expired_trigger_id',
  'exchanged_trigger_id',
  'trigger_expired',
  'trigger_exchanged',
  'invalid_trigger_id',
  'not_found',
  'hash_conflict',
]);

/** No letters that are mistaken for digits when read aloud. */
const CODE_ALPHABET = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const CODE_LENGTH = 6;

/** Understands what was thrown; logs it when it was not foreseen. */
export function failureOf(error: unknown, logger: Logger, during: string): Failure {
  if (error instanceof Refusal) {
    const problems = error.code === 'bad-input' ? (error as Refusal<'bad-input'>).details.problems : [];
    return { kind: 'refusal', words: refusalWords(error), problems };
  }
  const words = foreseen(error);
  if (words) {
    logger.warn({ during, err: error }, 'Something was not done.');
    return { kind: 'refusal', words, problems: [] };
  }
  const errorId = newErrorId();
  logger.error({ during, errorId, err: error }, 'Something went wrong.');
  return { kind: 'trouble', errorId };
}

export function failureMessage(failure: Failure): MessageView {
  return failure.kind === 'refusal'
    ? refusalMessage(failure.words, failure.problems)
    : troubleMessage(failure.errorId);
}

function foreseen(error: unknown): { what: string; mend: string } | undefined {
  if (error instanceof StaleControl) {
    return {
      what: 'This button or form is from an earlier time and can not be read any more; nothing was recorded.',
      mend: 'Type `/loadline` and start from there.',
    };
  }
  if (error instanceof WebAPIPlatformError && TOO_LATE.has(error.data.error)) {
    return { what: 'It took too long to open the form; nothing was recorded.', mend: 'Try once more.' };
  }
  if (error instanceof WebAPIRateLimitedError) {
    return {
      what: 'The chat platform asks for a pause.',
      mend: `Try again in ${error.retryAfter === 1 ? '1 second' : `${error.retryAfter} seconds`}.`,
    };
  }
  return undefined;
}

function newErrorId(): string {
  const letters = Array.from({ length: CODE_LENGTH }, () => CODE_ALPHABET[randomInt(CODE_ALPHABET.length)]);
  return letters.join('');
}
