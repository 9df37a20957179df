import { once } from 'node:events';
import { connect, createServer, type Socket } from 'node:net';
import { expect, test } from 'vitest';
import { letOthersTurn } from '../../src/app/let-others-turn.ts';

test('who writes while the loop is held is read before the work goes on', async () => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  const worker = connect(port, '127.0.0.1');
  const [servedWorker] = (await once(server, 'connection')) as [Socket];
  const somebodyElse = connect(port, '127.0.0.1');
  const [servedElse] = (await once(server, 'connection')) as [Socket];
  let isRead = false;
  servedElse.on('data', () => {
    isRead = true;
  });
  try {
    // The work begins as all work does: because something has come in.
    const readBeforeItWentOn = new Promise<boolean>((resolve) => {
      servedWorker.once('data', async () => {
        somebodyElse.write('a word');
        await letOthersTurn();
        resolve(isRead);
      });
    });
    worker.write('begin');
    expect(await readBeforeItWentOn).toBe(true);
  } finally {
    worker.destroy();
    somebodyElse.destroy();
    server.close();
  }
});
