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
    const nextQuestionAt = new Date('2026-11-05T09:15:00Z');
    expect(wordsOf({ nextQuestionAt })).toContain('Today’s question is waiting for your answer.');
    expect(wordsOf({ nextQuestionAt, promptState: 'answered' })).toContain(
      'You have answered today. The next question comes on Thu 5 Nov at 09:15.',
    );
    expect(wordsOf({ nextQuestionAt, promptState: undefined, isPromptDay: false })).toContain(
      'No question today. The next question comes on Thu 5 Nov at 09:15.',
    );
    const today = new Date('2026-11-04T15:00:00Z');
    expect(wordsOf({ nextQuestionAt: today, promptState: undefined })).toContain(
      'Today’s question comes at 15:00. You can answer now.',
    );
  });

  it('says the goal, the days left, the burndown in words, and the load in one sentence', () => {
    const words = wordsOf({ sprint: { ...sprint, goal: 'Ferries *berth*' } });
    expect(words).toContain('*Goal:* Ferries ∗berth∗');
    expect(words).toContain('8 of 10 working days left, today included');
    expect(words).toContain(
      '16 points left. 21 were committed; a steady pace would leave 14.5 this evening.',
    );
    expect(words).toContain('The load is heavy: at the pace so far, about 4 points will be left at the end.');
    expect(JSON.stringify(viewOf().blocks)).toContain('Show burndown');
  });

  it('keeps a team’s other buttons behind one, and shows them in place', () => {
    expect(labels({ isFacilitator: true })).not.toContain('Team and times');
    const open = homeView({ teams: [homeTeam({ isFacilitator: true })] }, homeTeam().team.channelId);
    const opened = buttonsOf(open.blocks).map(({ label }) => label);
    expect(opened).toContain('Team and times');
    expect(opened).not.toContain('More');
    expect(opened.filter((label) => label === 'Answer')).toHaveLength(1);
  });

  it.each([
    [{ code: 'say-who-reads', posts: 2 }, '2 posts wait, because the channel is shared', 'open-setup-form'],
    [{ code: 'find-owners', cards: 2 }, 'find owners for 2 open cards', 'show-cards'],
    [{ code: 'finish-corrections' }, 'open for corrections', 'open-close-form'],
    [{ code: 'finish-draft', sprint: 'Quay 4' }, 'finish your plan for Quay 4', 'open-plan-form'],
    [{ code: 'plan', when: 'now' }, 'plan the next sprint', 'open-plan-form'],
    [{ code: 'plan', when: 'soon' }, 'about to end', 'open-plan-form'],
  ] as const)('says what a facilitator has to do next, with its button: %o', (step, words, actionId) => {
    const { blocks } = viewOf({ nextSteps: [step] });
    expect(mrkdwnTexts(blocks).join('\n')).toContain(words);
    const accessories = blocks.flatMap((block) => ('accessory' in block && block.accessory) || []);
    expect(accessories.map((element) => 'action_id' in element && element.action_id)).toContain(actionId);
  });

  it('fits a phone’s screen for a member with five cards', () => {
    const myOpenCards = linesOf([1, 2, 3, 4, 5].map((number) => card(number)));
    const { blocks } = viewOf({ myOpenCards, isFacilitator: false });
    const lines = mrkdwnTexts(blocks).join('\n').split('\n').length;
    expect(lines + blocks.filter(({ type }) => type === 'actions').length).toBeLessThanOrEqual(20);
  });

  it('carries the caution', () => {
    expect(wordsOf()).toContain('don’t use them to appraise anyone');
  });

  it('tells somebody without a team what this is and how to begin', () => {
    const words = mrkdwnTexts(homeView({ teams: [] }).blocks).join();
    expect(words).toContain('Loadline helps a team make commitments');
    expect(words).toContain('/loadline setup');
  });

  it('holds as many teams as fit, and counts the others', () => {
    const view = homeView({ teams: Array.from({ length: 40 }, () => homeTeam()) });
    expectFormFits(view);
    expect(mrkdwnTexts(view.blocks).join()).toMatch(/You have \d+ more teams/);
  });
});
