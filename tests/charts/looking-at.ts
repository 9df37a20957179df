/** Looks at a chart as ECharts laid it out and drew it: its words, the places of its data, and its colours. */
import type { ImageData } from '@napi-rs/canvas';
import { expect } from 'vitest';
import type { ChartPicture } from '../../src/charts/chart-theme.ts';
import { drawn, pixelDensity } from '../../src/charts/render-png.ts';

type Place = readonly [x: number, y: number];

interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** All lengths in layout pixels. */
export interface SeenChart {
  readonly size: ChartPicture['size'];
  /** A box for each line of text. */
  readonly boxes: readonly TextBox[];
  /** The words, a text of several lines in as many pieces. */
  readonly texts: readonly string[];
  /** Where a value is, on the first axes or on those of these numbers. */
  at(x: number, y: number, axes?: { readonly x?: number; readonly y?: number }): [number, number];
  /** The lines of text in one column around `x`, between these heights, from top to bottom. */
  column(x: number, top: number, bottom?: number): string[];
  /** `#rrggbb` */
  colourAt(x: number, y: number): string;
  /** All colours met on the way from one place to another, in a straight line. */
  coloursAlong(from: Place, to: Place): Set<string>;
}

export function lookingAt<T>({ option, size }: ChartPicture, look: (seen: SeenChart) => T): Promise<T> {
  return drawn(option, size, (chart, canvas) => {
    // Many a test looks at the words alone.
    let pixels: ImageData | undefined;
    const colourAt = (x: number, y: number) => {
      pixels ??= canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
      const start = (Math.round(y * pixelDensity) * pixels.width + Math.round(x * pixelDensity)) * 4;
      return `#${Buffer.from(pixels.data.subarray(start, start + 3)).toString('hex')}`;
    };
    const boxes = (chart.getZr().storage.getDisplayList() as unknown as Drawn[]).flatMap(textBoxes);
    return look({
      size,
      boxes,
      texts: boxes.map(({ text }) => text),
      at: (x, y, axes = {}) =>
        chart.convertToPixel({ xAxisIndex: axes.x ?? 0, yAxisIndex: axes.y ?? 0 }, [x, y]) as [
          number,
          number,
        ],
      column: (x, top, bottom = size.heightPx) =>
        boxes
          .filter(
            (box) => Math.abs((box.left + box.right) / 2 - x) < 6 && box.top > top && box.bottom < bottom,
          )
          .toSorted((one, other) => one.top - other.top)
          .map(({ text }) => text),
      colourAt,
      coloursAlong([fromX, fromY], [toX, toY]) {
        const steps = Math.ceil(Math.hypot(toX - fromX, toY - fromY) * pixelDensity);
        return new Set(
          Array.from({ length: steps + 1 }, (_, step) => {
            const share = step / Math.max(1, steps);
            return colourAt(fromX + (toX - fromX) * share, fromY + (toY - fromY) * share);
          }),
        );
      },
    });
  });
}

/** An element of the drawing library, as far as it is looked at here; its types leave these open. */
interface Drawn {
  readonly type: string;
  readonly invisible: boolean;
  readonly transform?: number[];
  readonly style: { readonly text?: string; readonly font?: string };
  getBoundingRect(): { clone(): Rect };
}
interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  applyTransform(transform: number[]): void;
}

/** From the top of capitals to the foot of descenders, of the size of the type. */
const LETTER_SHARE = 0.9;

function textBoxes(element: Drawn): TextBox[] {
  const { text = '', font = '' } = element.style;
  if (element.type !== 'tspan' || element.invisible || text.trim() === '') return [];
  const rect = element.getBoundingRect().clone();
  if (element.transform) rect.applyTransform(element.transform);
  const middle = rect.y + rect.height / 2;
  const height = Number(/(\d+)px/.exec(font)?.[1]) * LETTER_SHARE;
  return [
    { text, left: rect.x, right: rect.x + rect.width, top: middle - height / 2, bottom: middle + height / 2 },
  ];
}

/** No label on another, all of them on the card, and letters of 11 pixels at least where a phone shows it 340 wide. */
export function expectLegible({ boxes, size }: SeenChart): void {
  boxes.forEach((box, index) => {
    const letters = ((box.bottom - box.top) / LETTER_SHARE) * (340 / size.widthPx);
    expect(letters, box.text).toBeGreaterThanOrEqual(11);
    expect(box.left, box.text).toBeGreaterThanOrEqual(4);
    expect(box.right, box.text).toBeLessThanOrEqual(size.widthPx - 4);
    expect(box.top, box.text).toBeGreaterThanOrEqual(4);
    expect(box.bottom, box.text).toBeLessThanOrEqual(size.heightPx - 4);
    const struck = boxes.slice(index + 1).filter((other) => overlap(box, other));
    expect(struck.map(({ text }) => `${box.text} on ${text}`)).toEqual([]);
  });
}

function overlap(one: TextBox, other: TextBox): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
