/** Looks at the places of a picture in layout pixels. */
import { pixelDensity } from '../../src/charts/render-png.ts';
import { decodedPng } from './decoded-png.ts';

export interface DrawnPicture {
  /** `#rrggbb` */
  colourAt(x: number, y: number): string;
  /** All colours met on the way from one place to another, in a straight line. */
  coloursAlong(from: readonly [number, number], to: readonly [number, number]): Set<string>;
}

export async function drawnPicture(png: Promise<Uint8Array>): Promise<DrawnPicture> {
  const decoded = await decodedPng(await png);
  const colourAt = (x: number, y: number) => decoded.colourAt(x * pixelDensity, y * pixelDensity);
  return {
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
  };
}
