/** The bodies of work that a team keeps: their dates, how these moved, and how old what they go by is. */
import type { KeptAdvice } from '../app/advice/advice.ts';
import { datesOf } from '../app/bodies/body-of-work.ts';
import type { EndedBody, KeptBodyReply } from '../app/bodies/keep-bodies.ts';
import { type MovedDate, movedDates } from '../app/bodies/moved-dates.ts';
import { dayAt } from '../app/clock/local-time.ts';
import { MOST_SPRINTS, RELEASE_CHANCES } from '../forecast/release-forecast.ts';
import type { AdviceWords } from './advice.ts';
import { shortDate, toTenths } from './amounts.ts';
import { mrkdwn, say } from './say.ts';
import { noAnswer } from './undefined.ts';

type Kept = KeptAdvice['bodies'][number];

export function keptWords(advice: KeptAdvice): AdviceWords {
  const { bodies, startsOn } = advice;
  const [first] = bodies;
  if (!first) {
    return {
      lead: say('kept-lead-none'),
      evidence: [mrkdwn('kept-none'), ...doneLines(advice)],
      details: [],
      unknown: [],
      isAnswered: false,
    };
  }
  if ('undefined' in first.forecast) {
    return {
      lead: noAnswer('forecast', first.forecast.undefined),
      evidence: [...bodies.map(nameLine), mrkdwn('advice-import-hint')],
      details: [],
      unknown: [],
      isAnswered: false,
    };
  }
  return {
    lead: leadOf(first),
    evidence: [...bodies.map((kept, i) => lineOf(kept, i + 1, advice)), ...sayLeft(bodies)],
    details: [
      [...bodies.map(datesLine), ...growthLines(bodies)].join('\n'),
      ...(bodies.length > 1 ? [mrkdwn('kept-turn')] : []),
      [mrkdwn('kept-again'), ...doneLines(advice)].join(' '),
    ],
    unknown: [
      mrkdwn('kept-unknown-running', { startsOn }),
      ...(bodies.length > 1 ? [mrkdwn('kept-unknown-order')] : [mrkdwn('forecast-unknown-other-work')]),
      mrkdwn('forecast-unknown-size'),
      mrkdwn('forecast-unknown-future'),
    ],
    isAnswered: true,
  };
}

function leadOf({ body: { name, leftPoints: points }, forecast }: Kept): string {
  const { likelyOn: likely, pessimisticOn: pessimistic } = shownDates(forecast);
  const [, likelyChance, pessimisticChance] = RELEASE_CHANCES;
  const about = { name, points };
  if (likely === undefined) return say('kept-lead-no-date', { ...about, sprints: MOST_SPRINTS });
  return pessimistic === undefined
    ? say('kept-lead-no-promise', { ...about, likely, likelyChance, sprints: MOST_SPRINTS })
    : say('kept-lead', { ...about, likely, likelyChance, pessimistic, pessimisticChance });
}

function shownDates(forecast: Kept['forecast']): Partial<ReturnType<typeof datesOf>> {
  return 'undefined' in forecast ? {} : datesOf(forecast);
}

function lineOf(kept: Kept, number: number, advice: KeptAdvice): string {
  const { body, forecast, sprintsSinceSaid: sprints } = kept;
  const { likelyOn: likely, pessimisticOn: pessimistic } = shownDates(forecast);
  const about = { number, name: body.name, points: body.leftPoints };
  const dates =
    likely === undefined
      ? mrkdwn('kept-line-no-date', { ...about, sprints: MOST_SPRINTS })
      : pessimistic === undefined
        ? mrkdwn('kept-line-no-promise', { ...about, likely })
        : mrkdwn('kept-line', { ...about, likely, pessimistic });
  return [
    dates,
    ...shareWords(kept),
    ...movedWords(kept, advice),
    ...(sprints === 0 ? [] : [mrkdwn('kept-stale', { sprints, points: body.leftPoints })]),
  ].join(' ');
}

function nameLine({ body: { name, leftPoints } }: Kept): string {
  return mrkdwn('kept-name', { name, points: leftPoints });
}

function shareWords({ body: { sharePercent } }: Kept): string[] {
  return sharePercent === undefined ? [] : [mrkdwn('kept-share', { share: sharePercent / 100 })];
}

function movedWords(kept: Kept, { on }: KeptAdvice): string[] {
  const moved = movedDates(kept, on);
  if (!moved) return kept.told.some(({ toldOn }) => toldOn < on) ? [] : [mrkdwn('kept-first-told')];
  const { lately, inAll } = moved;
  return [
    mrkdwn('kept-moved', wayOf(lately)),
    ...(inAll === undefined ? [] : [mrkdwn('kept-moved-in-all', wayOf(inAll))]),
  ];
}

function wayOf({ since, days }: MovedDate) {
  const way = days === 0 ? 'neither' : days > 0 ? 'later' : 'earlier';
  return { since, days: Math.abs(days), way } as const;
}

/** How to bring the first of those up to date that go by an old number. */
function sayLeft(bodies: readonly Kept[]): string[] {
  const stale = bodies.find(({ sprintsSinceSaid }) => sprintsSinceSaid > 0);
  if (!stale) return [];
  const { name, leftPoints: points } = stale.body;
  return [mrkdwn('kept-say-left', { name, points })];
}

function datesLine({ body: { name }, forecast }: Kept): string {
  const { optimisticOn, likelyOn, pessimisticOn } = shownDates(forecast);
  const [optimisticChance, likelyChance, pessimisticChance] = RELEASE_CHANCES;
  const shown = (on: string | undefined): string => (on === undefined ? say('kept-no-date') : shortDate(on));
  const dates = {
    optimistic: shown(optimisticOn),
    likely: shown(likelyOn),
    pessimistic: shown(pessimisticOn),
  };
  return `• ${mrkdwn('kept-dates', { name, ...dates, optimisticChance, likelyChance, pessimisticChance })}`;
}

function growthLines(bodies: readonly Kept[]): string[] {
  return bodies.flatMap(({ body: { name }, growth }) =>
    growth.points > 0 ? [`• ${mrkdwn('kept-growth', { name, points: toTenths(growth.points) })}`] : [],
  );
}

function doneLines({ done, team }: KeptAdvice): string[] {
  return done.map(({ body: { name, doneAt }, told }) => {
    const on = dayAt(doneAt ?? new Date(0), team.timeZone);
    const first = told.find(({ likelyOn }) => likelyOn !== undefined);
    return first?.likelyOn === undefined
      ? mrkdwn('kept-done', { name, on })
      : mrkdwn('kept-done-told', { name, on, since: first.toldOn, likely: first.likelyOn });
  });
}

/** What was done with a body of work, as plain text. */
export function keptSentence({ body, before }: KeptBodyReply): string {
  const about = { name: body.name, points: body.leftPoints };
  if (!before) return say('kept-new', about);
  return before.leftPoints === body.leftPoints
    ? say('kept-changed', about)
    : say('kept-again-said', { ...about, before: before.leftPoints });
}

export function endedSentence({ body: { name }, how, told }: EndedBody): string {
  const ended = say('kept-ended', { name, how });
  const first = told.find(({ likelyOn }) => likelyOn !== undefined);
  if (how !== 'done' || first?.likelyOn === undefined) return ended;
  return `${ended} ${say('kept-ended-told', { since: first.toldOn, likely: first.likelyOn })}`;
}
