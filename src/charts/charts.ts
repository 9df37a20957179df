/**
 * The `Charts` port: each picture with its words for those who can't see it. They are drawn in a thread: to load what draws
 * them takes the better part of a second, in which nobody would be answered.
 */
import { createHash } from 'node:crypto';
import { Memory } from '../app/memory.ts';
import type { Charts, Picture } from '../app/ports/charts.ts';
import { Thread, type ThreadLimits } from '../threads/thread.ts';
import { burndownAltText } from '../words/charts/burndown.ts';
import { forecastAltText } from '../words/charts/forecast.ts';
import { historyAltText } from '../words/charts/history.ts';
import { jointAltText } from '../words/charts/joint.ts';
import { keptAltText } from '../words/charts/kept.ts';
import { oddsAltText } from '../words/charts/odds.ts';
import { rangeAltText } from '../words/charts/range.ts';
import { type HistoryToDraw, historyToDraw } from './history-chart.ts';
import { type RangeToDraw, rangeToDraw } from './range-chart.ts';

export interface ChartQuestion {
  readonly chart: keyof Charts;
  readonly of:
    | Parameters<Charts[Exclude<keyof Charts, 'range' | 'history'>]>[0]
    | RangeToDraw
    | HistoryToDraw;
}

const SCRIPT = new URL('./chart-worker.ts', import.meta.url);
/** The first takes as long as loading does, which is much on a busy machine. */
const LIMITS: ThreadLimits = { timeoutMs: 60_000, memoryMb: 128, givesWay: true };
/** A thread that nobody has asked for so long gives its memory back, and the pictures go with it. */
const IDLE_MS = 10 * 60_000;

/**
 * Of the pictures that were drawn lately, in bytes: some sixty. Several people ask for the same, and share it afterwards; to draw it
 * is most of what an answer takes.
 */
const MOST_KEPT_BYTES = 4_000_000;
const pictures = new Memory<Uint8Array>(MOST_KEPT_BYTES, ({ byteLength }) => byteLength);

let drawing: Thread | undefined;
let idle: NodeJS.Timeout | undefined;
/** One after another: a thread is asked one question at a time. */
let before: Promise<unknown> = Promise.resolve();

export const charts: Charts = {
  burndown: (burndown) => drawn({ chart: 'burndown', of: burndown }, burndownAltText(burndown)),
  odds: (advice) => drawn({ chart: 'odds', of: advice }, oddsAltText(advice)),
  range: (advice) => drawn({ chart: 'range', of: rangeToDraw(advice) }, rangeAltText(advice)),
  forecast: (advice) => drawn({ chart: 'forecast', of: advice }, forecastAltText(advice)),
  history: (advice) => drawn({ chart: 'history', of: historyToDraw(advice) }, historyAltText(advice)),
  kept: (advice) => drawn({ chart: 'kept', of: advice }, keptAltText(advice)),
  joint: (advice) => drawn({ chart: 'joint', of: advice }, jointAltText(advice)),
};

async function drawn(question: ChartQuestion, altText: string): Promise<Picture> {
  const key = createHash('sha256').update(JSON.stringify(question, everything)).digest('base64');
  return { png: await pictures.get(key, () => inTurn(question)), altText };
}

/** What JSON would leave out. */
function everything(_name: string, value: unknown): unknown {
  if (value instanceof Set || value instanceof Map) return [...value];
  return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;
}

function inTurn(question: ChartQuestion): Promise<Uint8Array> {
  const drawingThis = before.then(() => inThread(question));
  before = drawingThis.catch(() => undefined);
  return drawingThis;
}

async function inThread(question: ChartQuestion): Promise<Uint8Array> {
  clearTimeout(idle);
  // One that had to be stopped is replaced.
  if (!drawing?.isAlive) drawing = new Thread(SCRIPT, LIMITS);
  const thread = drawing;
  try {
    return await thread.ask<Uint8Array>(question);
  } finally {
    idle = setTimeout(() => {
      pictures.clear();
      void thread.stop();
    }, IDLE_MS).unref();
  }
}
