/** What the words of all charts share: the lines above a picture, and how long its description may be. */
import { plainTyped, shortened } from '../typed-text.ts';

/** Two lines above a picture; the second may wrap. */
export interface ChartHeading {
  readonly title: string;
  /** Of the team or the sprint, as it was typed. */
  readonly name: string;
  readonly subtitle: string;
}

/** The platform takes no more with an uploaded picture (docs.slack.dev, files.getUploadURLExternal). */
export const ALT_TEXT_MAX_LENGTH = 1_000;
/** As long as a name may be where it is typed; older ones may be longer. */
const NAME_MAX_LENGTH = 80;

/** The name of a team or a sprint, which the description has room for. */
export function shortName(name: string): string {
  return shortened(plainTyped(name), NAME_MAX_LENGTH);
}

/**
 * The description with as many details as fit.
 *
 * @param most how many details there are
 * @param sentencesWith what is said with so many of them, and of how many are left out; the longer the more details, but for
 *   all of them, where nothing is said of any left out
 */
export function altTextOf(most: number, sentencesWith: (details: number) => readonly string[]): string {
  const textWith = (details: number): string => sentencesWith(details).join(' ');
  const whole = textWith(most);
  if (whole.length <= ALT_TEXT_MAX_LENGTH) return whole;
  // Each attempt says everything anew, so few are made.
  let fitting = { details: 0, text: shortened(textWith(0), ALT_TEXT_MAX_LENGTH) };
  for (let tooMany = most; tooMany - fitting.details > 1; ) {
    const details = Math.floor((fitting.details + tooMany) / 2);
    const text = textWith(details);
    if (text.length <= ALT_TEXT_MAX_LENGTH) fitting = { details, text };
    else tooMany = details;
  }
  return fitting.text;
}
