/**
 * What the charts are drawn with: text, lines, areas and symbols, as ECharts graphic elements at given places, in
 * layout pixels. Pure. A mark knows nothing of what it stands for.
 */

import { chartFont } from './chart-font.ts';
import type { Box } from './chart-frame.ts';
import { palette } from './palette.ts';

/** Whichever is higher is drawn later. */
const levels = { grid: 0, area: 1, line: 2, symbol: 4, text: 10 } as const;

export interface Label {
  readonly text: string;
  readonly x: number;
  /** Of the middle of the text. */
  readonly y: number;
  readonly align?: 'left' | 'center' | 'right';
  readonly fill?: string;
  readonly bold?: boolean;
  /** 13, or 15 when bold. */
  readonly fontSizePx?: number;
  /** Cut off with an ellipsis beyond. */
  readonly mostPx?: number;
}

export const lineHeightPx = 17;

export function textMark({ text, x, y, align = 'left', fill = palette.ink, ...label }: Label) {
  const { bold = false, fontSizePx = bold ? 15 : 13, mostPx } = label;
  return {
    type: 'text' as const,
    x,
    y,
    z: levels.text,
    silent: true,
    style: {
      text,
      fill,
      align,
      verticalAlign: 'middle' as const,
      fontFamily: chartFont,
      fontSize: fontSizePx,
      lineHeight: lineHeightPx,
      fontWeight: bold ? ('bold' as const) : ('normal' as const),
      // An edge in the card's colour keeps the letters readable where a line passes behind them.
      stroke: palette.card,
      lineWidth: 4,
      ...(mostPx === undefined ? {} : { width: mostPx, overflow: 'truncate' as const, ellipsis: '…' }),
    },
  };
}

/** A longer text, broken into lines of at most `widthPx`; `y` is its top. */
export function paragraphMark({ text, x, y, widthPx }: Label & { readonly widthPx: number }) {
  const mark = textMark({ text, x, y });
  return {
    ...mark,
    style: { ...mark.style, verticalAlign: 'top' as const, width: widthPx, overflow: 'break' as const },
  };
}

export type Point = readonly [x: number, y: number];

interface Stroke {
  readonly stroke: string;
  readonly widthPx?: number;
  /** Lengths drawn and left out, in turn. */
  readonly dash?: readonly number[];
  /** Below the areas, as a grid is. */
  readonly under?: boolean;
}

/** A line through all points. */
export function lineMark(points: readonly Point[], { stroke, widthPx = 1, dash, under = false }: Stroke) {
  return {
    type: 'polyline' as const,
    z: under ? levels.grid : levels.line,
    silent: true,
    shape: { points: points.map(([x, y]) => [x, y]) },
    style: { fill: 'none', stroke, lineWidth: widthPx, ...(dash ? { lineDash: [...dash] } : {}) },
  };
}

export function areaMark({ left, right, top, bottom }: Box, fill: string, stroke?: string) {
  return {
    type: 'rect' as const,
    z: levels.area,
    silent: true,
    shape: { x: left, y: top, width: right - left, height: bottom - top },
    style: { fill, ...(stroke === undefined ? {} : { stroke, lineWidth: 1 }) },
  };
}

/** Closed shapes may be filled or open; `cross`, `tick` and `dash` are strokes. */
export type SymbolShape = 'circle' | 'square' | 'diamond' | 'triangle' | 'cross' | 'tick' | 'dash';

interface SymbolLook {
  readonly colour: string;
  /** Half the width. */
  readonly radiusPx: number;
  /** Open: only its outline, on the card's colour. `ring`: only its outline, on nothing. */
  readonly body?: 'filled' | 'open' | 'ring';
  readonly widthPx?: number;
}

/** Around the middle of a symbol, as multiples of its radius. */
const corners: Readonly<Record<'square' | 'diamond' | 'triangle', readonly Point[]>> = {
  square: [
    [-0.9, -0.9],
    [0.9, -0.9],
    [0.9, 0.9],
    [-0.9, 0.9],
  ],
  diamond: [
    [0, -1.25],
    [1.25, 0],
    [0, 1.25],
    [-1.25, 0],
  ],
  triangle: [
    [0, -1.2],
    [1.15, 0.85],
    [-1.15, 0.85],
  ],
};
const strokes: Readonly<Record<'cross' | 'tick' | 'dash', readonly (readonly Point[])[]>> = {
  cross: [
    [
      [-0.8, -0.8],
      [0.8, 0.8],
    ],
    [
      [-0.8, 0.8],
      [0.8, -0.8],
    ],
  ],
  tick: [
    [
      [-1, 0.1],
      [-0.3, 0.8],
      [1, -0.8],
    ],
  ],
  dash: [
    [
      [-0.9, 0],
      [0.9, 0],
    ],
  ],
};

export function symbolMarks(shape: SymbolShape, [x, y]: Point, look: SymbolLook): SymbolMark[] {
  const { colour, radiusPx, body = 'filled', widthPx = 2 } = look;
  const fill = body === 'filled' ? colour : body === 'open' ? palette.card : 'none';
  const style = { fill, stroke: colour, lineWidth: widthPx };
  const at = ([dx, dy]: Point): number[] => [x + dx * radiusPx, y + dy * radiusPx];
  if (shape === 'circle') return [circleMark(x, y, radiusPx, style)];
  if (shape in strokes) {
    return strokes[shape as keyof typeof strokes].map((ends) =>
      cornersMark('polyline', ends.map(at), { ...style, fill: 'none' }),
    );
  }
  return [cornersMark('polygon', corners[shape as keyof typeof corners].map(at), style)];
}

interface SymbolStyle {
  readonly fill: string;
  readonly stroke: string;
  readonly lineWidth: number;
}

function circleMark(cx: number, cy: number, r: number, style: SymbolStyle) {
  return { type: 'circle' as const, z: levels.symbol, silent: true, shape: { cx, cy, r }, style };
}

function cornersMark(type: 'polyline' | 'polygon', points: number[][], style: SymbolStyle) {
  return { type, z: levels.symbol, silent: true, shape: { points }, style };
}

type SymbolMark = ReturnType<typeof circleMark> | ReturnType<typeof cornersMark>;

export type Mark =
  | ReturnType<typeof textMark>
  | ReturnType<typeof paragraphMark>
  | ReturnType<typeof lineMark>
  | ReturnType<typeof areaMark>
  | SymbolMark;
