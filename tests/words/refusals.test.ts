import { describe, expect, test } from 'vitest';
import type { RefusalCode, RefusalDetails } from '../../src/app/refusal.ts';
import { Refusal, refuseIfAny } from '../../src/app/refusal.ts';
import { refusalWords } from '../../src/words/refusals.ts';
import { REFUSAL_EXAMPLES as EXAMPLES } from '../app/refusal-examples.ts';

const sprintName = 'Harbour 12';

function wordsOf<Code extends RefusalCode>(code: Code, details: RefusalDetails[Code] = EXAMPLES[code]) {
  return refusalWords(new Refusal(code, details));
}

const CODES = Object.keys(EXAMPLES) as RefusalCode[];

describe.each(CODES)('the refusal %s', (code) => {
  const { what, fix } = wordsOf(code);

  test('says in sentences what was wrong and how to correct it', () => {
    for (const words of [what, fix]) {
      expect(words).toMatch(/^[A-Z`“].*[.?`]$/s);
      expect(words.length).toBeGreaterThan(10);
    }
    expect(what).not.toBe(fix);
  });

  test('names no code, nothing undefined and no object', () => {
    for (const words of [what, fix]) {
      expect(words).not.toContain(code);
      expect(words).not.toMatch(/undefined|null|NaN|\[object|\$\{|TypeError/);
    }
  });
});

describe('the words hold what the person needs', () => {
  test('facilitators are mentioned; a team without any says whom to ask', () => {
    expect(wordsOf('not-a-facilitator').fix).toBe('Ask <@U1> or <@U2>.');
    const { fix } = wordsOf('not-a-facilitator', { ...EXAMPLES['not-a-facilitator'], facilitatorIds: [] });
    expect(fix).toBe('The team no longer has anybody who can. Ask the person who runs Loadline for you.');
  });

  test('a product owner who is no member reads what they can do, and others do not', () => {
    const { what, fix } = wordsOf('not-a-member', { teamName: 'Tugboats', isProductOwner: true });
    expect(what).toContain('You are the product owner of Tugboats');
    for (const word of ['history', 'forecast', 'range', 'odds', 'value'])
      expect(fix).toContain(`\`/loadline ${word}\``);
    expect(wordsOf('not-a-member').fix).not.toContain('value');
  });

  test('who may record a value is named once, the product owner first; a team without either says whom to ask', () => {
    expect(wordsOf('not-a-value-keeper').fix).toBe('Ask <@U3> or <@U1>.');
    const { fix } = wordsOf('not-a-value-keeper', {
      teamName: 'Tugboats',
      productOwnerId: undefined,
      facilitatorIds: [],
    });
    expect(fix).toContain('Ask the person who runs Loadline');
  });

  test('who wants to split a card hears how that is counted', () => {
    const { fix } = wordsOf('unknown-command', { word: 'Split', near: 'import' });
    expect(fix).toMatch(/^Keep the card, and answer with what is left of all its parts/);
    expect(wordsOf('unknown-command', { word: 'x', near: undefined }).fix).toMatch(/^`\/loadline help`/);
  });

  test('a sprint that is not there: its name, and ten of those that are at most', () => {
    const known = Array.from({ length: 12 }, (_, i) => `Quay ${i + 1}`);
    const { what, fix } = wordsOf('no-such-sprint', { reference: 'Quay 99', known });
    expect(what).toContain('“Quay 99”');
    expect(fix).toContain('Quay 9, Quay 10, …');
    expect(fix).not.toContain('Quay 11');
    // Chosen in a form, it has no name that was typed.
    expect(wordsOf('no-such-sprint', { reference: '', known }).what).not.toContain('“');
  });

  test('a sprint without a velocity says whether nothing was finished or nobody knows', () => {
    expect(wordsOf('no-velocity').what).toContain('Nothing was finished in Harbour 12');
    const unknown = wordsOf('no-velocity', { sprintName, finishedPoints: undefined });
    expect(unknown.what).toContain('isn’t known');
    expect(wordsOf('sprint-not-closed', { sprintName, state: 'cancelled' }).what).toContain('was cancelled');
    expect(wordsOf('no-closed-sprint', { teamName: 'Tugboats', withVelocity: false }).what).toBe(
      'Tugboats has no closed sprint yet.',
    );
  });

  test.each([
    ['too large', '“past.csv” is larger than 5 MB.', 'Split it'],
    ['not text', '“past.csv” is not a text file.', 'CSV (UTF-8)'],
    ['no answer', 'The chat platform didn’t send “past.csv” in time.', 'again in a minute'],
    ['not handed over', 'The chat platform didn’t hand over “past.csv”.', '`files:read`'],
  ] as const)('a file that was not read, being %s, is named with what to do', (why, said, todo) => {
    const { what, fix } = wordsOf('file-unreadable', { field: 'past', fileName: 'past.csv', why });
    expect(what).toBe(said);
    expect(fix).toContain(todo);
  });

  test('the name of a file is cut when it is as long as a sentence, never within a sign', () => {
    const fileName = `${'🚢'.repeat(200)}.csv`;
    const { what } = wordsOf('file-unreadable', { field: 'past', fileName, why: 'too large' });
    expect(what).toBe(`“${'🚢'.repeat(79)}…” is larger than 5 MB.`);
  });

  test('a cancelled sprint does not offer reopening', () => {
    expect(wordsOf('sprint-over').fix).toContain('reopen');
    expect(wordsOf('sprint-over', { sprintName, state: 'cancelled' }).fix).not.toContain('reopen');
  });

  test('a card that is not there: its name, and those that are, twenty at most', () => {
    expect(wordsOf('no-such-card').what).toContain('“berth-99”');
    const many = Array.from({ length: 30 }, (_, i) => String(i + 1));
    const { fix } = wordsOf('no-such-card', { reference: '99', known: many });
    expect(fix).toContain('19, 20, …');
    expect(fix).not.toContain('21');
    expect(wordsOf('no-such-card', { reference: '', known: [] }).what).toBe('Which card?');
    expect(wordsOf('no-such-card', { reference: '1', known: [] }).fix).toContain('/loadline pull');
  });

  test('the example for an answer in words fits the number of cards', () => {
    const problems = [{ code: 'which-done' }] as const;
    const example = { reference: 'LP-7', title: 'Tide table', leftPoints: 5 };
    const fixFor = (cardCount: number) =>
      wordsOf('unclear-words', { problems, example: { ...example, cardCount } }).fix;
    expect(fixFor(1)).toContain('`4`');
    expect(fixFor(2)).toContain('`LP-7: 4`');
  });

  test('what is not about cards: an example where they have some, and where to find the commands', () => {
    const example = { cardCount: 1, reference: '1', title: 'Tide table', leftPoints: 5 };
    expect(wordsOf('not-about-cards', { example }).fix).toMatch(/“Tide table”.*`4`.*\n.*`\/loadline help`/);
    expect(wordsOf('not-about-cards', { example: undefined }).fix).not.toContain('write');
  });

  test('a mistyped command suggests one that is near, when there is one', () => {
    expect(wordsOf('unknown-command').fix).toContain('/loadline plan');
    expect(wordsOf('unknown-command', { word: 'zzz', near: undefined }).fix).not.toContain('Did you mean');
  });

  test.each([
    ['blocked', '/loadline blocked 3 waiting for'],
    ['cancel', '/loadline cancel the sprint goal'],
    ['drop', '/loadline drop 3 the harbour office'],
    ['goal', '/loadline goal partly'],
    ['off', '/loadline off 24 Dec'],
  ] as const)('the example of /loadline %s is one of its own', (command, example) => {
    const problem = { code: 'which-card' } as const;
    expect(wordsOf('bad-argument', { command, problem, example: undefined }).fix).toContain(example);
  });

  test('every problem of a form is said', () => {
    const problems = [{ code: 'no-first-day' }, { code: 'no-last-day' }] as const;
    expect(
      wordsOf('bad-input', { problems: problems.map((problem) => ({ field: 'f', problem })) }).what,
    ).toBe('Choose a first day. Choose a last day.');
  });
});

test('a refusal is thrown only when there are problems', () => {
  expect(() => refuseIfAny([])).not.toThrow();
  expect(() => refuseIfAny([{ field: 'name', problem: { code: 'no-number' } }])).toThrow(
    expect.objectContaining({ name: 'Refusal', code: 'bad-input' }),
  );
});
