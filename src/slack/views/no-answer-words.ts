/** What is said when the numbers do not suffice: what is missing, and how to get it. */
import { COMMAND } from '../ids.ts';
import { code } from './block-builders.ts';

/** How the reasons begin that say how many sprints it takes. */
const TAKES = /^(?:This|The range|A forecast|A margin) takes /;

/**
 * As plain text.
 *
 * @param what what there is none of, e.g. `range`
 * @param reason a sentence, as it comes with an undefined value
 * @example noAnswerSentence('range', 'The range takes 3 closed sprints; there is 1.') === 'No range yet: that takes 3 closed sprints; there is 1.'
 */
export function noAnswerSentence(what: string, reason: string): string {
  return TAKES.test(reason)
    ? `No ${what} yet: ${reason.replace(TAKES, 'that takes ')}`
    : `No ${what}: ${lowerFirst(reason)}`;
}

/** `not known yet: that takes 5 closed sprints; there are 2.` @param reason as for `noAnswerSentence` */
export function notKnownWords(reason: string): string {
  return TAKES.test(reason)
    ? `not known yet: ${reason.replace(TAKES, 'that takes ')}`
    : `not known: ${lowerFirst(reason)}`;
}

/** How a team gets a history without waiting for it. */
export function importHint(): string {
  return `Every sprint that closes here adds one. You need not wait for them: a facilitator can bring past sprints in with ${code(`${COMMAND} import`)}.`;
}

/** Joins a sentence to one before it. */
export function lowerFirst(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}
