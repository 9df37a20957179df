/** PGlite's program, compiled once and beside whatever else a start has to do. Must import nothing that takes time itself. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** Part of every JavaScript engine, but TypeScript declares it only for browsers. */
const { WebAssembly: engine } = globalThis as unknown as {
  readonly WebAssembly: { compile(program: Uint8Array): Promise<WebAssembly.Module> };
};

let compiled: Promise<WebAssembly.Module> | undefined;

/** Begins to compile it, if nobody has yet. */
export function pgliteProgram(): Promise<WebAssembly.Module> {
  if (!compiled) {
    const file = createRequire(import.meta.url)
      .resolve('@electric-sql/pglite')
      .replace(/[^/\\]+$/, 'pglite.wasm');
    // At once: imports that follow keep the process from hearing of a file that was read meanwhile.
    compiled = engine.compile(readFileSync(file));
    // Whoever opens the database is told.
    compiled.catch(() => undefined);
  }
  return compiled;
}
