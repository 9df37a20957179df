/** The bytes of a text file from any program as text. Pure. */

/**
 * Control characters that no text file holds; tab, line ends, vertical tab and form feed do occur. What Windows-1252
 * leaves undefined comes out as such characters too.
 */
const NO_TEXT = /[^\P{Cc}\t\n\v\f\r\u0085]/u;

/**
 * Turns the bytes of a text file into text, from any program: UTF-8 (what most write today), UTF-16 with a
 * byte order mark ("Unicode text" of spreadsheets), else Windows-1252 (older programs in western Europe). Decoders and
 * names: encoding.spec.whatwg.org. Must not guess further: a wrong guess would change people's words unseen.
 *
 * @returns undefined when the bytes are no text; the byte order mark is left out
 */
export function decodeText(bytes: Uint8Array): string | undefined {
  const marked = markedEncoding(bytes);
  const text = marked
    ? decodeStrictly(marked, bytes)
    : (decodeStrictly('utf-8', bytes) ?? decodeStrictly('windows-1252', bytes));
  return text === undefined || NO_TEXT.test(text) ? undefined : text;
}

function markedEncoding([first, second, third]: Uint8Array): string | undefined {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return first === 0xef && second === 0xbb && third === 0xbf ? 'utf-8' : undefined;
}

function decodeStrictly(encoding: string, bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
