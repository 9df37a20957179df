/** The bot's home page: the caller's teams and what can be done now. */
import type { HomeView } from '@slack/types';
import type { Overview } from '../../app/watching/overview.ts';
import { context, lead } from './block-builders.ts';
import { CAUTION } from './caution-words.ts';
import { overviewBlocks } from './overview-blocks.ts';

const MAX_BLOCKS = 98;

export function homeView(overview: Overview): HomeView {
  return {
    type: 'home',
    blocks: [
      lead('What you can do now'),
      ...overviewBlocks(overview, { maxBlocks: MAX_BLOCKS }),
      context(CAUTION),
    ],
  };
}
