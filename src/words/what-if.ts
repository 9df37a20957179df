/** What a change would do to the chances of the running sprint. As mrkdwn. */
import type { WhatIfAnswer } from '../app/watching/what-if.ts';
import { linkedCardName } from './cards.ts';
import { loadEvidenceWords, loadWords, uncertain } from './load.ts';
import { type Markup, markup, mrkdwn } from './say.ts';

/** One sentence with the chances before and after. */
export function whatIfSentence(answer: WhatIfAnswer): string {
  const { chances, floor, hasPlan } = answer;
  const changes = changesOf(answer);
  if (!chances) return mrkdwn('what-if-unknown', { changes });
  const [allNow, allThen] = [uncertain(chances.now.all), uncertain(chances.changed.all)];
  if (!hasPlan) return mrkdwn('what-if-all', { changes, allNow, allThen });
  const [keptNow, keptThen] = [uncertain(chances.now.kept), uncertain(chances.changed.kept)];
  const moves = Math.round(100 * keptNow) === Math.round(100 * keptThen) ? 'not' : 'so';
  return mrkdwn('what-if-kept', { moves, changes, floor, keptNow, keptThen, allNow, allThen });
}

function changesOf({ without, awayDays, morePoints }: WhatIfAnswer): Markup {
  const all = [
    ...(without
      ? [markup('what-if-card-out', { card: linkedCardName(without), points: without.estimatePoints })]
      : []),
    ...(awayDays > 0 ? [markup('what-if-days-away', { days: awayDays })] : []),
    ...(morePoints > 0 ? [markup('what-if-points-more', { points: morePoints })] : []),
  ];
  return markup('what-if-changes', { changes: all });
}

/** What was assumed, and what the chances are based on. */
export function whatIfBasis(answer: WhatIfAnswer): string[] {
  const { without, awayDays, memberDaysLeft, load, chances } = answer;
  if (!chances) return [loadWords(load), loadEvidenceWords(load)].filter((words) => words !== '');
  return [
    ...(without?.origin === 'planned'
      ? [mrkdwn('what-if-committed-card', { card: linkedCardName(without) })]
      : []),
    ...(awayDays > 0 ? [mrkdwn('what-if-average-day', { share: 1 / memberDaysLeft })] : []),
    loadEvidenceWords(load),
  ];
}
