/**
 * What a person typed, from the form in which the platform delivers it. People stay `<@ID>`; channels,
 * links and escapes become what was on the screen (docs.slack.dev/messaging/formatting-message-text).
 */
export function plainWords(delivered: string): string {
  return delivered
    .replace(/<@([UW][A-Z0-9]+)(?:\|[^<>]*)?>/g, '<@$1>')
    .replace(/<#[A-Z0-9]+\|([^<>]*)>/g, '#$1')
    .replace(/<![a-z]+(?:\^[^<>|]*)?\|([^<>]*)>/g, '$1')
    .replace(/<!(here|channel|everyone)>/g, '@$1')
    .replace(/<(?!@)([^|<>\s]+)\|([^<>]*)>/g, '$2')
    .replace(/<(?![@#!])([^|<>\s]+)>/g, '$1')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .trim();
}
