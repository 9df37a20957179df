import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../../src/slack/commands/commands.ts';

describe('parseCommand', () => {
  it.each([
    ['', undefined, ''],
    ['  ', undefined, ''],
    ['status', 'status', ''],
    ['STATUS ', 'status', ''],
    ['setup', 'setup', ''],
    ['setup measures', 'setup measures', ''],
    ['setup  Measures now', 'setup measures', 'now'],
    ['pull Repair the gauge, 3', 'pull', 'Repair the gauge, 3'],
    ['pull\tRepair it\t3', 'pull', 'Repair it\t3'],
    ['pull  "Two  spaces", 3', 'pull', '"Two  spaces", 3'],
    ['pulley', undefined, 'pulley'],
    ['stat us', undefined, 'stat us'],
  ])('%j is the word %j and the rest %j', (text, word, rest) => {
    const parsed = parseCommand(text);
    expect([parsed.command?.word, parsed.rest]).toEqual([word, rest]);
  });
});
