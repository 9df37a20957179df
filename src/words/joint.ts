/** When parts of several teams are all finished: one answer about all of them, and nothing of any one of them. */
import type { JointAdvice } from '../app/advice/advice.ts';
import type { JointDate } from '../forecast/joint-release.ts';
import type { AdviceWords } from './advice.ts';
import { mrkdwn, say } from './say.ts';

const MOST_NAMES = 6;

export function jointWords({
  name,
  joint,
  teamNames,
  unknownTeamNames,
  ...advice
}: JointAdvice): AdviceWords {
  const teams = { teams: fewNames(teamNames) };
  if (!joint) {
    return {
      lead: say('joint-lead-unknown', { name }),
      evidence: [
        mrkdwn('joint-unknown', { teams: fewNames(unknownTeamNames), count: unknownTeamNames.length }),
        mrkdwn('advice-import-hint'),
      ],
      details: [],
      unknown: [],
      isAnswered: false,
    };
  }
  const [even, promised] = joint.dates;
  const stale = advice.staleTeamNames;
  return {
    lead: leadOf(name, promised),
    evidence: [
      [...soonestWords(promised), evenWords(even), mrkdwn('joint-parts', teams)].join(' '),
      ...(stale.length === 0 ? [] : [mrkdwn('joint-stale', { teams: fewNames(stale), name })]),
    ],
    details: [],
    unknown: [
      mrkdwn('joint-unknown-together'),
      mrkdwn('joint-unknown-fit'),
      mrkdwn('joint-unknown-parts'),
      mrkdwn('forecast-unknown-future'),
    ],
    isAnswered: true,
  };
}

/** The first of them; of the others how many there are. */
function fewNames(names: readonly string[]): string[] {
  const more = names.length - MOST_NAMES;
  return [...names.slice(0, MOST_NAMES), ...(more > 0 ? [say('joint-more-teams', { count: more })] : [])];
}

function leadOf(name: string, { chance, surely }: JointDate): string {
  return surely === undefined
    ? say('joint-lead-none', { name, chance })
    : say('joint-lead', { name, chance, surely });
}

function soonestWords({ chance, surely, soonest }: JointDate): string[] {
  if (soonest === undefined || soonest === surely) return [];
  return [mrkdwn('joint-soonest', { chance, soonest })];
}

function evenWords({ chance, surely, soonest }: JointDate): string {
  if (soonest === undefined) return mrkdwn('joint-even-none', { chance });
  if (surely === undefined) return mrkdwn('joint-even-from', { chance, soonest });
  return surely === soonest
    ? mrkdwn('joint-even', { chance, surely })
    : mrkdwn('joint-even-between', { chance, soonest, surely });
}
