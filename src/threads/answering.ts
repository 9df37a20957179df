/** The side of a thread: answers what `thread.ts` asks, one question after the other. */
import { parentPort } from 'node:worker_threads';
import type { Said } from './thread.ts';

export function answering<Question>(answer: (question: Question) => unknown): void {
  parentPort?.on('message', async (question: Question) => {
    parentPort?.postMessage(await said(() => answer(question)));
  });
}

/** An error loses its class on the way, and what it holds besides its message. */
async function said(answer: () => unknown): Promise<Said> {
  try {
    return { answer: await answer() };
  } catch (error) {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }
}
