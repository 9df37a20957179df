/**
 * Reads a number as people write it in any country. Where a sign can be read in two ways that lie a thousand-fold
 * apart, it asks rather than guesses. It knows no unit: currency signs are passed over.
 */

/** Beyond this, digits of a number are lost in a computer's own numbers. */
const MOST_DIGITS = 15;
const MOST_DECIMALS = 6;

export type NumberProblem =
  | { readonly code: 'no-number' }
  | { readonly code: 'not-a-number'; readonly typed: string }
  /** Both ways to read it, each written so that it can be read in that way only. */
  | { readonly code: 'two-numbers'; readonly typed: string; readonly first: string; readonly second: string }
  | {
      readonly code: 'too-many-digits';
      readonly typed: string;
      readonly digits: number;
      readonly decimals: number;
    };

type NumberRead = { readonly value: number } | { readonly problem: NumberProblem };

const SIGNS = /^(?:[-−–+])?/u;
const GROUP_SPACE = /(?<=\d)[ '’](?=\d{3}(?!\d))/gu;
/** Groups of three digits, or as in India of two and then three. */
const GROUPED_BY = {
  ',': /^(?:\d{1,3}(?:,\d{3})+|\d{1,2}(?:,\d{2})+,\d{3})$/,
  '.': /^\d{1,3}(?:\.\d{3})+$/,
} as const;

/**
 * @returns the number, or why there is none.
 * @example readNumber('€ 1.200,50') → { value: 1200.5 }
 * @example readNumber('1,200') → { value: 1200 }
 * @example readNumber('1.200') → { problem: { code: 'two-numbers', typed: '1.200', first: '1200', second: '1.2' } }
 */
export function readNumber(text: string): NumberRead {
  const bare = text
    .normalize('NFKC')
    .replace(/[\p{Sc}]/gu, ' ')
    .trim();
  const sign = SIGNS.exec(bare)?.[0] ?? '';
  const digits = bare.slice(sign.length).trim().replace(GROUP_SPACE, '');
  if (digits === '') return { problem: { code: 'no-number' } };
  const plain = plainDigits(digits);
  if (plain === undefined) return { problem: { code: 'not-a-number', typed: text } };
  if (typeof plain === 'object') {
    const shown = sign === '+' ? '' : sign;
    const [first, second] = plain.readings;
    return {
      problem: { code: 'two-numbers', typed: text, first: `${shown}${first}`, second: `${shown}${second}` },
    };
  }
  const decimals = plain.split('.')[1]?.length ?? 0;
  if (plain.replace(/^[0.]+|\./g, '').length > MOST_DIGITS || decimals > MOST_DECIMALS) {
    return {
      problem: { code: 'too-many-digits', typed: text, digits: MOST_DIGITS, decimals: MOST_DECIMALS },
    };
  }
  const value = Number(plain);
  return { value: sign === '' || sign === '+' || value === 0 ? value : -value };
}

/** With a point before the decimals and no other sign; both readings when there are two; undefined: no number. */
function plainDigits(digits: string): string | { readonly readings: readonly [string, string] } | undefined {
  if (!/^[\d.,]*\d$/.test(digits)) return undefined;
  const marks = [...digits].filter((sign) => sign === '.' || sign === ',');
  const [mark] = marks as ('.' | ',')[];
  if (mark === undefined) return digits;
  const last = digits.search(/[.,]\d*$/);
  const whole = digits.slice(0, last);
  const decimals = digits.slice(last + 1);
  const lastMark = digits[last] as '.' | ',';
  if (marks.length > 1) {
    if (mark === lastMark) return GROUPED_BY[mark].test(digits) ? digits.replaceAll(mark, '') : undefined;
    // The other sign comes last, so it is the one before the decimals.
    return GROUPED_BY[mark].test(whole) ? `${whole.replaceAll(mark, '')}.${decimals}` : undefined;
  }
  if (decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole)) {
    // English grouping; three decimals after a comma are hardly ever written.
    if (mark === ',') return `${whole}${decimals}`;
    return { readings: [`${whole}${decimals}`, withoutThreeDecimals(whole, decimals)] };
  }
  return `${whole === '' ? '0' : whole}.${decimals}`;
}

/** The same decimals, so many that they can't be taken for a group of three. */
function withoutThreeDecimals(whole: string, decimals: string): string {
  const short = decimals.replace(/0+$/, '');
  if (short === '') return `${whole}.0`;
  return `${whole}.${short.length === 3 ? `${short}0` : short}`;
}
