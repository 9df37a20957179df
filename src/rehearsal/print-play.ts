/** A play as text for reading: every post in order, then what the bot refused. */
import type { PlayedPost, PlayResult } from './play-result.ts';

export function printPlay({ sprints, posts, refusals }: PlayResult): string {
  const sections = [
    ...posts.map(printPost),
    ...sprints.flatMap((sprint) => [
      heading(`${sprint.name}, ${sprint.startsOn} to ${sprint.endsOn}`),
      ...sprint.posts.map(printPost),
    ]),
  ];
  if (refusals.length > 0) {
    sections.push(heading('Refused'));
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
  const only = post.onlyForThem ? ', seen by them only' : '';
  const updated = post.earlierTexts.length > 0 ? ', updated since' : '';
  const lines = [
    post.text,
    ...post.altTexts.map((altText) => `[Image: ${altText}]`),
    ...post.fileNames.map((name) => `[File: ${name}]`),
  ].join('\n');
  return `${post.at.slice(0, 16).replace('T', ' ')} UTC → ${to}${only}${updated}\n${lines.replace(/^/gm, '  ')}`;
}
