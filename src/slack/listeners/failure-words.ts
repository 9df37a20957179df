/**
 * What a person reads when something was not done: what is wrong and what to do about it. What nobody foresaw gets a
 * code that leads the operator to the log.
 */
import { WebAPIPlatformError, WebAPIRateLimitedError } from '@slack/web-api';
import { StoreTrouble } from '../../app/ports/store-trouble.ts';
import { Refusal } from '../../app/refusal.ts';
import { type Written, writtenSoFar } from '../../app/written-once.ts';
import { codeOf, errorChain } from '../../error-chain.ts';
import type { Logger } from '../../logger.ts';
import { currentReference, newReference } from '../../reference.ts';
import { type FieldProblem, fieldProblem } from '../../words/problems.ts';
import { type RefusalWords, refusalWords } from '../../words/refusals.ts';
import { mrkdwn } from '../../words/say.ts';
import { StaleControl } from '../button-values.ts';
import { noteFailure, noteRefusal } from '../door/request-scope.ts';
import type { MessageView } from '../views/message-view.ts';
import { refusalMessage, troubleMessage } from '../views/trouble-views.ts';

export type Failure =
  | {
      readonly kind: 'refusal';
      /** In the platform's markup. */
      readonly words: RefusalWords;
      readonly problems: readonly FieldProblem[];
    }
  | { readonly kind: 'trouble'; readonly errorId: string; readonly written: Written };

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

/** Understands what was thrown; logs it when it was not foreseen. */
export function failureOf(error: unknown, logger: Logger, during: string): Failure {
  if (error instanceof Refusal) {
    noteRefusal(error.code);
    return { kind: 'refusal', words: refusalWords(error), problems: problemsOf(error) };
  }
  const written = writtenSoFar();
  const trouble = storeTroubleOf(error);
  if (trouble && (written === 'nothing' || written === 'unsettled')) {
    noteRefusal(trouble.code);
    logger.warn({ during, reason: trouble.code }, 'The database took nothing in.');
    return { kind: 'refusal', words: troubleWordsOf(trouble, written), problems: [] };
  }
  // Words that were made for what was not done would be untrue once something was.
  const words = written === 'nothing' ? foreseen(error) : undefined;
  if (words) {
    noteRefusal(labelOf(error));
    logger.warn({ during, err: error }, 'Something was not done.');
    return { kind: 'refusal', words, problems: [] };
  }
  // The reference of the request, so that everything it logged can be found by what the person was shown.
  const errorId = currentReference() ?? newReference();
  noteFailure(labelOf(error));
  logger.error({ during, errorId, err: error }, 'Something went wrong.');
  return { kind: 'trouble', errorId, written };
}

export function storeTroubleOf(error: unknown): StoreTrouble | undefined {
  return errorChain(error).find((at) => at instanceof StoreTrouble);
}

/** Where another process may have carried out the same request, nobody is told for certain that nothing was recorded. */
function troubleWordsOf({ code, isAlone }: StoreTrouble, written: Written): RefusalWords {
  const certain = isAlone || written === 'nothing' ? 'yes' : 'no';
  return {
    what: mrkdwn('trouble-database', { why: code, certain }),
    fix: mrkdwn('trouble-database-fix', { why: code, certain }),
  };
}

/** What is wrong with which field, where the refusal is about fields. */
function problemsOf(refusal: Refusal): readonly FieldProblem[] {
  if (refusal.code === 'bad-input') {
    return (refusal as Refusal<'bad-input'>).details.problems.map(fieldProblem);
  }
  if (refusal.code !== 'file-unreadable') return [];
  const { what, fix } = refusalWords(refusal, 'plain');
  const { field } = (refusal as Refusal<'file-unreadable'>).details;
  return [{ field, message: `${what} ${fix}` }];
}

export function failureMessage(failure: Failure): MessageView {
  return failure.kind === 'refusal'
    ? refusalMessage(failure.words, failure.problems)
    : troubleMessage(failure.errorId, failure.written);
}

function foreseen(error: unknown): RefusalWords | undefined {
  if (error instanceof StaleControl) {
    return { what: mrkdwn('refusal-stale-control'), fix: mrkdwn('refusal-stale-control-fix') };
  }
  if (error instanceof WebAPIPlatformError && TOO_LATE.has(error.data.error)) {
    return { what: mrkdwn('refusal-form-too-late'), fix: mrkdwn('refusal-form-too-late-fix') };
  }
  if (error instanceof WebAPIRateLimitedError) {
    return {
      what: mrkdwn('refusal-platform-pause'),
      fix: mrkdwn('refusal-too-much-at-once-fix', { seconds: error.retryAfter }),
    };
  }
  return undefined;
}

/** The code of an error, or of what caused it; its name when nothing in it has a code. */
function labelOf(error: unknown): string {
  for (const at of errorChain(error)) {
    const code = at instanceof WebAPIPlatformError ? at.data.error : codeOf(at);
    if (code !== undefined) return code;
  }
  return error instanceof Error ? error.name : typeof error;
}
