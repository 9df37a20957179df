/** Text that somebody could send to do harm, or by accident: for the tests that hold the bot against it. */
import fc from 'fast-check';

/** Each is known to have hurt some program once. */
export const HOSTILE_PIECES = [
  '\u0000',
  '\u001b[2J',
  '\u009b31m',
  '\u007f',
  '\r\n',
  '\u2028',
  '\u0085',
  '\ud800',
  '\udfff',
  '\u202e',
  '\u2066',
  '\u061c',
  '\u200b',
  '\u00ad',
  '\u3164',
  '\ufffe',
  '\u{e0041}',
  'e\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301',
  '<!channel>',
  '<!here|x>',
  '<!subteam^S0EVIL>',
  '<@U0EVIL>',
  '<#C0EVIL|x>',
  '<https://evil.example|bank>',
  '<mailto:a@evil.example|x>',
  '<!date^0^{date}^https://evil.example|x>',
  '&lt;!channel&gt;',
  '&amp;lt;',
  '*b*',
  '_i_',
  '~s~',
  '`c`',
  '```',
  '\n> q',
  '\n• l',
  '__proto__',
  'constructor',
  'toString',
  '{{x}}',
  '{a|b}',
  '%s%n',
  '=1+1',
  '@SUM(A1)',
  '"',
  "'; drop table loadline.teams; --",
  '\\',
  '\\u0000',
  '١٢',
  '½',
  '−0',
  '1e999',
  'NaN',
  '999999999999999999999',
  '2026-02-30',
  '9999-99-99',
  '99:99',
  ',',
  ';',
  ':',
  '\t',
  '3',
  '0.5',
  'worked',
  'surprise',
  'same',
  'away',
] as const;

const piece = fc.constantFrom(...HOSTILE_PIECES);

/** Of any length up to `mostCharacters`; often short, sometimes one piece over and over. */
export function hostileText(mostCharacters = 3_000): fc.Arbitrary<string> {
  return fc
    .oneof(
      { weight: 8, arbitrary: piece.map((one) => `Mend ${one} buoy`) },
      { weight: 2, arbitrary: fc.array(piece, { maxLength: 6 }).map((pieces) => pieces.join('')) },
      { weight: 2, arbitrary: fc.array(piece, { maxLength: 6 }).map((pieces) => pieces.join(' ')) },
      { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 60 }) },
      { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 60 }) },
      {
        weight: 1,
        arbitrary: fc
          .tuple(piece, fc.constantFrom(200, 500, 3_000, 40_000))
          .map(([text, length]) => text.repeat(Math.ceil(length / text.length)).slice(0, length)),
      },
    )
    .map((text) => text.slice(0, mostCharacters));
}

/** What nobody may be shown or the database hold: controls, marks that turn or hide text, halves of signs. */
export const UNWANTED =
  /[^\P{Cc}\t\n]|[\u00ad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\u3164\ufeff\ufff9-\ufffc\ufffe\uffff\u{e0000}-\u{e007f}\p{Cs}]/u;
