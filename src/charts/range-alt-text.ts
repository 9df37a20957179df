/** What the range picture shows, in sentences. Pure. */
import type { RangeAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { type AdvisedRange, advisedRange } from '../forecast/advised-range.ts';
import { wholePercent } from '../sprint/whole-percent.ts';
import { reasonSentence } from '../words/undefined.ts';
import { countText, fittingText, spokenName } from './alt-text.ts';
import { dateWithYear, daySpan } from './day-text.ts';
import { pastVerdict } from './past-verdict.ts';
import { pointsNumber, pointsText } from './points-text.ts';
import { shownSprints } from './range-layout.ts';

/** At most 2,000 characters: the range first, then each past sprint; long names go first when it is too much. */
export function rangeAltText(advice: RangeAdvice): string {
  const name = spokenName(advice.team.name);
  const whose = name === '' ? '' : ` of the team “${name}”`;
  const { coming, range, thresholds } = advice;
  const past = shownSprints(advice);
  const start = [
    `Commitment range${whose} for the sprint ${daySpan(coming.startsOn, coming.endsOn)}.`,
    advisedSentence(advisedRange(range)),
    ...('undefined' in range ? [] : [`Made from ${countText(range.sprints, 'sprint')} with a commitment.`]),
  ];
  const version = (named: boolean) =>
    [
      ...start,
      past.length === 0 ? 'No past sprint is shown.' : 'Past sprints, oldest first, in points:',
      ...past.map((sprint) => sprintText(sprint, pastVerdict(sprint, thresholds), named)),
    ].join(' ');
  return fittingText([version(true), version(false), start.join(' ')]);
}

function advisedSentence(advised: AdvisedRange): string {
  switch (advised.kind) {
    case 'range':
      return advised.lowPoints === advised.highPoints
        ? `Commit to ${pointsText(advised.highPoints)}.`
        : `Commit to ${pointsNumber(advised.lowPoints)} to ${pointsText(advised.highPoints)}.`;
    case 'at most':
      return `Commit to at most ${pointsText(advised.highPoints)}. The low end is not known. ${reasonSentence(advised.why)}`;
    case 'at least':
      return `Commit to at least ${pointsText(advised.lowPoints)}. The high end is not known. ${reasonSentence(advised.why)}`;
    case 'crossed':
      return `Commit to at most ${pointsText(advised.highPoints)}; the low end, ${pointsNumber(advised.lowPoints)}, lies above it. ${reasonSentence(advised.why)}`;
    case 'middle way':
      return (
        `Commit to about ${pointsText(advised.points)} as a compromise: the low end, ${pointsNumber(advised.lowPoints)}, lies above the high end, ` +
        `${pointsNumber(advised.highPoints)}, and at that size the chance to keep it and the chance not to pull in too much are ${wholePercent(advised.chance)} each. ${reasonSentence(advised.why)}`
      );
    case 'none':
      return `There is no range. ${reasonSentence(advised.why)}`;
  }
}

function sprintText(sprint: PastSprint, verdict: string, named: boolean): string {
  const { name, endsOn, importedAt, commitmentPoints, pulledInPoints, velocityPoints } = sprint;
  const amounts = [
    `commitment ${pointsNumber(commitmentPoints)}`,
    `pulled in ${amount(pulledInPoints)}`,
    `velocity ${amount(velocityPoints)}`,
    verdict === 'not known' ? 'verdict not known' : verdict,
    ...(importedAt === undefined ? [] : ['imported']),
  ];
  const which = named ? `“${spokenName(name)}” to ${dateWithYear(endsOn)}` : `to ${dateWithYear(endsOn)}`;
  return `${which}: ${amounts.join(', ')}.`;
}

function amount(points: number | undefined): string {
  return points === undefined ? 'not known' : pointsNumber(points);
}
