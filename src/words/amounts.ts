/** Amounts as bare text, for the few places that need one outside a message. */
import type { Day } from '../sprint/calendar.ts';
import { say, spokenLanguage } from './say.ts';

const MOST_DECIMALS = 9;

/** `80%`, `79.9%`; 1 means 100%. Beside a threshold use `against`, for 79.96% would look here as if it reached 80%. */
export function percent(share: number): string {
  return say('amount-percent', { share });
}

/** `80%`, for chances and other estimates: decimals would promise what nobody knows. */
export function wholePercent(share: number): string {
  return say('amount-whole-percent', { share });
}

/** `3`, `2.5`, `1,200` */
export function number(amount: number): string {
  return say('amount-number', { amount });
}

/** `1 point`, `2.5 points` */
export function points(amount: number): string {
  return say('amount-points', { amount });
}

/** With one decimal at most: points are halves, but means of them and ideal lines pass through anything. */
export function toTenths(amount: number): number {
  return Math.round(amount * 10) / 10;
}

/** `Tue 3 Nov` */
export function dayName(day: Day): string {
  return say('amount-day', { day });
}

/** `3 Nov 2026` */
export function shortDate(day: Day): string {
  return say('amount-short-date', { day });
}

/** `3 Nov` */
export function shortDateNoYear(day: Day): string {
  return say('amount-short-date-no-year', { day });
}

/** A value, the threshold beside it and the distance between them. */
export interface AgainstText {
  readonly value: string;
  readonly threshold: string;
  /** Percentage points, without a sign. */
  readonly distance: string;
}

/**
 * A value and its threshold with as many decimals, one at least, as it takes to tell them apart. So a value never looks
 * as if it reached a threshold that it misses.
 *
 * @example against(0.7996, 0.8).value === '79.96%'
 */
export function against(value: number, threshold: number): AgainstText {
  const distance = Math.abs(value - threshold);
  let decimals = 1;
  const looksEqual = (): boolean =>
    rounded(value, decimals) === rounded(threshold, decimals) || rounded(distance, decimals) === 0;
  while (value !== threshold && decimals < MOST_DECIMALS && looksEqual()) decimals += 1;
  const format = (style: 'percent' | 'decimal', amount: number): string =>
    numberFormat(style, decimals).format(amount);
  // Of the numbers as they are shown, so that a reader who subtracts them finds it.
  const shown = Math.abs(rounded(value, decimals) - rounded(threshold, decimals));
  const count = rounded(shown / 100, decimals);
  return {
    value: format('percent', value),
    threshold: format('percent', threshold),
    distance: say('amount-percentage-points', { count, amount: format('decimal', count) }),
  };
}

/** To make one takes a hundred times as long as to use it. */
const numberFormats = new Map<string, Intl.NumberFormat>();

function numberFormat(style: 'percent' | 'decimal', decimals: number): Intl.NumberFormat {
  const { tag } = spokenLanguage();
  const key = `${tag} ${style} ${decimals}`;
  const format =
    numberFormats.get(key) ??
    new Intl.NumberFormat(tag, { style, maximumFractionDigits: decimals, signDisplay: 'negative' });
  numberFormats.set(key, format);
  return format;
}

/** Percent with so many decimals, as a number. */
function rounded(share: number, decimals: number): number {
  const unit = 10 ** decimals;
  return Math.round(share * 100 * unit) / unit;
}
