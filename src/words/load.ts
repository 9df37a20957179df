/** The mid-sprint reading: first what it comes to, then what it is based on and doesn't know. As mrkdwn. */
import type { LoadOutlook, ProjectionReading } from '../app/watching/load-outlook.ts';
import { LEAST_SCORES } from '../forecast/coverage-keeper.ts';
import type { Pace } from '../forecast/pace.ts';
import { mrkdwn } from './say.ts';
import { reasonSentence } from './undefined.ts';

/** Below so many past sprints' worth of likeness the guess is mostly caution. */
const FEW_ALIKE_SPRINTS = 2;
const NEVER_CERTAIN = 0.001;

/** The reading in one or two sentences. */
export function loadWords(load: LoadOutlook): string {
  switch (load.from) {
    case 'projection':
      return [signalSentence(load.reading), ...endSentences(load.reading)].join(' ');
    case 'pace':
      return paceSentence(load.pace);
    case 'nothing':
      return `${mrkdwn('load-none')} ${reasonSentence(load.because)}`;
  }
}

/** The reading in one sentence. */
export function loadSentence(load: LoadOutlook): string {
  return load.from === 'projection' ? signalSentence(load.reading) : loadWords(load);
}

/** What the reading is based on and doesn't know; empty when there is none. */
export function loadEvidenceWords(load: LoadOutlook): string {
  switch (load.from) {
    case 'projection':
      return evidenceSentences(load.reading).join(' ');
    case 'pace':
      return [
        ...(load.pace.signal === undefined ? [] : [mrkdwn('load-pace-plain')]),
        mrkdwn('load-pace-history', { needed: load.neededSprints, sprints: load.ownSprints }),
      ].join(' ');
    case 'nothing':
      return '';
  }
}

function signalSentence(reading: ProjectionReading): string {
  const { signal, keepingChance, allFinishedChance, cardPoints, finishedPoints, keptFloor: floor } = reading;
  const all = uncertain(allFinishedChance);
  if (signal === undefined || keepingChance === undefined) return mrkdwn('load-no-commitment', { all });
  const keep = uncertain(keepingChance);
  if (reading.isAllNeeded && signal !== 'light') {
    return mrkdwn('load-all-needed', { signal: signal === 'heavy' ? signal : 'on-the-line', keep, floor });
  }
  if (signal === 'heavy') return mrkdwn('load-heavy', { keep, floor });
  if (finishedPoints >= cardPoints) {
    return mrkdwn('load-all-done', { signal: signal === 'light' ? 'light' : 'on-the-line' });
  }
  return signal === 'light'
    ? mrkdwn('load-light', { all })
    : mrkdwn('load-on-the-line', { keep, all, floor });
}

/** What is to come is never certain, even where no past sprint speaks against it. */
export function uncertain(chance: number): number {
  return Math.min(Math.max(chance, NEVER_CERTAIN), 1 - NEVER_CERTAIN);
}

/** Intervals are rounded outwards, so that they hold no less than they say. */
function endSentences({ medianPoints, narrow, wide, watchedSprints }: ProjectionReading): string[] {
  const end = mrkdwn('load-end', { points: Math.round(medianPoints) });
  if (watchedSprints < LEAST_SCORES) return [end, mrkdwn('load-end-unknown', { sprints: LEAST_SCORES })];
  const [inner, outer] = [narrow, wide].map(({ low, high }) => ({
    low: Math.floor(low),
    high: Math.ceil(high),
    ends: Math.floor(low) === Math.ceil(high) ? ('same' as const) : ('apart' as const),
  })) as [EndSpan, EndSpan];
  const isSame = inner.low === outer.low && inner.high === outer.high;
  return [end, mrkdwn('load-end-wide', outer), ...(isSame ? [] : [mrkdwn('load-end-narrow', inner)])];
}

interface EndSpan {
  readonly low: number;
  readonly high: number;
  readonly ends: 'same' | 'apart';
}

function evidenceSentences({ ownSprints, alikeSprints, othersLend, speaker }: ProjectionReading): string[] {
  return [
    mrkdwn('load-basis', { sprints: ownSprints }),
    ...(othersLend ? [mrkdwn('load-basis-others')] : []),
    ...(speaker ? [mrkdwn('load-basis-model', { ...speaker })] : []),
    ...(alikeSprints < FEW_ALIKE_SPRINTS ? [mrkdwn('load-basis-unlike')] : []),
    mrkdwn('load-unknown'),
  ];
}

function paceSentence(pace: Pace): string {
  if (pace.signal === undefined) {
    return `${mrkdwn('load-none-yet')} ${reasonSentence(pace.because)}`;
  }
  const { signal, projectedLeftPoints, isEarly, daysGone: days } = pace;
  if (isEarly) {
    return mrkdwn('load-pace-early', { signal: signal === 'on the line' ? 'on-the-line' : signal, days });
  }
  // Points to come are no exact number, so they are whole.
  const points = Math.round(Math.abs(projectedLeftPoints));
  switch (signal) {
    case 'heavy':
    case 'light':
      return mrkdwn(`load-pace-${signal}`, { points });
    case 'on the line':
      if (points === 0) return mrkdwn('load-pace-even');
      return mrkdwn(projectedLeftPoints > 0 ? 'load-pace-even-left' : 'load-pace-even-room', { points });
  }
}
