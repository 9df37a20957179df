import { describe, expect, it } from 'vitest';
import { PERSONAL_KINDS } from '../../../src/app/privacy/personal-data.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { ownerNeededMessage } from '../../../src/slack/views/cards/card-messages.ts';
import {
  copyComment,
  copySentMessage,
  erasedMessage,
  eraseFormView,
  privacyMessage,
} from '../../../src/slack/views/privacy-message.ts';
import { mention } from '../../../src/words/people.ts';
import { expectFormFits, expectMessageFits } from './view-checks.ts';
import { card, sprint, team } from './view-examples.ts';

const overview = {
  kinds: [
    {
      kind: 'memberships' as const,
      count: 1,
      from: undefined,
      to: undefined,
      teamNames: ['Harbour'],
    },
    {
      kind: 'answers' as const,
      count: 24,
      from: '2025-11-03',
      to: '2026-11-13',
      teamNames: ['Harbour', 'Quay'],
    },
    { kind: 'drafts' as const, count: 1, from: '2026-11-13', to: '2026-11-13', teamNames: ['Quay'] },
  ],
  teams: [
    { name: 'Harbour', retentionMonths: 13 },
    { name: 'Quay', retentionMonths: undefined },
  ],
};

describe('what is stored about me', () => {
  it('says how much of what, from when to when, in which teams, why, who sees it and how long', () => {
    const message = privacyMessage(overview);
    expectMessageFits(message);
    const { text } = message;
    expect(text).toContain('1 membership of a team, with your name (Harbour)');
    expect(text).toContain(
      '24 answers about cards, with their notes, from 3 November 2025 to 13 November 2026 (Harbour and Quay)',
    );
    expect(text).toContain('1 draft of a plan, of 13 November 2026 (Quay)');
    expect(text).toMatch(/Why: .*\nWho sees it: .*\nHow long:\n/);
    expect(text).toContain('Harbour keeps the details of a sprint for 13 months after its end');
    expect(text).toContain('Quay keeps the details of its sprints without a time limit.');
    expect(text).toContain('Buttons: Send me a copy, Erase me');
  });

  it('has words for every kind, for one and for many, and room for all of them in fifty teams', () => {
    const teamNames = Array.from({ length: 50 }, (_, i) => `Team <!channel> *${i}* ${'x'.repeat(70)}`);
    for (const count of [1, 999_999]) {
      const kinds = PERSONAL_KINDS.map((kind) => ({
        ...{ kind, count, from: '2016-01-01', to: '2026-12-31', teamNames },
      }));
      const teams = teamNames.map((name) => ({ name, retentionMonths: 120 }));
      const message = privacyMessage({ kinds, teams });
      expectMessageFits(message);
      expect(JSON.stringify(message.blocks)).toContain('45 more');
      expect(JSON.stringify(message)).not.toContain('<!channel>');
    }
  });

  it('offers neither a copy nor an erasure of nothing', () => {
    const { text, blocks } = privacyMessage({ kinds: [], teams: [] });
    expect(text).toContain('Nothing is stored under your id');
    expect(JSON.stringify(blocks)).not.toMatch(new RegExp(`${ACTIONS.sendMyCopy}|${ACTIONS.openEraseForm}`));
  });
});

describe('an erasure', () => {
  it('is confirmed in a form that says what goes, what stays and that it can’t be undone', () => {
    const form = eraseFormView('D1');
    expectFormFits(form);
    const words = JSON.stringify(form);
    for (const said of ['What goes:', 'What stays:', 'can’t be undone', 'Keep everything']) {
      expect(words).toContain(said);
    }
    expect(form.private_metadata).toBe('{"replyTo":"D1"}');
  });

  it('ends with what was done and what is left elsewhere', () => {
    expect(erasedMessage({ records: 24, teamNames: ['Harbour'] }).text).toMatch(
      /^You are erased: 24 records no longer refer to you\. You are no longer part of Harbour\.\n.*chat platform.*Backups/s,
    );
    expect(erasedMessage({ records: 1, teamNames: [] }).text).toMatch(
      /^You are erased: 1 record no longer refers to you\.\n/,
    );
  });

  it('leaves “somebody” where a post named the person', () => {
    expect([mention('erased'), mention('erased-6f1c'), mention('U0ANA')]).toEqual([
      'somebody',
      'somebody',
      '<@U0ANA>',
    ]);
  });
});

describe('a copy', () => {
  it('comes with how much it holds, and the reply says where it is', () => {
    const copy = { fileName: 'loadline-about-me.json', bytes: new Uint8Array(2), records: 24 };
    expect(copyComment(copy)).toMatch(/24 records, as a JSON file\..*Only you get it/);
    expect(copySentMessage(copy).text).toContain('A copy of 24 records is in your direct messages');
  });
});

describe('cards that need an owner', () => {
  const heading = { team, sprint };
  const line = (number: number) => ({
    ...{ cardId: `c${number}`, workedPoints: 0, leftPoints: 3, surprisePoints: 0, driftPoints: 0 },
    ...card(number, { ownerIds: [] }),
    state: 'open' as const,
  });

  it('are listed with how to take them, without whose they were', () => {
    const message = ownerNeededMessage({ heading, cards: [line(2), line(7)] });
    expectMessageFits(message);
    expect(message.text).toMatch(/^2 open cards of .* need an owner\n/);
    expect(message.text).toContain('(nobody yet)');
    expect(message.text).toContain('/loadline take 2');
    expect(message.text).not.toContain('<@');
  });

  it('are no more once each has an owner', () => {
    expect(ownerNeededMessage({ heading, cards: [] }).text).toMatch(
      /^Every open card of .* has an owner again$/,
    );
  });
});
