/** Whether what comes with the bot loads on this machine: drawing library, font, time zones. */
import type { Finding } from './finding.ts';

/** Loads the drawing library only now, so that the other checks run even where it can't be loaded. */
export async function drawDot(): Promise<Uint8Array> {
  const { renderPng } = await import('../charts/render-png.ts');
  return renderPng({ title: { text: '0' } }, { widthPx: 8, heightPx: 8 });
}

const PNG_SIGNATURE = '89504e470d0a1a0a';

export async function checkCharts(draw: () => Promise<Uint8Array> = drawDot): Promise<Finding[]> {
  const png = await draw().catch((error: unknown) => error);
  if (png instanceof Uint8Array && Buffer.from(png).toString('hex').startsWith(PNG_SIGNATURE)) {
    return [{ code: 'charts-fine' }];
  }
  const reason = png instanceof Error ? String(png.message.split('\n')[0]) : 'no PNG';
  return [{ code: 'charts-broken', reason }];
}

/** Moments on both sides of a clock change, IANA tz 2025c: New York left summer time on 2026-11-01 at 06:00Z. */
const BEFORE = new Date('2026-11-01T05:30:00Z');
const AFTER = new Date('2026-11-01T06:30:00Z');

export function checkTimeZones(
  hourAt: (instant: Date) => string = (instant) =>
    new Intl.DateTimeFormat('en-GB', { timeZone: 'America/New_York', hour: '2-digit' }).format(instant),
): Finding[] {
  try {
    return [{ code: hourAt(BEFORE) === '01' && hourAt(AFTER) === '01' ? 'zones-fine' : 'zones-unknown' }];
  } catch {
    // A Node.js without time zones throws.
    return [{ code: 'zones-unknown' }];
  }
}
