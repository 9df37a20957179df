/**
 * What a person typed, from the form in which the platform delivers it. People stay `<@ID>`; channels,
 * links and escapes become what was on the screen (docs.slack.dev/messaging/formatting-message-text).
 */
export function plainWords(delivered: string): string {
  return withoutEscapes(delivered.replace(LINK_WITH_WORDS, '$2'));
}

/** The same, in which the address of a link stays beside the words that were shown for it: `<https://…|words>`. */
export function wordsWithLinks(delivered: string): string {
  return withoutEscapes(
    delivered.replace(LINK_WITH_WORDS, (link, address: string, words: string) =>
      /^https?:/.test(address) && !address.includes(words) ? link : words,
    ),
  );
}

const LINK_WITH_WORDS = /<(?![@#!])([^|<>\s]+)\|([^<>]*)>/g;

function withoutEscapes(delivered: string): string {
  return delivered
    .replace(/<@([UW][A-Z0-9]+)(?:\|[^<>]*)?>/g, '<@$1>')
    .replace(/<#[A-Z0-9]+\|([^<>]*)>/g, '#$1')
    .replace(/<![a-z]+(?:\^[^<>|]*)?\|([^<>]*)>/g, '$1')
    .replace(/<!(here|channel|everyone)>/g, '@$1')
    .replace(/<(?![@#!])([^|<>\s]+)>/g, '$1')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .trim();
}
