/**
 * What the platform makes of text that a person types in a message or a command: `&`, `<` and `>` are escaped,
 * handles become mentions. docs.slack.dev/messaging/formatting-message-text
 */
import type { Workspace } from './workspace.ts';

/** Mentions of people and channels that were written out already stay as they are. */
const MENTION = /(<@[A-Z0-9]+(?:\|[^>]*)?>|<#[A-Z0-9]+(?:\|[^>]*)?>)/;

/**
 * @param withNames commands carry the handle beside the id (`<@U1|ana>`), messages the id alone
 */
export function typedText(typed: string, workspace: Workspace, withNames: boolean): string {
  return typed
    .split(MENTION)
    .map((part, index) => (index % 2 === 1 ? part : mentionsOf(escaped(part), workspace, withNames)))
    .join('');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

function mentionsOf(text: string, workspace: Workspace, withNames: boolean): string {
  const people = new Map([...workspace.people.values()].map((person) => [person.name.toLowerCase(), person]));
  return text.replaceAll(
    /(^|[\s,;(])@([\p{L}\p{N}._-]*[\p{L}\p{N}_-])/gu,
    (whole, before: string, name: string) => {
      const person = people.get(name.toLowerCase());
      if (!person) return whole;
      return `${before}<@${person.id}${withNames ? `|${person.name}` : ''}>`;
    },
  );
}
