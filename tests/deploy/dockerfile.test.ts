/**
 * The container image, as far as it can be checked without an engine: the file is well formed and keeps to the
 * rules, and the files that it puts together are all that the bot needs. (What needs an engine: that the base
 * image exists and the build ends.)
 */
import { execFile } from 'node:child_process';
import { cp, glob, mkdir, mkdtemp, readFile, rm, stat, symlink } from 'node:fs/promises';
import { createServer } from 'node:http';
import { builtinModules } from 'node:module';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { DockerfileParser } from 'dockerfile-ast';
import { validate } from 'dockerfile-utils';
import { parseSync } from 'oxc-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import packageJson from '../../package.json' with { type: 'json' };
import { knownSettings } from './known-settings.ts';

const ROOT = join(import.meta.dirname, '../..');
const text = await readFile(join(ROOT, 'deploy/Dockerfile'), 'utf8');
const ignored = await readFile(join(ROOT, '.dockerignore'), 'utf8');
const dockerfile = DockerfileParser.parse(text);
const instructions = dockerfile.getInstructions().map((instruction) => ({
  keyword: instruction.getKeyword(),
  args: instruction.getArguments().map((argument) => argument.getValue()),
  text: instruction.getArgumentsContent() ?? '',
  isFromStage: /^COPY\s+--from=/.test(instruction.getTextContent()),
}));
const of = (keyword: string) => instructions.filter((instruction) => instruction.keyword === keyword);
const finalStage = instructions.slice(instructions.findLastIndex(({ keyword }) => keyword === 'FROM'));

/** What the final stage copies from the project's folder: source and destination below /app. */
const copied = finalStage
  .filter(({ keyword, isFromStage }) => keyword === 'COPY' && !isFromStage)
  .flatMap(({ args }) => args.slice(0, -1).map((source) => ({ source, into: args.at(-1) as string })));

let image: string;

/** Puts the files together as the image has them; dependencies are lent from here. */
beforeAll(async () => {
  image = await mkdtemp(join(tmpdir(), 'loadline-image-'));
  for (const { source, into } of copied) {
    const isFolder = (await stat(join(ROOT, source))).isDirectory();
    const target = isFolder ? join(image, into) : join(image, into, source.split('/').at(-1) as string);
    await mkdir(dirname(target), { recursive: true });
    await cp(join(ROOT, source), target, { recursive: true });
  }
  await rm(join(image, 'src/rehearsal'), { recursive: true });
  await symlink(join(ROOT, 'node_modules'), join(image, 'node_modules'));
});
afterAll(() => rm(image, { recursive: true, force: true }));

function run(
  args: readonly string[],
  environment: Record<string, string> = {},
): Promise<{ code: number; output: string }> {
  return new Promise((resolve) => {
    const options = { cwd: image, env: { PATH: process.env.PATH ?? '', ...environment } };
    execFile(process.execPath, args, options, (error, stdout, stderr) => {
      resolve({ code: error ? Number(error.code) : 0, output: stdout + stderr });
    });
  });
}

describe('the Dockerfile', () => {
  it('is well formed', () => {
    expect(validate(text)).toEqual([]);
    expect(validate(`${text}\nRUNN x`).length).toBeGreaterThan(0);
  });

  it('builds in stages on the slim official image of the Node.js that the project asks for', () => {
    const major = /\d+/.exec(packageJson.engines.node)?.[0];
    const NODE_IMAGE = expect.stringMatching(/^\$\{NODE_IMAGE\}$/);
    expect(of('FROM').map(({ args }) => args[0])).toEqual([NODE_IMAGE, NODE_IMAGE]);
    expect(of('ARG').map(({ args }) => args[0])).toEqual([`NODE_IMAGE=node:${major}-slim`]);
    expect(of('FROM')[0]?.args.slice(1)).toEqual(['AS', 'dependencies']);
  });

  it('installs what the lock file says, without development’s packages and without running their scripts', () => {
    expect(of('RUN')[0]?.text).toMatch(/^npm ci --omit=dev --ignore-scripts\b/);
    expect(of('RUN').filter(({ text: words }) => /npm (?:i|install)\b/.test(words))).toEqual([]);
  });

  it('applies our patches, which a script of the installation does elsewhere, and fails where one does not fit', () => {
    const [, script] = /^(patch-package --error-on-fail)$/.exec(packageJson.scripts.postinstall) ?? [];
    expect(of('RUN')[0]?.text).toMatch(new RegExp(`^npm ci [^&]*&& npx ${script}\\b`));
    expect(packageJson.dependencies).toHaveProperty('patch-package');
  });

  it('runs as a numbered user other than root, who owns only the data', () => {
    const user = finalStage.filter(({ keyword }) => keyword === 'USER');
    expect(user.map(({ args }) => args[0])).toEqual(['1000:1000']);
    expect(text).toContain('--owner=1000 --group=1000 --mode=0700 /data');
    expect(finalStage.find(({ keyword }) => keyword === 'VOLUME')?.text).toBe('["/data"]');
    // Nothing is copied on behalf of that user: it can't change the program.
    expect(text).not.toContain('--chown');
  });

  it('holds no secret, and sets only variables that the bot knows', async () => {
    const variables = of('ENV').flatMap(({ text: words }) =>
      [...words.matchAll(/([A-Z_]+)=/g)].map(([, name]) => name as string),
    );
    const known = await knownSettings();
    expect(variables.filter((name) => !known.has(name))).toEqual([]);
    expect(variables.filter((name) => /TOKEN|SECRET|DATABASE_URL|KEY/.test(name))).toEqual([]);
  });

  it('starts programs without a shell, so that a stop reaches them', () => {
    for (const keyword of ['CMD', 'HEALTHCHECK']) {
      const [, list] = /(\[.*\])$/.exec(of(keyword).at(-1)?.text ?? '') ?? [];
      const [program, file] = JSON.parse(list as string) as string[];
      expect(program).toBe('node');
      expect(copied.some(({ source }) => file?.startsWith(`${source}/`))).toBe(true);
    }
  });

  it('gets from the project’s folder only what it copies, without the rehearsal', () => {
    const lines = ignored.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
    expect(lines[0]).toBe('*');
    const letIn = lines.filter((line) => line.startsWith('!')).map((line) => line.slice(1));
    const wanted = of('COPY')
      .filter(({ isFromStage }) => !isFromStage)
      .flatMap(({ args }) => args.slice(0, -1));
    expect(letIn.toSorted()).toEqual([...new Set(wanted)].toSorted());
    expect(lines.filter((line) => !line.startsWith('!')).slice(1)).toEqual(['src/rehearsal']);
  });
});

describe('what the image holds', () => {
  it('is enough for the bot to come as far as its settings', async () => {
    const { code, output } = await run(['src/main.js']);
    expect(code).toBe(1);
    expect(output).toContain('LOADLINE_BOT_TOKEN is missing');
    expect(output).not.toContain('ERR_MODULE_NOT_FOUND');
  });

  it('is enough for the doctor, who finds manifest, font and libraries in it', async () => {
    const { output } = await run(['src/main.js', 'doctor']);
    for (const check of ['manifest', 'charts', 'time zones']) {
      expect(output).toMatch(new RegExp(`^ok +${check} `, 'm'));
    }
  });

  it('says whether the bot lives', async () => {
    const server = createServer((request, response) => {
      response.writeHead(request.url === '/healthz' ? 200 : 404).end();
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const PORT = String((server.address() as AddressInfo).port);
    expect((await run(['src/operator/health-check.ts'], { PORT })).code).toBe(0);
    const apart = { PORT: '1', LOADLINE_HEALTH_PORT: PORT };
    expect((await run(['src/operator/health-check.ts'], apart)).code).toBe(0);
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
    expect((await run(['src/operator/health-check.ts'], { PORT })).code).toBe(1);
  });

  it('needs no package that only development has', async () => {
    const needed = new Set<string>();
    for await (const file of glob('src/**/*.ts', { cwd: image })) {
      const source = await readFile(join(image, file), 'utf8');
      const { module } = parseSync(file, source);
      const specifiers = [
        ...module.staticImports
          .filter(({ entries }) => !(entries.length > 0 && entries.every(({ isType }) => isType)))
          .map(({ moduleRequest }) => moduleRequest.value),
        ...module.dynamicImports.map(({ moduleRequest: { start, end } }) => source.slice(start + 1, end - 1)),
      ];
      for (const specifier of specifiers) {
        if (specifier.startsWith('.') || specifier.startsWith('node:')) continue;
        needed.add(
          specifier
            .split('/')
            .slice(0, specifier.startsWith('@') ? 2 : 1)
            .join('/'),
        );
      }
    }
    expect(needed.size).toBeGreaterThan(8);
    const shipped = new Set([...Object.keys(packageJson.dependencies), ...builtinModules]);
    expect([...needed].filter((name) => !shipped.has(name))).toEqual([]);
  });
});
