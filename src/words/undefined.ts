/** What is said in place of a number that doesn't exist. */
import { isDefined, type Ratio, type Reason } from '../sprint/undefined-value.ts';
import { percent } from './amounts.ts';
import { say, sayCode } from './say.ts';

/** A whole sentence of plain text. It holds nothing that anybody typed, so it is markup as well. */
export function reasonSentence(reason: Reason): string {
  return sayCode('undefined', reason);
}

/** Whether the number will exist once more sprints have been closed. */
function comesWithTime({ code }: Reason): boolean {
  return code === 'few-sprints';
}

/** @example noAnswer('range', { code: 'nobody-there' }) === 'No range. Nobody is there to work in the coming sprint.' */
export function noAnswer(what: 'range' | 'forecast', reason: Reason): string {
  const none = comesWithTime(reason) ? say('no-answer-yet', { what }) : say('no-answer', { what });
  return `${none} ${reasonSentence(reason)}`;
}

/** @example ratioText({ undefined: { code: 'no-commitment' } }) === 'None. There was no commitment.' */
export function ratioText(ratio: Ratio): string {
  return isDefined(ratio) ? percent(ratio) : say('ratio-none', { reason: reasonSentence(ratio.undefined) });
}
