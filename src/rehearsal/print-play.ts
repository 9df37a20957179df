/** A play as text for reading: every post in order, then what the bot refused. */
import { say } from '../words/say.ts';
import type { PlayedPost, PlayResult } from './play-result.ts';

export function printPlay({ sprints, posts, refusals }: PlayResult): string {
  const sections = [
    ...posts.map(printPost),
    ...sprints.flatMap((sprint) => [
      heading(
        say('rehearsal-sprint-heading', { sprint: sprint.name, first: sprint.startsOn, last: sprint.endsOn }),
      ),
      ...sprint.posts.map(printPost),
    ]),
  ];
  if (refusals.length > 0) {
    sections.push(heading(say('rehearsal-refused-heading')));
    sections.push(
      ...refusals.map(({ sprint, event, words }) => `${sprint} ${JSON.stringify(event)}\n  ${words}`),
    );
  }
  return sections.join('\n\n');
}

function heading(text: string): string {
  return `${text}\n${'='.repeat(text.length)}`;
}

function printPost(post: PlayedPost): string {
  const to = 'channel' in post.to ? `#${post.to.channel}` : post.to.member;
  const at = post.at.slice(0, 16).replace('T', ' ');
  const id = post.earlierTexts.length > 0 ? 'rehearsal-post-updated' : 'rehearsal-post';
  const head = say(id, { seen: post.onlyForThem ? 'by-them-only' : 'by-all', at, to });
  const lines = [
    post.text,
    ...post.altTexts.map((altText) => say('rehearsal-image', { text: altText })),
    ...post.fileNames.map((name) => say('rehearsal-file', { name })),
  ].join('\n');
  return `${head}\n${lines.replace(/^/gm, '  ')}`;
}
