/**
 * Text that makes a badly built regular expression slow: what it looks for, over and over, and then something that it
 * does not look for. Made from the expression itself.
 */
import fc from 'fast-check';

const SAMPLES = 4;
const MOST_TOKENS = 14;
const LONG = 1_000;
const FEW_PAIRS = 20;
/** Of a match: with so few signs of it an expression has begun, and goes on as long as the rest lets it. */
const PREFIXES = 8;

/** Something that a class or an escape matches. */
const STANDS_FOR: readonly (readonly [part: RegExp, texts: readonly string[]])[] = [
  [/\\s/, [' ', '\t', '\n', '\u00a0']],
  [/\\S|\\w|\[\^|\./, ['a', '-', ':']],
  [/\\d|0-9/, ['1', '5']],
  [/\\p\{L\}|a-z|A-Z/i, ['a', 'Z', 'é']],
  [/\\p\{N\}/, ['1', '٣']],
  [/\\p\{M\}/, ['\u0301']],
  [/\\p\{Sc\}/, ['€']],
  [/\\p\{C/i, ['\u0007']],
  [/\\r|\\n|\\v|\\f/, ['\n', '\r']],
];

/** Pieces of text that the expression looks for, single signs and words. */
export function tokensOf(source: string): string[] {
  const unescaped = source.replace(/\\([^a-zA-Z0-9])/g, '$1');
  const words = unescaped.match(/[A-Za-z]{2,}/g) ?? [];
  const signs = unescaped.match(/[^A-Za-z0-9\s()[\]{}?+*\\^$|]|[[\](){}*+^|`]/g) ?? [];
  const classes = STANDS_FOR.flatMap(([part, texts]) => (part.test(source) ? texts : []));
  return [...new Set([...classes, ...signs, ...words])].slice(0, MOST_TOKENS);
}

/**
 * Texts that the expression matches, or nearly so. The generator would search long for signs that are left out, or that
 * have a property, so a letter stands for them.
 */
function matchesOf(source: string, flags: string, seed: number): string[] {
  const simpler = source.replace(/\[\^(?:\\.|[^\]])*\]|\[(?:\\p\{\w+\})+\]|\\p\{\w+\}/giu, 'a');
  try {
    const arbitrary = fc.stringMatching(new RegExp(simpler, flags.replace(/[gmy]/g, '')), { size: 'small' });
    return fc.sample(arbitrary, { numRuns: SAMPLES, seed });
  } catch {
    return [];
  }
}

/**
 * @param length of each text, but for its end: where work doubles with each sign, some more would take for ever
 * @returns the texts one after another, so that only one is held at a time
 */
export function* pumpedTexts(source: string, flags: string, length: number, seed: number): Generator<string> {
  const tokens = tokensOf(source);
  const matches = matchesOf(source, flags, seed);
  const pairs = tokens.flatMap((one) => tokens.map((other) => one + other));
  // What grows faster than the square of the length shows in shorter texts, and takes less time there.
  const [match = ''] = matches;
  const prefixes = Array.from({ length: Math.min(PREFIXES, match.length) }, (_, i) => match.slice(0, i + 1));
  const pumps = [
    ...tokens,
    ...(length > LONG ? pairs.slice(0, FEW_PAIRS) : pairs),
    ...matches,
    ...prefixes,
    match.slice(0, -1),
  ];
  const starts = ['', match, match.slice(0, -1), ...(length > LONG ? [] : prefixes)];
  for (const pump of new Set(pumps)) {
    if (pump === '') continue;
    const middle = pump.repeat(Math.ceil(length / pump.length));
    for (const start of new Set(starts)) yield `${`${start}${middle}`.slice(0, length)}!\u0001`;
  }
}
