/**
 * Lays an ECharts option out and turns it into a PNG, with the bundled font and on our own card. Knows nothing about
 * sprints.
 *
 * Both libraries are loaded when the first chart is drawn, so that the bot starts quickly.
 */
import type { Canvas } from '@napi-rs/canvas';
import type { EChartsOption, EChartsType } from 'echarts';
import { chartFont, chartFontFiles } from './chart-font.ts';
import { chartTheme } from './chart-theme.ts';

/** What ECharts' types ask for; the canvas here has all of it that drawing needs. */
type PageCanvas = ReturnType<
  NonNullable<Parameters<typeof import('echarts').setPlatformAPI>[0]['createCanvas']>
>;

interface ChartSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Lengths inside an option are in layout pixels; the image has twice as many each way. */
export const pixelDensity = 2;

/**
 * Canvases that nobody draws on just now. Some megabytes each, and giving them back made the collector go through all
 * memory after every chart.
 */
const free: Canvas[] = [];
const MOST_FREE = 2;

/**
 * The same option always gives the same bytes. Throws when a font file is missing: a chart without its
 * letters is worse than none.
 */
export async function renderPng(option: EChartsOption, size: ChartSize): Promise<Uint8Array> {
  return drawn(option, size, (_, canvas) => canvas.encode('png'));
}

/** Hands over the chart and the canvas that it was drawn on; both are others' when `use` has ended. */
export async function drawn<T>(
  option: EChartsOption,
  { widthPx, heightPx }: ChartSize,
  use: (chart: EChartsType, canvas: Canvas) => T | Promise<T>,
): Promise<T> {
  const { echarts, canvasLibrary } = await drawingLibraries();
  const [widthDots, heightDots] = [widthPx * pixelDensity, heightPx * pixelDensity];
  const place = free.findIndex(({ width, height }) => width === widthDots && height === heightDots);
  const [canvas = canvasLibrary.createCanvas(widthDots, heightDots)] = place < 0 ? [] : free.splice(place, 1);
  const chart = echarts.init(canvas as unknown as PageCanvas, chartTheme, {
    devicePixelRatio: pixelDensity,
    width: widthPx,
    height: heightPx,
  });
  try {
    chart.setOption(option);
    const result = await use(chart, canvas);
    // One on which something failed is not used again.
    if (free.length < MOST_FREE) free.push(canvas);
    return result;
  } finally {
    chart.dispose();
  }
}

type DrawingLibraries = Awaited<ReturnType<typeof loadDrawingLibraries>>;
let loading: Promise<DrawingLibraries> | undefined;

function drawingLibraries(): Promise<DrawingLibraries> {
  loading ??= loadDrawingLibraries().catch((error: unknown) => {
    // A failed load may be tried again with the next chart.
    loading = undefined;
    throw error;
  });
  return loading;
}

/** Takes all of ECharts in one file: its hundreds of modules take eight times as long to load (docs/decisions/0010). */
async function loadDrawingLibraries() {
  const [echarts, canvasLibrary] = await Promise.all([
    import('echarts/dist/echarts.esm.min.mjs' as string) as Promise<typeof import('echarts')>,
    import('@napi-rs/canvas'),
  ]);
  for (const path of chartFontFiles()) {
    if (canvasLibrary.GlobalFonts.registerFromPath(path, chartFont) === null)
      throw new Error(`The chart font cannot be read: ${path}`);
  }
  echarts.setPlatformAPI({
    createCanvas: () => canvasLibrary.createCanvas(1, 1) as unknown as PageCanvas,
  });
  return { echarts, canvasLibrary };
}
