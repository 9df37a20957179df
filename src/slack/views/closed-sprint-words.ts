/** Sprints that are over, and numbers about them, as people read them. */
import { formatDay } from '../../sprint/calendar.ts';
import { plainTyped, shortened } from '../../words/typed-text.ts';
import { OPTION_MAX_LENGTH } from './form-inputs.ts';

/** A day that may lie years back: `Fri 13 Nov 2026`. */
export function datedDay(day: string): string {
  return `${formatDay(day)} ${day.slice(0, 4)}`;
}

/** Shorter ones are read at a glance. */
const LONGEST_WITHOUT_GAPS = 4;

/**
 * A number in any unit, with a narrow gap between thousands, which nobody takes for a decimal sign: `1200`,
 * `−12 500.5`.
 */
export function formatValue(value: number): string {
  const [whole = '', decimals] = String(Math.abs(value)).split('.');
  const grouped = whole.length > LONGEST_WITHOUT_GAPS ? whole.replace(/\B(?=(?:\d{3})+$)/g, '\u202F') : whole;
  return `${value < 0 ? '-' : ''}${grouped}${decimals === undefined ? '' : `.${decimals}`}`;
}

/**
 * A closed sprint in a list of choices, its name cut so that what is said of it is always to be seen.
 *
 * @param said at most 30 characters
 * @param head at most 10 characters before the name
 */
export function sprintChoiceLabel(
  { name, endsOn }: { readonly name: string; readonly endsOn: string },
  said: string,
  head = '',
): string {
  const tail = `, ended ${datedDay(endsOn)}: ${said}`;
  const room = OPTION_MAX_LENGTH - head.length - tail.length;
  return `${head}${shortened(plainTyped(name), room)}${tail}`;
}
