/** Where the letters of a picture's labels are, by the widths of the chart's own font. */
import { createCanvas, GlobalFonts } from '@napi-rs/canvas';
import { expect } from 'vitest';
import { chartFont, chartFontFiles } from '../../src/charts/chart-font.ts';
import type { ChartSize } from '../../src/charts/chart-frame.ts';
import type { Mark } from '../../src/charts/marks.ts';

export interface LabelBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

for (const file of chartFontFiles()) GlobalFonts.registerFromPath(file, chartFont);
const context = createCanvas(1, 1).getContext('2d');

/** Of single lines and of texts with their own line breaks; paragraphs are left out. */
export function labelBoxes(marks: readonly Mark[]): LabelBox[] {
  return marks.flatMap((mark): LabelBox[] => {
    if (mark.type !== 'text' || mark.style.verticalAlign !== 'middle') return [];
    const { x, y } = mark;
    const { text, align, fontSize, fontWeight, lineHeight } = mark.style;
    context.font = `${fontWeight} ${fontSize}px "${chartFont}"`;
    const textLines = text.split('\n');
    const width = Math.max(...textLines.map((line) => context.measureText(line).width));
    const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
    // From the top of capitals to the foot of descenders.
    const height = (textLines.length - 1) * lineHeight + fontSize * 0.9;
    return [{ text, left, right: left + width, top: y - height / 2, bottom: y + height / 2 }];
  });
}

export function labelTexts(marks: readonly Mark[]): string[] {
  return labelBoxes(marks).map(({ text }) => text);
}

/** No label on another, and all of them on the card. */
export function expectLegible(boxes: readonly LabelBox[], size: ChartSize): void {
  boxes.forEach((box, index) => {
    expect(box.left, box.text).toBeGreaterThanOrEqual(4);
    expect(box.right, box.text).toBeLessThanOrEqual(size.widthPx - 4);
    expect(box.top, box.text).toBeGreaterThanOrEqual(4);
    expect(box.bottom, box.text).toBeLessThanOrEqual(size.heightPx - 4);
    const struck = boxes.slice(index + 1).filter((other) => overlap(box, other));
    expect(struck.map(({ text }) => `${box.text} on ${text}`)).toEqual([]);
  });
}

function overlap(one: LabelBox, other: LabelBox): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
