/** Posts in the store, and the queue of their deliveries. */
import type { Day } from '../../sprint/calendar.ts';
import type { NewPost, Post, PostedAt, PostState } from '../posting/posts.ts';

export interface PostReading {
  /** How many posts still have to be delivered or brought up to date. */
  countUnsentPosts(): Promise<number>;
  /** How many of them wait because others read their channel too. */
  countHeldBack(workspaceId: string, channelId: string): Promise<number>;
  postById(postId: string): Promise<Post | undefined>;
  /** The latest post about the sprint of this kind. */
  postAbout(sprintId: string, kind: string): Promise<Post | undefined>;
  /** All of them, the latest first. */
  postsAbout(sprintId: string, kind: string): Promise<Post[]>;
}

interface PostChange {
  /** That it is being sent, a claim says. */
  readonly state: Exclude<PostState, 'sending'>;
  readonly postedAt?: PostedAt;
  /** From now on the post is not anywhere: it is sent again, in place of this message. */
  readonly replaces?: PostedAt;
  readonly sentVersion?: number;
  readonly lastError?: string;
}

export interface PostWriting {
  /** Records the posts and queues their delivery, in this transaction. */
  add(posts: readonly NewPost[]): Promise<void>;
  /**
   * Raises the wanted version of a post and queues its delivery. One that was refused is tried again: what it says now may
   * be taken, and its channel may be open again.
   */
  refresh(postId: string): Promise<void>;
  /** The same for all that was posted about these people's day: what asked, reminded and called last. @returns how many */
  refreshAboutDay(sprintId: string, userIds: readonly string[], day: Day): Promise<number>;
  /** The same for all posts of the kind about the sprint that were sent. */
  refreshSent(sprintId: string, kind: string): Promise<void>;
  update(postId: string, change: PostChange): Promise<void>;
  /** Marks the posts to these people about the team and its sprints that were not sent yet as skipped, but for those that are about another team as well. */
  skipUnsentTo(teamId: string, userIds: readonly string[]): Promise<void>;
  /** The channel got another id: its posts, sent or not, are there now. */
  moveChannel(workspaceId: string, channelId: string, newChannelId: string): Promise<void>;
  /** Posts to the channel go to another one from now on, but for those in threads. What was posted stays there, or is looked for there if that is unsure. */
  redirect(workspaceId: string, channelId: string, newChannelId: string): Promise<void>;
  /** Queues the delivery of all posts that the workspace, or a channel in it, is still owed. @returns how many */
  queueAllOf(workspaceId: string, channelId?: string): Promise<number>;
}
