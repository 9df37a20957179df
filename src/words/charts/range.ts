/** The words of the commitment range: above it, beside its marks, and in place of it. */
import type { RangeAdvice } from '../../app/advice/advice.ts';
import { shownSprints } from '../../app/advice/shown-in-chart.ts';
import { type PastSprint, pastVerdict } from '../../app/history/past-sprint.ts';
import { type AdvisedRange, advisedRange } from '../../forecast/advised-range.ts';
import { number } from '../amounts.ts';
import { commitSentence } from '../range.ts';
import { say } from '../say.ts';
import { noAnswer, reasonSentence } from '../undefined.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

export function rangeHeading(advice: RangeAdvice): ChartHeading {
  const { range, team } = advice;
  const advised = advisedRange(range);
  const imported = shownSprints(advice).filter(({ importedAt }) => importedAt !== undefined).length;
  const importedSentences = imported === 0 ? [] : [say('chart-sprints-imported', { sprints: imported })];
  const sentences = [
    advisedSentence(advised),
    // Why there is no range takes all the room there is.
    ...(advised.kind === 'none' ? [] : [...basisSentences(advice), ...importedSentences]),
  ];
  return { title: say('range-chart-title'), name: team.name, subtitle: sentences.join(' ') };
}

function advisedSentence(advised: AdvisedRange): string {
  return advised.kind === 'none' ? noAnswer('range', advised.why) : commitSentence(advised);
}

function basisSentences({ range }: RangeAdvice): string[] {
  return 'undefined' in range ? [] : [say('range-chart-basis', { sprints: range.sprints })];
}

/** `18 to 26`, `at most 24`, `about 24`, `no range` */
export function advisedPoints(advised: AdvisedRange): string {
  switch (advised.kind) {
    case 'range': {
      const { lowPoints: low, highPoints: high } = advised;
      return say('range-chart-advised', { kind: low === high ? 'exactly' : 'between', low, high });
    }
    case 'at least':
      return say('range-chart-advised', { kind: 'at-least', low: advised.lowPoints, high: 0 });
    case 'at most':
    case 'crossed':
      return say('range-chart-advised', { kind: 'at-most', low: 0, high: advised.highPoints });
    case 'middle way':
      return say('range-chart-advised', { kind: 'about', low: 0, high: advised.points });
    case 'none':
      return say('range-chart-advised', { kind: 'none', low: 0, high: 0 });
  }
}

/** In the table: a dash for what nobody recorded, whole points from 100 on. */
export function tablePoints(points: number | undefined): string {
  return points === undefined ? say('chart-unknown') : number(points < 100 ? points : Math.round(points));
}

/** The range first, then the past sprints, latest first. Their names are the first thing to go. */
export function rangeAltText(advice: RangeAdvice): string {
  const { coming, range, team } = advice;
  const past = shownSprints(advice).toReversed();
  const subject = { team: shortName(team.name), from: coming.startsOn, to: coming.endsOn };
  const advised = advisedRange(range);
  const summary = [
    say('range-alt-subject', subject),
    advisedSentence(advised),
    ...endsSentences(advised),
    ...basisSentences(advice),
    ...(past.length === 0 ? [say('range-alt-no-sprints')] : []),
  ];
  return altTextOf(past.length + 1, (details) => {
    const told = past.slice(0, details);
    const leftOut = past.length - told.length;
    return [
      ...summary,
      ...(told.length === 0 ? [] : [say('range-alt-sprints')]),
      ...told.map((sprint) => sprintSentence(sprint, advice, details > past.length)),
      ...(leftOut === 0 ? [] : [say('range-alt-sprints-left-out', { sprints: leftOut })]),
    ];
  });
}

/** What else is to know of ends that are not simply advised. */
function endsSentences(advised: AdvisedRange): string[] {
  switch (advised.kind) {
    case 'at most':
      return [say('range-low-end-unknown'), reasonSentence(advised.why)];
    case 'at least':
      return [say('range-high-end-unknown'), reasonSentence(advised.why)];
    case 'crossed':
      return [say('range-alt-crossed', { low: advised.lowPoints }), reasonSentence(advised.why)];
    case 'middle way': {
      const { lowPoints: low, highPoints: high, chance, why } = advised;
      return [say('range-alt-compromise', { low, high, chance }), reasonSentence(why)];
    }
    default:
      return [];
  }
}

function sprintSentence(sprint: PastSprint, advice: RangeAdvice, isNamed: boolean): string {
  const { name, endsOn: on, commitmentPoints, pulledInPoints, velocityPoints, importedAt } = sprint;
  const facts = [
    say('range-alt-sprint-commitment', { points: commitmentPoints }),
    pulledInPoints === undefined
      ? say('range-alt-sprint-pulled-in-unknown')
      : say('range-alt-sprint-pulled-in', { points: pulledInPoints }),
    velocityPoints === undefined
      ? say('range-past-velocity-unknown')
      : say('range-past-velocity', { points: velocityPoints }),
    verdictWord(pastVerdict(sprint, advice)),
    ...(importedAt === undefined ? [] : [say('range-alt-sprint-imported')]),
  ];
  return isNamed
    ? say('range-alt-named-sprint', { name: shortName(name), on, facts })
    : say('range-alt-sprint', { on, facts });
}

/** As in the key of the picture. */
export function verdictWord(verdict: ReturnType<typeof pastVerdict>): string {
  switch (verdict) {
    case 'kept':
      return say('range-chart-kept');
    case 'missed':
      return say('range-chart-missed');
    case 'no plan':
      return say('range-chart-no-plan');
    case 'not-known':
      return say('range-alt-sprint-verdict-unknown');
  }
}
