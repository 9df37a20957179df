/**
 * About how wide a text is drawn, to find room for it before it is: what draws it is loaded elsewhere, and only then. Within
 * some percent of the bundled font, and rather too wide than too narrow.
 */

/** In parts of the size of the type. Widths of the bundled font's own letters, in groups. */
const WIDTHS: readonly (readonly [letters: RegExp, width: number])[] = [
  [/\s/, 0.17],
  [/[,.:;|l¦·ĺļľł]/, 0.22],
  [/[!`ij´¹ìíîïĩīĭįı'’]/, 0.28],
  [/[()"“”[\]ft{}ţťrŀŕŗř\-–°/\\]/, 0.35],
  [/[1_ŧIyÌÍÎÏýÿŷv*]/, 0.43],
  [/[xzźżžksķśŝşšJc7¢ç¶ćĉċč]/, 0.49],
  [/[?a§¿×àáâãäåāăą2FLehnuèéêëñùúûüēĕėęěĥĹĻĽńņňũūŭůűų]/, 0.53],
  [/[<>ET^bdgop~«µ»ÈÉÊËðòóôõöøþĒĔĖĘĚĝğġģōŏőŢŤ35VqđħŁ]/, 0.57],
  [/[$+69=PSYZ¥ß÷ŚŞŠŸŹŻŽ480ABKRXÀÁÂÃÄÅĀĂĄĶŔŖŘ€]/, 0.62],
  [/[#CwÇĆĈĊČŵDHNUÑÙÚÛÜĎŃŅŇŨŪŬŮŰŲ&GĜĞĠĢ]/, 0.69],
  [/[OÐÒÓÔÕÖØĐŌŎŐQ@]/, 0.75],
  [/[M¼½Wmæ%œŴÆŒ—…]/, 0.88],
  // Letters of scripts that are as wide as they are high.
  [/[\u1100-\u11ff\u2e80-\uffff]/, 1],
  [/./su, 0.6],
];
const BOLD = 1.09;
/** Room that is left over does less harm than none. */
const SLACK = 1.04;

/** @returns pixels, of the widest line */
export function textWidthPx(text: string, sizePx: number, weight: 'normal' | 'bold' = 'normal'): number {
  const widest = Math.max(...text.split('\n').map(lineWidth));
  return widest * sizePx * SLACK * (weight === 'bold' ? BOLD : 1);
}

function lineWidth(line: string): number {
  return [...line].reduce((sum, letter) => sum + widthOf(letter), 0);
}

function widthOf(letter: string): number {
  return WIDTHS.find(([letters]) => letters.test(letter))?.[1] ?? 0.6;
}

/** The text in lines that are no wider than the place: broken between words, and within words that are wider. */
export function inLines(text: string, sizePx: number, placePx: number): string[] {
  return text.split('\n').flatMap((line) => {
    const lines: string[] = [];
    let last = '';
    const fits = (more: string) => textWidthPx(`${last}${more}`.trimEnd(), sizePx) <= placePx;
    for (const word of line.split(/(?<=\s)/)) {
      const pieces = textWidthPx(word.trimEnd(), sizePx) <= placePx ? [word] : [...word];
      for (const piece of pieces) {
        if (last !== '' && !fits(piece)) {
          lines.push(last.trimEnd());
          last = '';
        }
        last += piece;
      }
    }
    return [...lines, last.trimEnd()];
  });
}
