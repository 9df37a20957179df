import { expect, it } from 'vitest';
import {
  SETTING_NAMES,
  SETTINGS,
  type Setting,
  type TeamSettings,
  USUAL_SETTINGS,
} from '../../../src/app/team/settings.ts';

const OTHERS: TeamSettings = {
  ...USUAL_SETTINGS,
  closesAt: '00:00',
  reminderAfterMinutes: 15,
  scale: [0, 0.5, 1, 3],
  weeklyLine: true,
  valueAfterDays: 60,
  surpriseInVerdict: false,
  carriedOver: 'new-estimate',
  retentionMonths: undefined,
};

it.each(SETTING_NAMES)('%s is read back as it is shown in its field, which it fits into', (name) => {
  const { field, typed, read } = SETTINGS[name] as unknown as Setting<unknown>;
  for (const settings of [USUAL_SETTINGS, OTHERS]) {
    const text = typed(settings[name]);
    expect(read(text)).toEqual({ value: settings[name] });
    if (field.kind === 'text') expect(text.length).toBeLessThanOrEqual(field.maxLength);
  }
});

it.each(SETTING_NAMES)('%s may be left empty only if its field says so', (name) => {
  const { field, read } = SETTINGS[name];
  const mayBeEmpty = field.kind === 'text' && field.optional === true;
  expect('value' in read(' ')).toBe(mayBeEmpty);
});
