/** Whether what comes with the bot loads on this machine: drawing library, font, time zones. */
import { type Finding, findingsOf } from './finding.ts';

const charts = findingsOf('charts');
const zones = findingsOf('time zones');

/** Loads the drawing library only now: that it can't be loaded must not keep the other checks from running. */
export async function drawDot(): Promise<Uint8Array> {
  const { renderPng } = await import('../charts/render-png.ts');
  return renderPng({ title: { text: '0' } }, { widthPx: 8, heightPx: 8 });
}

const PNG_SIGNATURE = '89504e470d0a1a0a';

export async function checkCharts(draw: () => Promise<Uint8Array> = drawDot): Promise<Finding[]> {
  const png = await draw().catch((error: unknown) => error);
  if (png instanceof Uint8Array && Buffer.from(png).toString('hex').startsWith(PNG_SIGNATURE)) {
    return [charts.ok('The drawing library and its font load.')];
  }
  const why = png instanceof Error ? `: ${png.message.split('\n')[0]}` : '';
  return [
    charts.mend(
      `Charts can not be drawn${why}`,
      'Run npm ci --omit=dev on this machine; a node_modules folder from another kind of machine does not work.',
    ),
  ];
}

/** Moments on both sides of a clock change, IANA tz 2025c: New York left summer time on 2026-11-01 at 06:00Z. */
const BEFORE = new Date('2026-11-01T05:30:00Z');
const AFTER = new Date('2026-11-01T06:30:00Z');

export function checkTimeZones(
  hourAt: (instant: Date) => string = (instant) =>
    new Intl.DateTimeFormat('en-GB', { timeZone: 'America/New_York', hour: '2-digit' }).format(instant),
): Finding[] {
  try {
    if (hourAt(BEFORE) === '01' && hourAt(AFTER) === '01')
      return [zones.ok('Known, with their clock changes.')];
  } catch {
    // Said below: a Node.js without time zones throws.
  }
  return [
    zones.mend(
      'This Node.js does not know the time zones of the world.',
      'Use an official build of Node.js, which brings them along.',
    ),
  ];
}
