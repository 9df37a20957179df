/** Prompts in the store: who is asked on which day, and how they met it. */
import type { Day } from '../../sprint/calendar.ts';
import type { PostedAt } from '../posting/posts.ts';
import type { Prompt, PromptState } from '../team/team.ts';

export type AskedPrompt = Pick<Prompt, 'sprintId' | 'userId' | 'day' | 'postId'>;

export interface PromptReading {
  promptOf(sprintId: string, userId: string, day: Day): Promise<Prompt | undefined>;
  promptsOf(days: readonly { sprintId: string; day: Day }[]): Promise<Prompt[]>;
  /** The prompt that a delivered post asked. */
  promptByPost(workspaceId: string, at: PostedAt): Promise<Prompt | undefined>;
}

export interface PromptWriting {
  /** Inserts prompts in state `asked`; gives back those that did not exist yet. */
  insert(prompts: readonly AskedPrompt[]): Promise<AskedPrompt[]>;
  /** Inserts the prompt or sets its state. Gives back the post that asked, if one did. */
  setState(
    prompt: Pick<Prompt, 'sprintId' | 'userId' | 'day'>,
    state: PromptState,
    answeredAt: Date,
  ): Promise<string | undefined>;
}
