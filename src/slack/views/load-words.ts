/** The mid-sprint reading in sentences: first what it comes to, then what it rests on and does not know. */
import type { LoadOutlook, ProjectionReading } from '../../app/watching/load-outlook.ts';
import { LEAST_SCORES } from '../../forecast/coverage-keeper.ts';
import type { Pace } from '../../forecast/pace.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { COMMAND } from '../ids.ts';
import { code } from './block-builders.ts';
import { chanceWords } from './chance-words.ts';
import { counted } from './sprint-words.ts';

/** Below so many past sprints' worth of likeness the guess is mostly caution. */
const FEW_ALIKE_SPRINTS = 2;
const NEVER_CERTAIN = 0.001;

/** The reading in one or two sentences. */
export function loadWords(load: LoadOutlook): string {
  switch (load.from) {
    case 'projection':
      return `${signalSentence(load.reading)} ${endSentence(load.reading)}`;
    case 'pace':
      return paceSentence(load.pace);
    case 'nothing':
      return `No load signal. ${reasonSentence(load.because)}`;
  }
}

/** What the reading rests on and does not know; empty when there is none. */
export function loadEvidenceWords(load: LoadOutlook): string {
  switch (load.from) {
    case 'projection':
      return `${evidenceSentence(load.reading)} It does not know who will be away, what kind of work the open cards hold, or what has not been answered yet.`;
    case 'pace': {
      const { ownSprints, neededSprints } = load;
      return `This is the plain pace of this sprint, which treats every day the same. From ${neededSprints} closed sprints on, the team's own history tells how likely the commitment is to be kept; there ${ownSprints === 1 ? 'is 1' : `are ${ownSprints}`} so far. Past sprints can be brought in with ${code(`${COMMAND} import`)}.`;
    }
    case 'nothing':
      return '';
  }
}

function signalSentence(reading: ProjectionReading): string {
  const { signal, keepingChance, allFinishedChance, cardPoints, finishedPoints } = reading;
  const all = `${likely(allFinishedChance)} likely to finish everything`;
  if (signal === undefined || keepingChance === undefined) {
    return `No load signal: nothing had been committed to, so there is nothing to keep. The team is ${all} that is in the sprint.`;
  }
  const keep = `${likely(keepingChance)} likely to keep the commitment`;
  if (signal === 'heavy') return `The load is heavy: ${keep}.`;
  if (finishedPoints >= cardPoints)
    return `The load is ${signal}: everything that is in the sprint is finished.`;
  return signal === 'light' ? `The load is light: ${all}.` : `The load is on the line: ${keep}, ${all}.`;
}

/** What is to come is never certain, even where no past sprint speaks against it. */
function likely(chance: number): string {
  return chanceWords(Math.min(Math.max(chance, NEVER_CERTAIN), 1 - NEVER_CERTAIN));
}

/** Intervals are rounded outwards, so that they hold no less than they promise. */
function endSentence({ medianPoints, narrow, wide, watchedSprints }: ProjectionReading): string {
  const between = ({ low, high }: ProjectionReading['wide']): string => {
    const [from, to] = [Math.floor(low), Math.ceil(high)];
    return from === to ? `at ${formatPoints(to)}` : `between ${formatPoints(from)} and ${formatPoints(to)}`;
  };
  const end = `By the end probably about ${formatPointsWithUnit(Math.round(medianPoints))} finished`;
  if (watchedSprints < LEAST_SCORES) {
    return `${end}. How far off that may be can be told once ${LEAST_SCORES} sprints have been watched to their end.`;
  }
  const half = between(narrow) === between(wide) ? '' : `, half of them ${between(narrow)}`;
  return `${end}: 8 in 10 sprints like this end ${between(wide)}${half}.`;
}

function evidenceSentence({ ownSprints, alikeSprints, othersLend }: ProjectionReading): string {
  const others = othersLend ? ', and a little from other teams' : '';
  const alike =
    alikeSprints < FEW_ALIKE_SPRINTS ? ' Hardly any of them was like this one, so the answer is wide.' : '';
  return `Told from ${counted(ownSprints, 'closed sprint')} of the team, those most like this one counting most${others}.${alike}`;
}

/** Points to come are no exact number, so they are told in whole points. */
function about(points: number): string {
  return `about ${formatPointsWithUnit(Math.round(Math.abs(points)))}`;
}

function paceSentence(pace: Pace): string {
  if (pace.signal === undefined) return `No load signal yet. ${reasonSentence(pace.because)}`;
  const { signal, projectedLeftPoints: points } = pace;
  switch (signal) {
    case 'heavy':
      return `The load is heavy: at the pace so far, ${about(points)} will be left at the end.`;
    case 'light':
      return `The load is light: at the pace so far, there is room for ${about(points)} more.`;
    case 'on the line':
      return `The load is on the line: at the pace so far, ${evenFinish(points)}.`;
  }
}

function evenFinish(projectedLeftPoints: number): string {
  if (Math.round(projectedLeftPoints) === 0) return 'everything will be finished just in time';
  return projectedLeftPoints > 0
    ? `${about(projectedLeftPoints)} will be left at the end`
    : `everything will be finished, with room for ${about(projectedLeftPoints)} more`;
}
