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
 * @param sentencesWith what is said with so many of them, and of how many are left out
 */
export function altTextOf(most: number, sentencesWith: (details: number) => readonly string[]): string {
  const textWith = (details: number): string => sentencesWith(details).join(' ');
  for (let details = most; details > 0; details -= 1) {
    const text = textWith(details);
    if (text.length <= ALT_TEXT_MAX_LENGTH) return text;
  }
  return shortened(textWith(0), ALT_TEXT_MAX_LENGTH);
}
