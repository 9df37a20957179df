/**
 * A process of its own for `lost-connections.test.ts`: loses connections in the middle of transactions, again and again,
 * and says what became of each. The database's address is the first argument.
 */
import { sql } from 'drizzle-orm';
import { openDatabase } from '../../src/store/open-database.ts';

const ROUNDS = 20;
const database = await openDatabase({ databaseUrl: process.argv[2], onBackgroundError: () => undefined });
let refused = 0;
let tries = 0;
const answers = () =>
  database.ping().then(
    () => true,
    () => false,
  );
for (let round = 0; round < ROUNDS; round += 1) {
  const lost = database.session.transaction(async (tx) => {
    await tx.execute(sql`select pg_terminate_backend(pg_backend_pid())`);
  });
  await lost.catch(() => {
    refused += 1;
  });
  // The next may be given the connection that is just going.
  while (!(await answers())) tries += 1;
}
await database.close();
if (tries > ROUNDS) throw new Error(`the database was tried ${tries} times`);
console.log(`refused ${refused} of ${ROUNDS}, and still here`);
