/**
 * Turns an ECharts option into a PNG, with the bundled font and on our own card. Knows nothing about sprints.
 *
 * Both libraries are loaded when the first chart is drawn, so that the bot starts quickly.
 */
import type { EChartsOption } from 'echarts';
import { chartFont, chartFontFiles } from './chart-font.ts';
import { palette } from './palette.ts';

/** Lengths inside an option are in layout pixels; the image has twice as many each way. */
export const pixelDensity = 2;

/** What ECharts' types ask for; the canvas here has all of it that drawing needs. */
type PageCanvas = ReturnType<
  NonNullable<Parameters<typeof import('echarts/core').setPlatformAPI>[0]['createCanvas']>
>;

/**
 * Canvases that nobody draws on just now. Some megabytes each, whose giving back made the collector go through all memory
 * after every chart.
 */
const free: import('@napi-rs/canvas').Canvas[] = [];
const MOST_FREE = 2;

interface ChartSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * The same option always gives the same bytes. Throws when a font file is missing: a chart without its
 * letters is worse than none.
 */
export async function renderPng(option: EChartsOption, size: ChartSize): Promise<Uint8Array> {
  const { echarts, canvasLibrary } = await drawingLibraries();
  const [widthDots, heightDots] = [size.widthPx * pixelDensity, size.heightPx * pixelDensity];
  const place = free.findIndex(({ width, height }) => width === widthDots && height === heightDots);
  const [canvas = canvasLibrary.createCanvas(widthDots, heightDots)] = place < 0 ? [] : free.splice(place, 1);
  const chart = echarts.init(canvas as unknown as PageCanvas, null, {
    devicePixelRatio: pixelDensity,
    width: size.widthPx,
    height: size.heightPx,
  });
  try {
    chart.setOption({
      animation: false,
      backgroundColor: palette.card,
      textStyle: { fontFamily: chartFont, color: palette.ink },
      ...option,
    });
    // Draws now instead of on the next timer tick.
    chart.getZr().flush();
    const png = await canvas.encode('png');
    // One on which something failed is not used again.
    if (free.length < MOST_FREE) free.push(canvas);
    return png;
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

async function loadDrawingLibraries() {
  const [echarts, charts, components, renderers, canvasLibrary] = await Promise.all([
    import('echarts/core'),
    import('echarts/charts'),
    import('echarts/components'),
    import('echarts/renderers'),
    import('@napi-rs/canvas'),
  ]);
  for (const path of chartFontFiles()) {
    if (canvasLibrary.GlobalFonts.registerFromPath(path, chartFont) === null)
      throw new Error(`The chart font cannot be read: ${path}`);
  }
  echarts.use([
    charts.BarChart,
    charts.LineChart,
    components.GraphicComponent,
    components.GridComponent,
    components.TitleComponent,
    renderers.CanvasRenderer,
  ]);
  echarts.setPlatformAPI({
    createCanvas: () => canvasLibrary.createCanvas(1, 1) as unknown as PageCanvas,
  });
  return { echarts, canvasLibrary };
}
