/**
 * The entry: the bot, a rehearsal, what an installation prepares, or a command of the operator. JavaScript, and the rest is imported after the compile
 * cache is on: measured on two cores, the cache takes 0.6 s off a start of 3.2 s, and an entry in TypeScript would cost
 * 0.3 s of that, since Node.js loads its compiler for it.
 */
import { enableCompileCache } from 'node:module';
import { fileURLToPath } from 'node:url';

// Beside the packages: a user who can write there can change the programs anyway, which is not so of the folder for
// temporary files that all users of a machine share. Where it can't be written, nothing is kept.
enableCompileCache(fileURLToPath(new URL('../node_modules/.cache/loadline/compiled', import.meta.url)));

/** Each is loaded when it is asked for: the doctor must run even where the bot can't be loaded. */
const OPERATOR_COMMANDS = {
  doctor: async () => (await import('./operator/doctor.ts')).doctor,
  dump: async () => (await import('./operator/data-folder.ts')).dump,
  restore: async () => (await import('./operator/data-folder.ts')).restore,
  posts: async () => (await import('./operator/posts.ts')).posts,
  erase: async () => (await import('./operator/erase.ts')).erase,
  forget: async () => (await import('./operator/forget.ts')).forget,
  'own-record': async () => (await import('./operator/own-record.ts')).scoreOwnRecord,
  'rotate-keys': async () => (await import('./operator/rotate-keys.ts')).rotateKeys,
};

const [command, ...args] = process.argv.slice(2);
// Not process.exit, which could cut off a long result on its way into a pipe.
if (command === 'rehearse') {
  const { rehearse } = await import('./rehearsal/rehearse.ts');
  process.exitCode = await rehearse(args);
} else if (command === 'prepare') {
  // What is imported is compiled, and kept.
  await import('./run-bot.ts');
  const { makeImage } = await import('./store/embedded/make-data-folder-image.ts');
  await makeImage();
} else if (command === undefined) {
  const { runBot } = await import('./run-bot.ts');
  await runBot();
} else if (Object.hasOwn(OPERATOR_COMMANDS, command)) {
  const run = await OPERATOR_COMMANDS[command]();
  const { code, stdout, stderr } = await run(args, process.env);
  if (stdout !== undefined) console.log(stdout);
  if (stderr !== undefined) console.error(stderr);
  process.exitCode = code;
} else {
  const { say } = await import('./words/say.ts');
  const commands = ['rehearse', ...Object.keys(OPERATOR_COMMANDS)];
  console.error(say('start-no-command', { command, commands }));
  process.exitCode = 2;
}
