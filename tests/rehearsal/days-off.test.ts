/** A calendar file and a country's holidays through the real conversations, over real HTTP, on a real database. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACILITATOR_ID, TEAM_CHANNEL_ID } from '../../src/rehearsal/cast.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { calendarText, eventText } from '../calendars/calendar-text.ts';
import { playedSample } from './played-rehearsal.ts';

let rehearsal: Rehearsal;

beforeAll(async () => {
  // Its sprint ended on 4 December 2026.
  rehearsal = await playedSample('no-plan');
}, 120_000);
afterAll(() => rehearsal?.stop());

const formOf = (words: string) =>
  rehearsal.conversation.formAfter(FACILITATOR_ID, () =>
    rehearsal.conversation.command(FACILITATOR_ID, words),
  );
const submit = (values: Record<string, string | string[]>) =>
  rehearsal.conversation.submit(FACILITATOR_ID, values);
const shown = () => JSON.stringify(rehearsal.standIn.viewOf(FACILITATOR_ID)?.blocks);
const said = () => rehearsal.standIn.messagesOf(FACILITATOR_ID, TEAM_CHANNEL_ID).at(-1)?.text ?? '';

describe('days off from outside', () => {
  it('are a country’s holidays, shown before the team has them', async () => {
    await formOf('off holidays PT');
    expect(shown()).toContain('Fri 25 Dec');
    await formOf('off');
    expect(shown()).not.toContain('25 Dec');
    await rehearsal.conversation.closeForms(FACILITATOR_ID);
    await formOf('off holidays PT');
    await submit({});
    expect(said()).toContain('25 Dec');
    await formOf('off');
    expect(shown()).toContain('25 Dec');
    await rehearsal.conversation.closeForms(FACILITATOR_ID);
  });

  it('are the days of a calendar file, shown before the team has them', async () => {
    const text = calendarText(eventText('Regatta', 'DTSTART;VALUE=DATE:20261216', 'SUMMARY:Regatta'));
    await formOf('off');
    const id = rehearsal.standIn.pickFile(FACILITATOR_ID, 'off.ics', Buffer.from(text));
    await submit({ whose: 'team', file: [id] });
    expect(shown()).toContain('Wed 16 Dec: Regatta');
    await submit({});
    expect(said()).toContain('16 Dec');
  });
});
