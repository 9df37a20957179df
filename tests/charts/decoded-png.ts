/** Reads a PNG back, so that tests can look at its pixels. */
import { createCanvas, loadImage } from '@napi-rs/canvas';

interface DecodedPng {
  readonly widthPx: number;
  readonly heightPx: number;
  /** `#rrggbb` of the pixel, in the pixels of the image. */
  colourAt(x: number, y: number): string;
  /** Whether every pixel is opaque. */
  readonly opaque: boolean;
}

export async function decodedPng(png: Uint8Array): Promise<DecodedPng> {
  const image = await loadImage(png);
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  return {
    widthPx: image.width,
    heightPx: image.height,
    colourAt(x, y) {
      const start = (Math.round(y) * image.width + Math.round(x)) * 4;
      return `#${Buffer.from(data.subarray(start, start + 3)).toString('hex')}`;
    },
    opaque: data.every((value, index) => index % 4 !== 3 || value === 255),
  };
}
