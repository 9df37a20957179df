/**
 * Finds modules without Node.js reading their package's description again for each of them. In the packages below it is so
 * long that this took more than a third of the bot's start (measured with Node.js 24.21, drizzle-orm 0.45: 1.3 s of 3.6 s,
 * and date-fns 4.4: 0.3 s of what was left). Must find what Node.js itself would find.
 */
import { registerHooks } from 'node:module';

/** Their files for `import` end in `.js`, those for `require` in `.cjs`; all of them are modules. */
const PACKAGES = /^(?:drizzle-orm|date-fns)(?=\/|$)/;
const PACKAGE_FILE = /\/node_modules\/(?:drizzle-orm|date-fns)\/.*\.js$/;
const OWN_FILES = new URL('.', import.meta.url).href;

type Found = ReturnType<Parameters<typeof registerHooks>[0]['resolve'] & object>;

export function quickenImports(): void {
  /** Where the packages' entries are, by the names under which they are imported. */
  const entries = new Map<string, Found>();
  registerHooks({
    resolve(specifier, context, next) {
      const format = formatBeside(specifier, context.parentURL ?? '');
      if (format) return { url: new URL(specifier, context.parentURL).href, format, shortCircuit: true };
      if (!PACKAGES.test(specifier)) return next(specifier, context);
      // By what kind of import, for the packages have files for both kinds.
      const key = `${specifier} ${context.conditions.join()}`;
      const found = entries.get(key) ?? next(specifier, context);
      entries.set(key, found);
      return { ...found, shortCircuit: true };
    },
  });
}

/** What a module is that is named by its place beside the one that imports it; undefined: let Node.js find out. */
function formatBeside(specifier: string, parentUrl: string): string | undefined {
  if (!/^\.\.?\//.test(specifier)) return undefined;
  if (specifier.endsWith('.ts') && parentUrl.startsWith(OWN_FILES)) return 'module-typescript';
  if (specifier.endsWith('.js') && PACKAGE_FILE.test(parentUrl)) return 'module';
  return undefined;
}
