/** The words of the picture of a joint date: above it, beside its lines, and in place of it. */
import type { JointAdvice } from '../../app/advice/advice.ts';
import type { JointDate } from '../../forecast/joint-release.ts';
import { shortDate } from '../amounts.ts';
import { say } from '../say.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

export function jointHeading({ name, teamNames }: JointAdvice): ChartHeading {
  return {
    title: say('joint-chart-title'),
    name,
    subtitle: say('joint-chart-basis', { parts: teamNames.length }),
  };
}

/** Beside a mark: how sure it is, and the day. */
export function jointDateLines({ chance, surely }: JointDate): string[] {
  if (surely === undefined) return [];
  return [say('joint-chart-surely', { chance }), shortDate(surely)];
}

const MOST_DAYS = 10;

export function jointAltText({ name, teamNames, joint }: JointAdvice): string {
  const subject = say('joint-alt-subject', { name: shortName(name), parts: teamNames.length });
  if (!joint) return subject;
  const { curve } = joint;
  return altTextOf(MOST_DAYS, (most) => {
    const each = Math.max(1, Math.ceil((curve.length - 1) / Math.max(1, most)));
    const said = curve.filter((_, i) => (curve.length - 1 - i) % each === 0);
    const chances = said.map(({ on, least, most: best }) =>
      say('joint-alt-chance', { on, least, most: best }),
    );
    return [subject, say('joint-alt-chances', { chances })];
  });
}
