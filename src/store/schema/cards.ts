/** Cards, their owners, and the facts stated about them. Facts are only ever added: see the migrations. */
import { sql } from 'drizzle-orm';
import {
  bigint,
  check,
  foreignKey,
  index,
  integer,
  primaryKey,
  text,
  unique,
  uniqueIndex,
} from 'drizzle-orm/pg-core';
import type { CardChangeFact, CardOrigin } from '../../sprint/card.ts';
import { day, instant, isHalves, isNotBlank, isPoints, isSafeLink, loadline, points } from './columns.ts';
import { sprints } from './teams.ts';

/** One order for all facts, in both tables. */
export const factOrder = loadline.sequence('fact_order');

export const cards = loadline.table(
  'cards',
  {
    id: text('id').primaryKey(),
    sprintId: text('sprint_id')
      .notNull()
      .references(() => sprints.id),
    number: integer('number').notNull(),
    key: text('key').notNull(),
    title: text('title').notNull(),
    link: text('link'),
    estimatePoints: points('estimate_points').notNull(),
    origin: text('origin').$type<CardOrigin>().notNull(),
    enteredOn: day('entered_on').notNull(),
    addedBy: text('added_by').notNull(),
  },
  (card) => [
    unique('cards_number_unique').on(card.sprintId, card.number),
    unique('cards_key_unique').on(card.sprintId, card.key),
    index('cards_added_by').on(card.addedBy),
    check('cards_ids_given', sql`${isNotBlank(card.id)} and ${isNotBlank(card.key)}`),
    check('cards_link_is_safe', isSafeLink(card.link)),
    check('cards_number_from_1', sql`${card.number} >= 1`),
    check('cards_estimate_is_points', isPoints(card.estimatePoints)),
    check('cards_origin_known', sql`${card.origin} in ('planned', 'pulled-in')`),
  ],
);

export const cardOwners = loadline.table(
  'card_owners',
  {
    cardId: text('card_id')
      .notNull()
      .references(() => cards.id),
    userId: text('user_id').notNull(),
    /** Owners are listed in the order in which they took the card. */
    position: integer('position').notNull(),
  },
  (owner) => [
    primaryKey({ name: 'card_owners_pk', columns: [owner.cardId, owner.userId] }),
    index('card_owners_by_user').on(owner.userId),
    check('card_owners_user_given', isNotBlank(owner.userId)),
  ],
);

export const answers = loadline.table(
  'answers',
  {
    id: text('id').primaryKey(),
    cardId: text('card_id')
      .notNull()
      .references(() => cards.id),
    memberId: text('member_id').notNull(),
    day: day('day').notNull(),
    factOrder: bigint('fact_order', { mode: 'number' }).notNull(),
    workedPoints: points('worked_points'),
    leftPoints: points('left_points').notNull(),
    surprisePoints: points('surprise_points').notNull(),
    note: text('note').notNull(),
    recordedAt: instant('recorded_at').notNull(),
    supersedesId: text('supersedes_id'),
  },
  (answer) => [
    unique('answers_fact_order_unique').on(answer.factOrder),
    // An answer is corrected by one answer at most, of the same card, member and day. One answer starts
    // such a chain; a second one that doesn't say that it corrects the first is refused.
    unique('answers_supersedes_unique').on(answer.supersedesId),
    unique('answers_chain_unique').on(answer.id, answer.cardId, answer.memberId, answer.day),
    foreignKey({
      name: 'answers_supersedes_same_chain_fk',
      columns: [answer.supersedesId, answer.cardId, answer.memberId, answer.day],
      foreignColumns: [answer.id, answer.cardId, answer.memberId, answer.day],
    }),
    uniqueIndex('answers_first_unique')
      .on(answer.cardId, answer.memberId, answer.day)
      .where(sql`supersedes_id is null`),
    index('answers_of_member').on(answer.memberId),
    index('answers_of_card').on(answer.cardId),
    check('answers_ids_given', sql`${isNotBlank(answer.id)} and ${isNotBlank(answer.memberId)}`),
    check('answers_supersedes_another', sql`${answer.supersedesId} <> ${answer.id}`),
    check('answers_worked_is_points', isPoints(answer.workedPoints)),
    check('answers_left_is_points', isPoints(answer.leftPoints)),
    check('answers_surprise_in_halves', isHalves(answer.surprisePoints)),
  ],
);

/** What changed about a card besides answers: facts that the ledger folds, and who owned it. */
type CardChangeKind = CardChangeFact['kind'] | 'owner-added' | 'owner-removed';

export const cardChanges = loadline.table(
  'card_changes',
  {
    id: text('id').primaryKey(),
    cardId: text('card_id')
      .notNull()
      .references(() => cards.id),
    kind: text('kind').$type<CardChangeKind>().notNull(),
    /** Who changed it. */
    memberId: text('member_id').notNull(),
    /** Who became an owner of the card, or no longer is one. */
    userId: text('user_id'),
    day: day('day').notNull(),
    factOrder: bigint('fact_order', { mode: 'number' }).notNull(),
    note: text('note').notNull(),
    recordedAt: instant('recorded_at').notNull(),
  },
  (change) => [
    unique('card_changes_fact_order_unique').on(change.factOrder),
    index('card_changes_of_card').on(change.cardId),
    check('card_changes_ids_given', sql`${isNotBlank(change.id)} and ${isNotBlank(change.memberId)}`),
    check(
      'card_changes_kind_known',
      sql`${change.kind} in ('reopen', 'drop', 'undrop', 'blocked', 'moving', 'owner-added', 'owner-removed')`,
    ),
    check(
      'card_changes_owner_given',
      sql`(${change.kind} in ('owner-added', 'owner-removed')) = (${change.userId} is not null)`,
    ),
  ],
);
