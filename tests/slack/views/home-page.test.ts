import { describe, expect, it } from 'vitest';
import type { HomeTeam } from '../../../src/app/watching/home-page.ts';
import { homeView } from '../../../src/slack/views/home-page.ts';
import { buttonsOf, expectFormFits, mrkdwnTexts } from './view-checks.ts';
import { card, homeTeam, linesOf, sprint } from './view-examples.ts';

const viewOf = (over: Partial<HomeTeam> = {}) => homeView({ teams: [homeTeam(over)] });
const wordsOf = (over: Partial<HomeTeam> = {}) => mrkdwnTexts(viewOf(over).blocks).join('\n');
const labels = (over: Partial<HomeTeam> = {}) => buttonsOf(viewOf(over).blocks).map(({ label }) => label);

describe('the home page', () => {
  it('lists my open cards with what is left on each', () => {
    const myOpenCards = linesOf([1, 2, 3, 4, 5].map((number) => card(number)));
    const words = wordsOf({ myOpenCards });
    for (const { key, title } of myOpenCards) expect(words).toMatch(new RegExp(`• ${key} ${title}: .* left`));
  });

  it('counts cards beyond ten', () => {
    const myOpenCards = linesOf(Array.from({ length: 12 }, (_, i) => card(i + 1)));
    expect(wordsOf({ myOpenCards })).toContain('… and 2 more of your cards.');
  });

  it('has the buttons of the daily prompt until the day is met, and then the way back to the form', () => {
    const prompt = ['Answer', 'Nothing changed', 'Away today'];
    expect(labels().slice(0, 3)).toEqual(prompt);
    expect(labels({ promptState: undefined }).slice(0, 3)).toEqual(prompt);
    expect(labels({ promptState: 'answered' })[0]).toBe('Change my answer');
    expect(labels({ promptState: 'unchanged' })[0]).toBe('Change my answer');
    expect(labels({ promptState: 'away' })[0]).toBe('Answer after all');
  });

  it('offers no answer without an open card, before the first day, and to the product owner', () => {
    for (const over of [{ myOpenCards: [], promptState: undefined }, { begun: false }, { isMember: false }]) {
      expect(labels(over)).not.toContain('Nothing changed');
    }
  });

  it('says how today was met, and when the next question comes', () => {
    const nextPromptAt = new Date('2026-11-05T09:15:00Z');
    const planned = { ...sprint, nextPromptAt };
    expect(wordsOf({ sprint: planned })).toContain('Today’s question is waiting for your answer.');
    expect(wordsOf({ sprint: planned, promptState: 'answered' })).toContain(
      'You have answered today. The next question comes on Thu 5 Nov at 09:15.',
    );
    expect(wordsOf({ sprint: planned, promptState: undefined, isPromptDay: false })).toContain(
      'No question today. The next question comes on Thu 5 Nov at 09:15.',
    );
    const today = { ...sprint, nextPromptAt: new Date('2026-11-04T15:00:00Z') };
    expect(wordsOf({ sprint: today, promptState: undefined })).toContain(
      'Today’s question comes at 15:00. You can answer now.',
    );
  });

  it('carries the caution', () => {
    expect(wordsOf()).toContain('don’t use them to appraise anyone');
  });

  it('tells somebody without a team how to get one', () => {
    expect(mrkdwnTexts(homeView({ teams: [] }).blocks).join()).toContain('You aren’t in a team here.');
  });

  it('holds as many teams as fit, and counts the others', () => {
    const view = homeView({ teams: Array.from({ length: 40 }, () => homeTeam()) });
    expectFormFits(view);
    expect(mrkdwnTexts(view.blocks).join()).toMatch(/You have \d+ more teams/);
  });
});
