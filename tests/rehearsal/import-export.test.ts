/** Past sprints brought in and taken out through the real conversations, over real HTTP, on a real database. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FACILITATOR_ID, TEAM_CHANNEL_ID } from '../../src/rehearsal/cast.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { parseScenario } from '../../src/rehearsal/scenario.ts';
import { playedRehearsal } from './played-rehearsal.ts';

/** A sprint of one day, so that there is one closed sprint that the bot ran itself. */
const SCENARIO = JSON.stringify({
  team: { name: 'Quayside', timeZone: 'Europe/Lisbon', promptAt: '09:15', workingDays: [1, 2, 3, 4, 5] },
  members: [
    { id: 'ines', name: 'Ines' },
    { id: 'odd', name: 'Odd' },
  ],
  sprints: [
    {
      name: 'Harbour 12',
      startsOn: '2026-11-02',
      endsOn: '2026-11-02',
      cards: [{ key: 'quay-41', title: 'Berth calendar', estimate: 5, owners: ['ines', 'odd'] }],
      events: [
        { on: '2026-11-02', by: 'ines', answer: [{ card: 'quay-41', worked: 2, left: 3 }] },
        { on: '2026-11-02', by: 'odd', answer: [{ card: 'quay-41', worked: 3, left: 0 }] },
      ],
    },
  ],
});
const HEADER = 'name,first day,last day,commitment,pulled in,surprise,finished,points worked';

let rehearsal: Rehearsal;

beforeAll(async () => {
  rehearsal = await playedRehearsal(parseScenario(SCENARIO, 'a scenario of this test'));
});
afterAll(() => rehearsal?.stop());

const ask = (words: string) => rehearsal.conversation.command(FACILITATOR_ID, words);
const openImport = () => rehearsal.conversation.formAfter(FACILITATOR_ID, () => ask('import'));
const submit = (values: Record<string, string | string[]>) =>
  rehearsal.conversation.submit(FACILITATOR_ID, values);
const form = () => rehearsal.standIn.viewOf(FACILITATOR_ID);
const shown = () => JSON.stringify(form()?.blocks);
const said = () => rehearsal.standIn.messagesOf(FACILITATOR_ID, TEAM_CHANNEL_ID).at(-1)?.text ?? '';
const pick = (name: string, text: string) =>
  rehearsal.standIn.pickFile(FACILITATOR_ID, name, Buffer.from(text));

function keptField(): string {
  const block = form()?.blocks.find(({ block_id }) => String(block_id).startsWith('keptFileIds'));
  return String(block?.block_id);
}

/** Ids of the files given before that have their tick. */
function ticked(): string[] {
  const options = form()?.state.values[keptField()]?.value?.selected_options;
  return ((options ?? []) as { value: string }[]).map(({ value }) => value);
}

/** The files of the latest message in the facilitator's direct messages, by name. */
function handedOver(): Record<string, string> {
  const message = rehearsal.standIn
    .messagesOf(FACILITATOR_ID, 'dm')
    .findLast(({ files }) => files.length > 0);
  return Object.fromEntries(
    message?.files.map(({ id, name }) => [name, rehearsal.standIn.fileOf(id)?.toString('utf8') ?? '']) ?? [],
  );
}

describe('import and export in the conversation', () => {
  it('names the bad lines, keeps what was pasted, and imports once it is corrected and was shown', async () => {
    await openImport();
    const bad = `${HEADER}\nPier 1,2026-09-07,2026-09-18,20,2,1,18,21\nPier 2,21.9.2026,02/10/2026,20x,0,0,20,20`;
    await submit({ text: bad });
    expect(shown()).toContain('Nothing can be imported yet: 1 line has something wrong');
    expect(shown()).toContain('the pasted lines, line 3');
    expect(form()?.state.values.text?.value?.value).toBe(bad);

    await submit({ text: bad.replace('02/10/2026,20x', '2026-10-02,20') });
    expect(shown()).toContain('2 sprints to import, from 7 September to 2 October 2026');
    expect(form()?.submit).toMatchObject({ text: 'Import' });

    await submit({});
    // A busy machine takes longer than the platform waits: then the form stays and shows the outcome.
    const outcome = form() ? shown() : said();
    expect(JSON.stringify(form()?.title ?? 'Done')).toContain('Done');
    expect(outcome).toContain('Imported 2 sprints of Quayside');
    expect(outcome).toContain('3 closed sprints to go by');
  });

  it('hands the four files over in direct messages, without anybody’s id or name', async () => {
    await ask('export');
    const files = handedOver();
    expect(Object.keys(files)).toEqual(['sprints.csv', 'cards.csv', 'answers.csv', 'changes.csv']);
    expect(files['sprints.csv']).toMatch(/^\uFEFFname,first day,last day,commitment,pulled in,/);
    expect(files['sprints.csv']?.split('\r\n')).toHaveLength(5);
    for (const { id, realName } of rehearsal.cast.users) {
      for (const text of Object.values(files)) {
        expect(text).not.toContain(id);
        expect(text).not.toContain(realName);
      }
    }
    expect(said()).toContain('in your direct messages');
  });

  it('takes its own files back: every sprint is there already, so there is nothing to import', async () => {
    await openImport();
    const files = Object.entries(handedOver()).map(([name, text]) => pick(name, text));
    await submit({ files });
    expect(shown()).toContain('Nothing new to import');
    expect(form()?.submit).toMatchObject({ text: 'Check again' });
    await rehearsal.conversation.closeForms(FACILITATOR_ID);
  });

  it('keeps files from round to round, adds others, and leaves out what loses its tick', async () => {
    const cards = 'sprint,title,estimate,state\nMole 1,Lamp,3,finished\nMole 1,Bell,5,open';
    await openImport();
    await submit({ files: [pick('cards.csv', cards)] });
    expect(shown()).toContain('it goes with a file of sprints');
    const [kept] = ticked();
    const sprints = 'name;first day;last day;commitment;finished\nMole 1;2026-08-03;2026-08-14;8;3';
    await submit({ 'files-2': [pick('sprints.csv', sprints)] });
    expect(shown()).toContain('1 sprint to import');
    expect(shown()).toContain('With 2 cards and 1 answer');
    await submit({ [keptField()]: ticked().filter((id) => id !== kept) });
    // Other files than were shown: that is shown first.
    expect(shown()).toContain('1 sprint to import');
    expect(shown()).not.toContain('With 2 cards');
    await submit({});
    expect(said()).toContain('Imported 1 sprint of Quayside');
  });

  it('takes in bodies of work with the dates that were told of them, and hands them over', async () => {
    const bodies = 'body,to do,kept on\nHarbour lights,80,2026-08-03\nBells,0,';
    const dates =
      'body,told on,to do,optimistic,likely,pessimistic\nHarbour lights,2026-08-03,90,2027-01-08,2027-02-05,';
    await openImport();
    await submit({ files: [pick('bodies.csv', bodies), pick('dates.csv', dates)] });
    expect(shown()).toContain('“to do” must be more than 0 and at most 20,000');
    await submit({ 'files-2': [pick('bodies.csv', bodies.replace('Bells,0', 'Bells,20.5'))] });
    expect(shown()).toContain('2 bodies of work to import');
    expect(shown()).toContain('Harbour lights: 80 points to do');
    await submit({});
    expect(said()).toContain('2 bodies of work are kept by Quayside from now on');
    await ask('forecast');
    expect(said()).toContain('Harbour lights');
    await ask('export');
    expect(said()).toContain('2 bodies of work, in 6 CSV files');
    expect(handedOver()['dates.csv']).toContain(
      'Harbour lights,2026-08-03,,2026-08-03,90,0,2027-01-08,2027-02-05,',
    );
  });
});
