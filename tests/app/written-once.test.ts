import { expect, it } from 'vitest';
import type { PlanInput } from '../../src/app/planning/plan-input.ts';
import type { Store, Transaction } from '../../src/app/ports/store.ts';
import {
  AlreadyWritten,
  asOneRequest,
  GivenUp,
  giveUp,
  settleWritten,
  writtenOnce,
  writtenSoFar,
} from '../../src/app/written-once.ts';
import { savedSprint } from '../store/store-examples.ts';
import { describeOnBoth } from '../support/databases.ts';

const clock = { now: () => new Date('2026-11-02T09:15:00Z') };
const DRAFT: Omit<PlanInput, 'teamId' | 'name'> = {
  goal: '',
  startsOn: '2026-11-02',
  endsOn: '2026-11-13',
  closesAt: '17:00',
  awayDays: '',
  cards: 'Tide table, 5',
};
let keys = 0;

function newKey(): string {
  keys += 1;
  return `request:${keys}`;
}

describeOnBoth('what a request writes', (database) => {
  const store = (): Store => writtenOnce(database().store, clock);

  /** Changes the team's name in a transaction of a request. */
  async function renaming(key: string | undefined, teamId: string, name: string): Promise<void> {
    await asOneRequest(key, () => store().transaction((tx) => rename(tx, teamId, name)));
  }

  async function rename(tx: Transaction, teamId: string, name: string): Promise<void> {
    const team = await tx.read.teamById(teamId);
    if (!team) throw new Error('no such team');
    await tx.write.teams.save({ ...team, name });
  }

  const nameOf = async (teamId: string) =>
    (await database().store.read((read) => read.teamById(teamId)))?.name;

  it('is written once when it comes twice, one after the other', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    await renaming(key, team.id, 'First');
    await expect(renaming(key, team.id, 'Second')).rejects.toBeInstanceOf(AlreadyWritten);
    expect(await nameOf(team.id)).toBe('First');
  });

  it('is written once when it comes twice at the same time', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    const outcomes = await Promise.allSettled([
      renaming(key, team.id, 'First'),
      renaming(key, team.id, 'Second'),
    ]);
    const refused = outcomes.filter((outcome) => outcome.status === 'rejected');
    expect(refused.map(({ reason }) => reason)).toEqual([expect.any(AlreadyWritten)]);
  });

  it('is known as written when it comes twice, though its writing fails the second time', async () => {
    const { team, sprint } = await savedSprint(database());
    const key = newKey();
    await renaming(key, team.id, 'First');
    const failing = asOneRequest(key, () => store().transaction((tx) => tx.write.sprints.insert(sprint)));
    await expect(failing).rejects.toBeInstanceOf(AlreadyWritten);
  });

  it('is written when it comes again and the first time came to nothing', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    const cutShort = asOneRequest(key, () =>
      store().transaction(async (tx) => {
        await rename(tx, team.id, 'Cut short');
        throw new Error('the process died');
      }),
    );
    await expect(cutShort).rejects.toThrow('the process died');
    await renaming(key, team.id, 'Second try');
    expect(await nameOf(team.id)).toBe('Second try');
  });

  it('is not written any more once it was given up', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    expect(await giveUp(store(), key, clock.now())).toBe(true);
    await expect(renaming(key, team.id, 'Too late')).rejects.toBeInstanceOf(GivenUp);
    await expect(renaming(key, team.id, 'Far too late')).rejects.toBeInstanceOf(GivenUp);
    expect(await nameOf(team.id)).toBe(team.name);
  });

  it('can not be given up after it was written, and stays known as written', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    await renaming(key, team.id, 'First');
    expect(await giveUp(store(), key, clock.now())).toBe(false);
    await expect(renaming(key, team.id, 'Second')).rejects.toBeInstanceOf(AlreadyWritten);
  });

  it.each([
    ['nothing', 'its repetition can write no more', async () => true],
    ['unsettled', 'its repetition may have written', async () => false],
    ['unsettled', 'nobody can say', () => Promise.reject(new Error('connection lost'))],
    ['unsettled', 'nobody answers', () => new Promise<boolean>(() => {})],
  ])('is known to be %s when it failed and %s', async (written, _why, claim) => {
    const settled = await asOneRequest(newKey(), async () => {
      await settleWritten(claim);
      return writtenSoFar();
    });
    expect(settled).toBe(written);
  });

  it('is not asked about again when it is known to be kept', async () => {
    const { team } = await savedSprint(database());
    const known = await asOneRequest(undefined, async () => {
      await store().transaction((tx) => rename(tx, team.id, 'Kept'));
      await settleWritten(() => Promise.reject(new Error('asked')));
      return writtenSoFar();
    });
    expect(known).toBe('kept');
  });

  it('may be written in several transactions of the one request', async () => {
    const { team } = await savedSprint(database());
    await asOneRequest(newKey(), async () => {
      await store().transaction((tx) => rename(tx, team.id, 'First'));
      await store().transaction((tx) => rename(tx, team.id, 'Second'));
    });
    expect(await nameOf(team.id)).toBe('Second');
  });

  it('is every change through every writing port', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    await renaming(key, team.id, 'First');
    const { write } = await database().store.transaction(async (tx) => tx);
    expect(Object.keys(write)).toContain('posts');
    for (const [subject, port] of Object.entries(write)) {
      for (const method of Object.keys(port)) {
        const changing: Store = {
          ...database().store,
          transaction: (work) =>
            database().store.transaction((tx) =>
              work({ ...tx, write: { [subject]: { [method]: async () => 'changed' } } as never }),
            ),
        };
        const again = asOneRequest(key, () =>
          writtenOnce(changing, clock).transaction(async (tx) => {
            const ports = tx.write as unknown as Record<string, Record<string, () => Promise<unknown>>>;
            return ports[subject]?.[method]?.();
          }),
        );
        await expect(again, `${subject}.${method}`).rejects.toBeInstanceOf(AlreadyWritten);
      }
    }
  });

  it('is neither a draft nor a lock, which may be repeated', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    const typing = (name: string) =>
      asOneRequest(key, async () => {
        await store().transaction(async ({ drafts, lock }) => {
          await lock.team(team.id);
          await drafts.save(team.id, 'U-ana', { ...DRAFT, teamId: team.id, name });
        });
        return writtenSoFar();
      });
    expect([await typing('first try'), await typing('second try')]).toEqual(['nothing', 'nothing']);
    const draft = await database().store.read((read) => read.draftOf(team.id, 'U-ana'));
    expect(draft?.name).toBe('second try');
    await renaming(key, team.id, 'Then written');
    expect(await nameOf(team.id)).toBe('Then written');
  });

  it('leaves a request that only reads free to come again', async () => {
    const { team } = await savedSprint(database());
    const key = newKey();
    const look = () => asOneRequest(key, () => store().read((read) => read.teamById(team.id)));
    expect(await look()).toMatchObject({ id: team.id });
    expect(await look()).toMatchObject({ id: team.id });
  });

  it('is known to be kept once it is committed, and not before', async () => {
    const { team } = await savedSprint(database());
    const known: string[] = [writtenSoFar()];
    await asOneRequest(undefined, async () => {
      await store().read((read) => read.teamById(team.id));
      known.push(writtenSoFar());
      await store().transaction((tx) => rename(tx, team.id, 'Kept'));
      known.push(writtenSoFar());
    });
    expect(known).toEqual(['nothing', 'nothing', 'kept']);
  });

  it('is known to be uncertain when the database was lost as it committed', async () => {
    const { team } = await savedSprint(database());
    const losing: Store = {
      ...database().store,
      transaction: async (work) => {
        await database().store.transaction(work);
        throw new Error('connection lost');
      },
    };
    await asOneRequest(newKey(), async () => {
      const lost = writtenOnce(losing, clock).transaction((tx) => rename(tx, team.id, 'Who knows'));
      await expect(lost).rejects.toThrow('connection lost');
      expect(writtenSoFar()).toBe('uncertain');
    });
  });
});
