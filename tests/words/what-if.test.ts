import { describe, expect, it } from 'vitest';
import { whatIfBasis, whatIfSentence } from '../../src/words/what-if.ts';
import { linesOf, projectionOf, sprintCards, whatIf } from '../slack/views/view-examples.ts';

const [card] = linesOf(sprintCards.slice(0, 1));

describe('what if, in words', () => {
  it('tells both chances before and after, and what was supposed', () => {
    expect(whatIfSentence(whatIf)).toBe(
      'The chance to finish at least 80% of the commitment would go from 62% to 51% with somebody away for 1 working day and with 2 points more; that of finishing everything from 20% to 12%.',
    );
    expect(whatIfSentence({ ...whatIf, without: card, awayDays: 0, morePoints: 0 })).toContain(
      'from 62% to 51% without LP-1 Import tide tables (5 points); that',
    );
  });

  it('says when a chance stays as it is', () => {
    const chances = { now: { kept: 0.62, all: 0.2 }, changed: { kept: 0.622, all: 0.12 } };
    expect(whatIfSentence({ ...whatIf, chances })).toContain('would stay at 62% with somebody');
  });

  it('tells of finishing everything alone where there was no commitment', () => {
    expect(whatIfSentence({ ...whatIf, hasPlan: false })).toBe(
      'The chance of finishing everything would go from 20% to 12% with somebody away for 1 working day and with 2 points more.',
    );
  });

  it('says what was assumed, and what it is based on', () => {
    const load = { from: 'projection', reading: projectionOf() } as const;
    const words = whatIfBasis({ ...whatIf, without: card, load }).join(' ');
    expect(words).toContain('LP-1 Import tide tables would stay in the commitment');
    expect(words).toContain('Each day away is taken as 5% of the team’s time to come, whoever it is.');
    expect(words).toContain('Based on 14 closed sprints');
  });

  it('says why nothing can be told', () => {
    const unknown = { ...whatIf, chances: undefined };
    expect(whatIfSentence(unknown)).toMatch(/can’t be told yet\.$/);
    expect(whatIfBasis(unknown)).toEqual(['No load signal. There are no points in the sprint.']);
  });
});
