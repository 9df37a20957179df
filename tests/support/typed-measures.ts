/** The form for a team's measures as it is sent: everything usual, apart from what a test changes. */
import type { MeasuresInput } from '../../src/app/team/set-measures.ts';
import {
  SETTING_NAMES,
  SETTINGS,
  type Setting,
  type SettingName,
  type TeamSettings,
} from '../../src/app/team/settings.ts';
import { THRESHOLD_NAMES, THRESHOLDS } from '../../src/sprint/thresholds.ts';

type Typed = Omit<MeasuresInput, 'teamId'>;

export function typedMeasures(
  change: Partial<Omit<Typed, 'thresholds'>> = {},
  thresholds: Partial<Typed['thresholds']> = {},
): Typed {
  const settings = SETTING_NAMES.map((name) => {
    const { typed, usual } = SETTINGS[name] as unknown as Setting<TeamSettings[SettingName]>;
    return [name, typed(usual)];
  });
  const shares = THRESHOLD_NAMES.map((name) => [name, percentOf(THRESHOLDS[name].usual)]);
  return {
    ...(Object.fromEntries(settings) as Record<SettingName, string>),
    ...change,
    thresholds: { ...(Object.fromEntries(shares) as Typed['thresholds']), ...thresholds },
  };
}

function percentOf(share: number | undefined): string {
  return share === undefined ? '' : String(share * 100);
}
