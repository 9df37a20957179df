import { expect, it } from 'vitest';
import {
  answersValue,
  decodeValue,
  encodeAnswers,
  encodeValue,
  placeValue,
  sprintDayValue,
} from '../../src/slack/button-values.ts';

const answer = { cardId: 'card-1', worked: '1', left: '4', surprise: '', note: 'Zwei Formate: ½ "roh"' };
const answers = { sprintId: 'sprint-12', day: '2026-11-04', answers: [answer] };

it('brings values back as they went out', () => {
  const value = { sprintId: 'sprint-12', day: '2026-11-04' };
  expect(decodeValue(sprintDayValue, encodeValue(value))).toEqual(value);
  expect(decodeValue(answersValue, encodeAnswers(answers))).toEqual(answers);
});

it('gives up answers that outgrow the 2,000 characters of a button', () => {
  const withNote = (length: number) => ({ ...answers, answers: [{ ...answer, note: 'x'.repeat(length) }] });
  const emptyLength = encodeAnswers(withNote(0))?.length ?? 0;
  expect(encodeAnswers(withNote(2_000 - emptyLength))).toHaveLength(2_000);
  expect(encodeAnswers(withNote(2_001 - emptyLength))).toBeUndefined();
});

it('holds the answers of 15 cards in words with ids of 36 characters', () => {
  const many = Array.from({ length: 15 }, () => ({
    ...answer,
    cardId: crypto.randomUUID(),
    worked: '999.5',
    left: '999.5',
    surprise: '999.5',
    note: '',
  }));
  expect(encodeAnswers({ ...answers, answers: many })).toBeDefined();
});

it.each([
  ['nothing', undefined],
  ['no JSON', '{'],
  ['another shape', '{"channelId":7}'],
  ['too much', '{"channelId":"C1","admin":true}'],
  ['an empty id', '{"channelId":""}'],
  ['a list', '[]'],
  ['a prototype', '{"__proto__":{"channelId":"C1"}}'],
])('reads %s as no value', (_what, value) => {
  expect(decodeValue(placeValue, value)).toBeUndefined();
});

it('reads a day only as an ISO date', () => {
  expect(decodeValue(sprintDayValue, '{"sprintId":"s","day":"tomorrow"}')).toBeUndefined();
});
