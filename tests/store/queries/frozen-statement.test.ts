import { getTableColumns, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { frozenChange, frozenSelect } from '../../../src/store/queries/frozen-statement.ts';
import { members, pastSprints, sprints, teams } from '../../../src/store/schema.ts';
import { describeOnBoth } from '../../support/databases.ts';
import { savedSprint } from '../store-examples.ts';

describeOnBoth('a statement put together once', (database) => {
  it('reads every kind of column as drizzle itself does', async () => {
    const { team, sprint } = await savedSprint(database());
    const { session } = database();
    const frozen = {
      teams: frozenSelect(getTableColumns(teams), sql`from ${teams} where id = ${sql.placeholder('id')}`),
      sprints: frozenSelect(
        getTableColumns(sprints),
        sql`from ${sprints} where id = ${sql.placeholder('id')}`,
      ),
    };
    expect(await frozen.teams(session, { id: team.id })).toEqual(
      await session.select().from(teams).where(sql`id = ${team.id}`),
    );
    expect(await frozen.sprints(session, { id: sprint.id })).toEqual(
      await session.select().from(sprints).where(sql`id = ${sprint.id}`),
    );
  });

  it('takes the same value in several places, and each run its own', async () => {
    const { team: one } = await savedSprint(database());
    const { team: two } = await savedSprint(database());
    const placeholder = sql.placeholder('id');
    const select = frozenSelect(
      { id: teams.id, asked: sql<string>`${placeholder}::text` },
      sql`from ${teams} where id = ${placeholder}`,
    );
    const both = [one, two].map(({ id }) => select(database().session, { id }));
    expect((await Promise.all(both)).flat()).toEqual([one, two].map(({ id }) => ({ id, asked: id })));
  });

  it('reads an expression as it says', async () => {
    const select = frozenSelect(
      { text: sql<unknown>`1.5::numeric`, number: sql`1.5::numeric`.mapWith(pastSprints.velocityPoints) },
      sql`limit ${sql.placeholder('most')}`,
    );
    expect(await select(database().session, { most: 1 })).toEqual([{ text: '1.5', number: 1.5 }]);
  });

  it('gives back what a change wrote', async () => {
    const { team } = await savedSprint(database());
    const join = frozenChange(
      { userId: members.userId, isActive: members.isActive },
      sql`insert into ${members} (team_id, user_id, name, is_facilitator, is_active)
        values (${sql.placeholder('team')}, ${sql.placeholder('user')}, 'Mira', false, true)`,
    );
    const joined = await join(database().session, { team: team.id, user: 'U-mira' });
    expect(joined).toEqual([{ userId: 'U-mira', isActive: true }]);
  });
});

describe('a statement with a value of its own', () => {
  it('is refused, for it would be the same in every run', () => {
    expect(() => frozenSelect({ id: teams.id }, sql`from ${teams} where id = ${'team-1'}`)).toThrow(
      'Only placeholders may differ from run to run.',
    );
  });
});
