/**
 * Reads a number as people write it in any country. Where a sign can be read in two ways that lie a thousand-fold
 * apart, it asks rather than guesses. It knows no unit: currency signs are passed over.
 */

/** Beyond this, digits of a number are lost in a computer's own numbers. */
const MOST_DIGITS = 15;
const MOST_DECIMALS = 6;
const QUOTED_LENGTH = 40;

export type NumberRead = { readonly value: number } | { readonly problem: string };

const SIGNS = /^(?:[-−–+])?/u;
const GROUP_SPACE = /(?<=\d)[ '’](?=\d{3}(?!\d))/gu;
/** Groups of three digits, or as in India of two and then three. */
const GROUPED_BY = {
  ',': /^(?:\d{1,3}(?:,\d{3})+|\d{1,2}(?:,\d{2})+,\d{3})$/,
  '.': /^\d{1,3}(?:\.\d{3})+$/,
} as const;

/**
 * @returns the number, or a sentence that says why there is none and what to write instead.
 * @example readNumber('€ 1.200,50') → { value: 1200.5 }
 * @example readNumber('1,200') → { value: 1200 }
 * @example readNumber('1.200') → { problem: '“1.200” may mean 1200 or 1.2. …' }
 */
export function readNumber(text: string): NumberRead {
  const bare = text
    .normalize('NFKC')
    .replace(/[\p{Sc}]/gu, ' ')
    .trim();
  const sign = SIGNS.exec(bare)?.[0] ?? '';
  const digits = bare.slice(sign.length).trim().replace(GROUP_SPACE, '');
  if (digits === '') return { problem: 'There is no number. Write one in digits, for example 1200.' };
  const plain = plainDigits(digits);
  if (plain === undefined) {
    return {
      problem: `“${quoted(text)}” is not a number. Write it in digits only, for example 1200 or −3.5.`,
    };
  }
  if (typeof plain === 'object') {
    const [first, second] = plain.readings.map((reading) => `${sign === '+' ? '' : sign}${reading}`);
    return {
      problem: `“${quoted(text)}” may mean ${first} or ${second}. Write it in one of these two ways.`,
    };
  }
  const decimals = plain.split('.')[1]?.length ?? 0;
  if (plain.replace(/^[0.]+|\./g, '').length > MOST_DIGITS || decimals > MOST_DECIMALS) {
    return {
      problem: `“${quoted(text)}” is too long. Write it with ${MOST_DIGITS} digits at most, and no more than ${MOST_DECIMALS} of them after the point.`,
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

function quoted(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > QUOTED_LENGTH ? `${line.slice(0, QUOTED_LENGTH - 1)}…` : line;
}
