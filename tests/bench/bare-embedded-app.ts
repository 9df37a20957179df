/** The least that a Bolt app on an embedded database can do before it is ready. A process of its own, as `bare-app.ts`. */
import { mkdir } from 'node:fs/promises';
import { PGlite } from '@electric-sql/pglite';
import { bareApp, serve } from './bare-server.ts';

const { LOADLINE_DATA_FOLDER = '' } = process.env;

await mkdir(LOADLINE_DATA_FOLDER, { recursive: true });
const database = await PGlite.create(LOADLINE_DATA_FOLDER);
await database.exec('create table if not exists bare_answers (user_id text not null, said text not null)');

await serve(bareApp(), () => database.close());
