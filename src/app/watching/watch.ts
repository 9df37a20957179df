/** What a facilitator hears of by themselves while a sprint runs. Pure. */
import type { LoadSignal } from '../../forecast/pace.ts';
import type { Day } from '../../sprint/calendar.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import type { Watch } from '../ports/watches.ts';
import type { LoadOutlook } from './load-outlook.ts';

/** Ratios that have a ceiling in a running sprint, with the threshold that it is. */
const CEILINGS = { surpriseRatio: 'surpriseRatioAtMost', pullInRatio: 'pullInRatioAtMost' } as const;
type Ceiling = keyof typeof CEILINGS;
const CEILING_NAMES = Object.keys(CEILINGS) as readonly Ceiling[];

/** Something worth a word. */
export type Word = 'turned-light' | 'turned-on-the-line' | 'turned-heavy' | `above-${Ceiling}`;

const TURNED = { light: 'turned-light', 'on the line': 'turned-on-the-line', heavy: 'turned-heavy' } as const;

/** The reading without what it is based on; undefined when there is none. */
export function signalOf(load: LoadOutlook): LoadSignal | undefined {
  if (load.from === 'projection') return load.reading.signal;
  return load.from === 'pace' ? load.pace.signal : undefined;
}

/**
 * What is new since the last word. The signal is spoken of at most once a day: one that wavers between two readings would
 * fill the morning with messages. A ceiling is spoken of once.
 */
export function newWords(
  watch: Watch,
  today: Day,
  load: LoadOutlook,
  { ratios }: Pick<SprintSummary, 'ratios'>,
  thresholds: Thresholds,
): { words: Word[]; watch: Watch } {
  const signal = signalOf(load);
  const isTurned = signal !== undefined && watch.signal !== undefined && signal !== watch.signal;
  const mayTell = watch.signalToldOn !== today;
  const crossed = CEILING_NAMES.filter((ratio) => {
    const value = ratios[ratio];
    return isDefined(value) && value > thresholds[CEILINGS[ratio]] && !watch.ceilingsTold.includes(ratio);
  });
  return {
    words: [
      ...(isTurned && mayTell ? [TURNED[signal]] : []),
      ...crossed.map((ratio): Word => `above-${ratio}`),
    ],
    watch: {
      ...watch,
      signal: isTurned && !mayTell ? watch.signal : (signal ?? watch.signal),
      signalToldOn: isTurned && mayTell ? today : watch.signalToldOn,
      ceilingsTold: [...watch.ceilingsTold, ...crossed],
    },
  };
}

/** The ratio that a word is about, beside its ceiling; undefined when the word is about the signal. */
export function crossing(
  word: Word,
  { ratios }: Pick<SprintSummary, 'ratios'>,
  thresholds: Thresholds,
): { value: number; ceiling: number } | undefined {
  const ratio = CEILING_NAMES.find((name) => word === `above-${name}`);
  const value = ratio && ratios[ratio];
  if (ratio === undefined || value === undefined || !isDefined(value)) return undefined;
  return { value, ceiling: thresholds[CEILINGS[ratio]] };
}
