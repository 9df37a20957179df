/**
 * Local times to instants by search through `Intl` alone, so that the product's own way of doing it can be
 * judged. Slow and plain on purpose; it must not import anything from `src/`.
 */
const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;

const formats = new Map<string, Intl.DateTimeFormat>();

/** The wall clock of the zone at the instant, as `2026-11-02 09:15`. */
export function wallClock(atMs: number, timeZone: string): string {
  let format = formats.get(timeZone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-CA', {
      timeZone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
    });
    formats.set(timeZone, format);
  }
  const part = Object.fromEntries(format.formatToParts(atMs).map(({ type, value }) => [type, value]));
  return `${part.year}-${part.month}-${part.day} ${part.hour}:${part.minute}`;
}

/**
 * The instant of a local time. A repeated time is its first occurrence, a skipped one takes the offset from
 * before the gap (RFC 5545, section 3.3.5).
 */
export function localInstantMs(day: string, time: string, timeZone: string): number {
  const asUtcMs = Date.parse(`${day}T${time}:00Z`);
  const wanted = `${day} ${time}`;
  const offsets = [-1, 1].map((side) => offsetMs(asUtcMs + side * DAY_MS, timeZone));
  const hits = offsets
    .map((offset) => asUtcMs - offset)
    .filter((atMs) => wallClock(atMs, timeZone) === wanted);
  return hits.length > 0 ? Math.min(...hits) : asUtcMs - (offsets[0] as number);
}

function offsetMs(atMs: number, timeZone: string): number {
  return Date.parse(`${wallClock(atMs, timeZone).replace(' ', 'T')}:00Z`) - atMs;
}

/** 1 for Monday to 7 for Sunday. */
export function weekdayOf(day: string): number {
  return new Date(`${day}T00:00:00Z`).getUTCDay() || 7;
}

/** The days from one to the other, both included. */
export function daysBetween(first: string, last: string): string[] {
  const days = [];
  for (let atMs = Date.parse(`${first}T00:00:00Z`); atMs <= Date.parse(`${last}T00:00:00Z`); atMs += DAY_MS) {
    days.push(new Date(atMs).toISOString().slice(0, 10));
  }
  return days;
}
