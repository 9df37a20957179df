/** Invented parts of several teams, and what is told of them together. */
import type { JointAdvice } from '../../src/app/advice/advice.ts';
import { jointCurve, jointDates, type PartForecast } from '../../src/forecast/joint-release.ts';
import { exampleTeam } from './past-examples.ts';

const rising = [0, 0, 0.05, 0.2, 0.45, 0.65, 0.8, 0.9, 0.96, 0.985, 0.995];
const part = (chanceBySprint: readonly number[], startsOn = '2026-11-16'): PartForecast => ({
  startsOn,
  sprintLengthDays: 14,
  chanceBySprint,
});

function jointAdvice(parts: readonly PartForecast[], change: Partial<JointAdvice> = {}): JointAdvice {
  return {
    question: { about: 'joint' },
    team: exampleTeam,
    on: '2026-11-13',
    name: 'Harbour lights',
    teamNames: parts.map((_, i) => `Crew ${i + 1}`),
    staleTeamNames: [],
    unknownTeamNames: [],
    joint: { dates: jointDates(parts), curve: jointCurve(parts, 100) },
    ...change,
  };
}

export const ordinaryJoint = jointAdvice([
  part(rising),
  part(rising.slice(1), '2026-11-23'),
  part(rising.slice(2)),
]);
export const jointSoon = jointAdvice([part([0, 1]), part([0, 1])]);
export const jointWithoutEnd = jointAdvice([part(rising.slice(0, 7)), part(rising)]);
export const jointNever = jointAdvice([part([0, 0.1]), part([0, 0.1])]);
export const jointUnknown = jointAdvice([part(rising), part(rising)], {
  joint: undefined,
  unknownTeamNames: ['Crew 2'],
});
