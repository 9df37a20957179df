/** What columns of cards are called in sheets and trackers. */
import { alikeColumn } from '../csv/csv-columns.ts';

export const CARD_FIELDS = ['title', 'estimate', 'owner', 'link', 'key'] as const;
export type CardField = (typeof CARD_FIELDS)[number];

/** The likelier ones first: of several columns with such a name the first in this order is meant. */
const HEADINGS: Readonly<Record<CardField, readonly string[]>> = {
  title: ['title', 'card', 'name', 'summary', 'task', 'story', 'item', 'subject', 'issue', 'description'],
  estimate: ['estimate', 'est', 'points', 'story points', 'pts', 'sp', 'size', 'effort'],
  owner: ['owner', 'owners', 'assignee', 'assignees', 'assigned to', 'responsible', 'who'],
  link: ['link', 'url', 'web address', 'address'],
  key: ['key', 'short name', 'card key', 'id'],
};

const PLACES = new Map(
  CARD_FIELDS.flatMap((field) => HEADINGS[field].map((word, i) => [word, { field, rank: i }] as const)),
);

/** The field that a column of this name holds, and how many of the field's names are likelier. */
export function headingOf(name: string): { field: CardField; rank: number } | undefined {
  const plain = alikeColumn(name).replace(/\.$/, '');
  // `Estimate (points)` is one of points, `Estimate (hours)` isn't.
  const open = plain.indexOf('(');
  const inBrackets = open >= 0 && plain.endsWith(')') ? plain.slice(open + 1, -1).trim() : plain;
  return PLACES.get(plain) ?? PLACES.get(inBrackets);
}
