/**
 * The entry: chooses between the bot, a rehearsal, and preparing quick starts. JavaScript, and keeps what Node.js compiles
 * for the next start from its first line on: a single file of TypeScript before that would have Node.js load its compiler
 * at each start. Everything else is imported from here on, once imports are quick.
 */
import { enableCompileCache } from 'node:module';
import { fileURLToPath } from 'node:url';

// Beside the packages: who can write there can change the programs anyway, which is not so of a folder that all users of a
// machine share. Where it can't be written, nothing is kept.
enableCompileCache(fileURLToPath(new URL('../node_modules/.cache/loadline/compiled', import.meta.url)));

const { quickenImports } = await import('./quick-imports.ts');
quickenImports();

const [command, ...args] = process.argv.slice(2);
if (command === 'rehearse') {
  const { rehearse } = await import('./rehearsal/rehearse.ts');
  // Not process.exit: a long result may still be on its way to a pipe.
  process.exitCode = await rehearse(args);
} else if (command === 'prepare') {
  const { prepareStart } = await import('./prepare-start.ts');
  await prepareStart();
} else if (command === undefined) {
  const { DATABASE_URL, DATABASE_URL_FILE } = process.env;
  if (!(DATABASE_URL || DATABASE_URL_FILE)) {
    const { pgliteProgram } = await import('./store/embedded/pglite-program.ts');
    void pgliteProgram();
  }
  const { runBot } = await import('./run-bot.ts');
  await runBot();
} else {
  console.error(`There is no command “${command}”. Use npm start or npm run rehearse.`);
  process.exit(2);
}
