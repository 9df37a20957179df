/**
 * Puts simulated moments into words, in the team's time zone, and sizes of files. It never reads the real clock: what
 * "today" is comes from the simulated calendar.
 */

/** Time of day, `09:15`. */
export function timeOfDay(moment: Date, timeZone: string): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone }).format(moment);
}

/** Date in full, `Monday, 2 November 2026`. */
export function longDate(moment: Date, timeZone: string): string {
  const { weekday, day, month, year } = dateParts(moment, timeZone, 'long');
  return `${weekday}, ${day} ${month} ${year}`;
}

/** Date in short, `Mon 2 Nov`, as the bot writes it. */
export function shortDate(moment: Date, timeZone: string): string {
  const { weekday, day, month } = dateParts(moment, timeZone, 'short');
  return `${weekday} ${day} ${month}`;
}

/** Parts rather than a whole: the commas between them differ from browser to browser. */
function dateParts(moment: Date, timeZone: string, names: 'long' | 'short'): Record<string, string> {
  const format = new Intl.DateTimeFormat('en-GB', {
    weekday: names,
    day: 'numeric',
    month: names,
    year: 'numeric',
    timeZone,
  });
  return Object.fromEntries(format.formatToParts(moment).map(({ type, value }) => [type, value]));
}

/** Moment of a message timestamp, seconds since 1970 with a fraction, as text. */
export function momentOfTs(ts: string): Date {
  return new Date(Number(ts) * 1000);
}

/** Fills the date tokens of a message's date markup; an unknown token stays as it is. */
export function fillDateTokens(epochSeconds: number, format: string, timeZone: string): string {
  const moment = new Date(epochSeconds * 1000);
  return format.replace(/\{(\w+)\}/g, (token, name: string) => {
    switch (name.replace(/_pretty$/, '')) {
      case 'date_num':
        return new Intl.DateTimeFormat('sv-SE', { timeZone }).format(moment);
      case 'date_short':
        return shortDate(moment, timeZone);
      case 'date':
      case 'date_long':
      case 'day_divider':
        return longDate(moment, timeZone);
      case 'time':
        return timeOfDay(moment, timeZone);
      case 'time_secs':
        return new Intl.DateTimeFormat('en-GB', { timeStyle: 'medium', timeZone }).format(moment);
      default:
        return token;
    }
  });
}

/** The size of a file in words, as people say it: `640 bytes`, `12 kB`, `1.4 MB`; steps of a thousand. */
export function fileSize(sizeBytes: number): string {
  if (sizeBytes < 1000) return sizeBytes === 1 ? '1 byte' : `${sizeBytes} bytes`;
  // What would round to a thousand kilobytes is a megabyte.
  const inKilobytes = sizeBytes < 999_500;
  const size = sizeBytes / (inKilobytes ? 1000 : 1_000_000);
  const rounded = size < 9.95 ? Number(size.toFixed(1)) : Math.round(size);
  return `${rounded} ${inKilobytes ? 'kB' : 'MB'}`;
}
