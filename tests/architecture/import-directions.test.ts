/** The import directions of the architecture (DEVELOPERS.md, "Rooms"): who may import whom, and no cycles. */
import { readFileSync } from 'node:fs';
import { glob } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';
import { parseSync } from 'oxc-parser';
import { beforeAll, describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');

/** For each room: the rooms and packages that it may import. `*`: any package. Files lie in `src/`. */
const MAY_IMPORT: Readonly<Record<string, { rooms: readonly string[]; packages: readonly string[] | '*' }>> =
  {
    'main.js': {
      rooms: ['run-bot.ts', 'rehearsal', 'store', 'operator', 'words'],
      packages: ['node:module', 'node:url'],
    },
    'run-bot.ts': { rooms: ['*'], packages: '*' },
    'setting-rules.ts': { rooms: [], packages: ['node:crypto', 'node:net', 'zod'] },
    'config.ts': { rooms: ['setting-rules.ts'], packages: ['zod'] },
    'secret-files.ts': { rooms: ['config.ts', 'setting-rules.ts'], packages: ['node:fs'] },
    'reference.ts': { rooms: [], packages: ['node:async_hooks', 'node:crypto'] },
    'error-chain.ts': { rooms: [], packages: [] },
    'newest-connections.ts': { rooms: [], packages: ['node:http', 'node:net'] },
    'logger.ts': { rooms: ['setting-rules.ts', 'reference.ts', 'error-chain.ts'], packages: ['pino'] },
    sprint: { rooms: [], packages: [] },
    forecast: { rooms: ['sprint'], packages: [] },
    app: {
      rooms: ['sprint', 'forecast', 'error-chain.ts'],
      packages: [
        'csv-parse',
        'csv-stringify',
        'date-fns',
        'temporal-polyfill',
        'node:async_hooks',
        'node:crypto',
        'node:timers/promises',
      ],
    },
    words: {
      rooms: ['app', 'sprint', 'forecast', 'config.ts', 'setting-rules.ts'],
      packages: ['@fluent/bundle', 'node:fs', 'node:url'],
    },
    store: { rooms: ['app', 'sprint', 'forecast', 'error-chain.ts'], packages: '*' },
    slack: {
      rooms: [
        'words',
        'app',
        'sprint',
        'forecast',
        'config.ts',
        'logger.ts',
        'reference.ts',
        'error-chain.ts',
        'newest-connections.ts',
      ],
      packages: '*',
    },
    jobs: { rooms: ['app', 'logger.ts', 'reference.ts'], packages: '*' },
    metrics: {
      rooms: ['app', 'config.ts', 'setting-rules.ts', 'error-chain.ts', 'newest-connections.ts'],
      packages: '*',
    },
    threads: { rooms: [], packages: ['node:worker_threads'] },
    calendars: { rooms: ['app', 'threads'], packages: '*' },
    reading: { rooms: ['app', 'threads'], packages: [] },
    charts: { rooms: ['words', 'app', 'sprint', 'forecast', 'threads'], packages: '*' },
    operator: {
      rooms: ['app', 'words', 'store', 'doctor', 'config.ts', 'logger.ts', 'secret-files.ts'],
      packages: ['node:fs/promises', 'node:readline/promises', 'node:util'],
    },
    'operator/health-check.ts': { rooms: [], packages: [] },
    doctor: {
      rooms: [
        'words',
        'store',
        'slack',
        'charts',
        'config.ts',
        'setting-rules.ts',
        'logger.ts',
        'secret-files.ts',
      ],
      packages: '*',
    },
    rehearsal: {
      rooms: [
        'words',
        'app',
        'sprint',
        'forecast',
        'store',
        'slack',
        'jobs',
        'calendars',
        'reading',
        'charts',
        'logger.ts',
      ],
      packages: '*',
    },
  };

interface Import {
  readonly from: string;
  /** A path below `src/`, or a package. */
  readonly target: string;
  readonly isPackage: boolean;
}

function importsOf(file: string): Import[] {
  const { module } = parseSync(file, readFileSync(join(ROOT, 'src', file), 'utf8'));
  const specifiers = [
    ...module.staticImports.map(({ moduleRequest }) => moduleRequest.value),
    ...module.staticExports.flatMap(({ entries }) =>
      entries.flatMap(({ moduleRequest }) => (moduleRequest ? [moduleRequest.value] : [])),
    ),
  ];
  return specifiers.map((specifier) => {
    const isPackage = !specifier.startsWith('.');
    return { from: file, target: isPackage ? specifier : join(dirname(file), specifier), isPackage };
  });
}

/** A file that is named above is a room of its own. */
function roomOf(file: string): string {
  return file in MAY_IMPORT ? file : (file.split('/')[0] as string);
}

function packageOf(specifier: string): string {
  return specifier.startsWith('@')
    ? specifier.split('/').slice(0, 2).join('/')
    : (specifier.split('/')[0] as string);
}

describe('import directions', () => {
  const files: string[] = [];
  let imports: Import[] = [];

  beforeAll(async () => {
    for await (const file of glob('src/**/*.{ts,js}', { cwd: ROOT })) files.push(relative('src', file));
    imports = files.flatMap(importsOf);
  });

  it('reads the whole source: every room is known and has files', () => {
    expect(files.length).toBeGreaterThan(100);
    expect([...new Set(files.map(roomOf))].sort()).toEqual(Object.keys(MAY_IMPORT).sort());
    expect(imports.length).toBeGreaterThan(files.length);
  });

  it('lets a room import only the rooms below it', () => {
    const wrong = imports.filter(({ from, target, isPackage }) => {
      const rooms = MAY_IMPORT[roomOf(from)]?.rooms ?? [];
      return (
        !isPackage &&
        roomOf(from) !== roomOf(target) &&
        !rooms.includes('*') &&
        !rooms.includes(roomOf(target))
      );
    });
    expect(wrong.map(({ from, target }) => `${from} imports ${target}`)).toEqual([]);
  });

  it('lets a room import only the packages it may', () => {
    const wrong = imports.filter(({ from, target, isPackage }) => {
      const packages = MAY_IMPORT[roomOf(from)]?.packages ?? [];
      return (
        isPackage && packages !== '*' && !packages.includes(packageOf(target)) && !packages.includes(target)
      );
    });
    expect(wrong.map(({ from, target }) => `${from} imports ${target}`)).toEqual([]);
  });

  it('lets only main import the rehearsal', () => {
    const importers = imports.filter(({ target, isPackage }) => !isPackage && roomOf(target) === 'rehearsal');
    const outside = importers.map(({ from }) => from).filter((from) => roomOf(from) !== 'rehearsal');
    expect(outside.filter((from) => from !== 'main.js')).toEqual([]);
  });

  it('has no cycles of files, imports of types included', () => {
    const targets = new Map<string, string[]>();
    for (const { from, target, isPackage } of imports) {
      if (!isPackage) targets.set(from, [...(targets.get(from) ?? []), target]);
    }
    const done = new Set<string>();
    const cycles: string[] = [];
    const visit = (file: string, path: readonly string[]): void => {
      if (path.includes(file)) {
        cycles.push([...path.slice(path.indexOf(file)), file].join(' → '));
        return;
      }
      if (done.has(file)) return;
      for (const target of targets.get(file) ?? []) visit(target, [...path, file]);
      done.add(file);
    };
    for (const file of files) visit(file, []);
    expect(cycles).toEqual([]);
  });
});
