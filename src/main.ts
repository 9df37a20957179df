/**
 * The entry: chooses between the bot and a rehearsal. Everything else is imported from here on, once imports are quick;
 * what this file imports itself, and what that imports, is not.
 */
import { quickenImports } from './quick-imports.ts';

quickenImports();

const [command, ...args] = process.argv.slice(2);
if (command === 'rehearse') {
  const { rehearse } = await import('./rehearsal/rehearse.ts');
  // Not process.exit: a long result may still be on its way to a pipe.
  process.exitCode = await rehearse(args);
} else if (command === undefined) {
  const { runBot } = await import('./run-bot.ts');
  await runBot();
} else {
  console.error(`There is no command “${command}”. Use npm start or npm run rehearse.`);
  process.exit(2);
}
