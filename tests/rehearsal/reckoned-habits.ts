/**
 * Which notes on habits a sprint of a scenario calls for, worked out a second time: repeated carry-over and a low
 * answer rate. Imports nothing from `src/`.
 */
import type { ReckonedSprint, Tally } from './independent-reckoning.ts';

type Habits = Pick<ReckonedSprint, 'cards' | 'heard' | 'idle'> & {
  /** `member day` of every question. */
  readonly asked: readonly string[];
};

/**
 * @param before the last sprint before this one that was not cancelled; undefined for the first
 */
export function habitsCrossed(sprint: Habits, before: Pick<Habits, 'cards'> | undefined): string[] {
  const crossed: string[] = [];
  const openThen = new Set((before?.cards ?? []).filter(isOpen).map(nameOf));
  if (sprint.cards.some((card) => isOpen(card) && openThen.has(nameOf(card)))) crossed.push('carry-over');
  let met = 0;
  let missed = 0;
  for (const key of sprint.asked) {
    if (sprint.heard.has(key)) met += 1;
    // A person with nothing left by the evening has nothing to say.
    else if (!sprint.idle.has(key)) missed += 1;
  }
  // Below four in five, without dividing.
  if (met < 4 * missed) crossed.push('answers');
  return crossed;
}

function isOpen({ finished, dropped }: Tally): boolean {
  return !finished && !dropped;
}

/** The team's own key; the bot does not get a key that it would not recognise, and then the title counts. */
function nameOf({ key, title }: Tally): string {
  const isOwnKey = /^[a-z][a-z0-9]{0,9}-\d{1,7}$/i.test(key);
  return (isOwnKey ? `key ${key}` : `title ${title.trim().replaceAll(/\s+/g, ' ')}`).toLowerCase();
}
