/**
 * How long the bot's loop is held by the largest of everything, which is how long everybody else waits at least: the import of
 * 30,000 cards, its export, the copy of a person's data, a verdict, and charts. And a burst of large imports: what it does to
 * others, and to memory. Against Postgres and against the embedded database.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { sql } from 'drizzle-orm';
import { ACTIONS } from '../../src/slack/ids.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import { aMember, aTeam } from '../store/store-examples.ts';
import { type AppProcess, MAIN, startApp } from './app-process.ts';
import { startBenchDatabases } from './bench-database.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { channelId, fillTeams, memberId, sprintId, teamId } from './fill-teams.ts';
import { type ImportFile, largestImport } from './import-files.ts';
import type { LoopHeld } from './loop-watch.ts';
import { percentile } from './percentile.ts';
import { type QuickPlatform, startQuickPlatform, WORKSPACE_ID } from './quick-platform.ts';
import {
  commandFields,
  type PickedFile,
  pressFields,
  sendSigned,
  submissionFields,
} from './signed-request.ts';

const FILLING = { membersATeam: 8, cardsAMember: 12, answeredDays: 4, pastSprints: 10, prompted: true };
/** Forms of the burst; each is of another person and team. */
const FORMS = 22;
const OTHERS_TEAM = FORMS + 1;
/** Beside it what the deploy files allow: those for containers run on Postgres, the service unit may run without. */
const MEMORY = {
  Postgres: { mostMb: 400, allowedMb: 512 },
  embedded: { mostMb: 600, allowedMb: 1_024 },
} as const;
/** What the container image sets: see its Dockerfile. */
const OF_THE_IMAGE = { MALLOC_ARENA_MAX: '2', MALLOC_MMAP_THRESHOLD_: '131072' };
const MOST_HELD_MS = 50;
const ASK_EVERY_MS = 250;

interface Scene {
  readonly app: AppProcess;
  readonly platform: QuickPlatform;
  readonly kind: keyof typeof MEMORY;
}

let keys = 0;

/** @returns ms until the first answer came */
async function asked(scene: Scene, team: number, text: string, until?: string): Promise<number> {
  return answered(
    scene,
    (responseUrl) => commandFields(memberId(team, 1), channelId(team), text, responseUrl),
    until,
  );
}

async function answered(
  { app, platform }: Scene,
  fieldsFor: (responseUrl: string) => Record<string, string>,
  until?: string,
): Promise<number> {
  keys += 1;
  const key = `loop-${keys}`;
  const words = platform.arrival(`respond ${key}`, 120_000);
  const end = until === undefined ? words : platform.arrival(until);
  words.catch(() => undefined);
  const sentMs = performance.now();
  await sendSigned(app.eventsUrl, fieldsFor(platform.responseUrl(key))).catch((error: Error) =>
    console.error(error.message),
  );
  const { atMs } = await words;
  await end;
  return atMs - sentMs;
}

function kept(platform: QuickPlatform, files: readonly ImportFile[]): PickedFile[] {
  return files.map(({ name, content }, i) => ({
    id: `F${i}`,
    name,
    size: content.length,
    url_private_download: platform.keepFile(name, content),
  }));
}

interface SentImport {
  readonly team: number;
  readonly picked: readonly PickedFile[];
  readonly seen?: string;
}

/** @returns what the form showed or said in the end */
async function imported({ app, platform }: Scene, { team, picked, seen }: SentImport): Promise<string> {
  keys += 1;
  const viewId = `VIMPORT${keys}`;
  const late = new Promise<string>((resolve) => {
    platform.onArrival((what, { body }) => {
      if (what === 'views.update ' && body.includes(viewId)) resolve(body);
    });
  });
  const fields = submissionFields({
    userId: memberId(team, 1),
    callbackId: 'import-form',
    context: JSON.stringify({ teamId: teamId(team), round: 1, files: [], ...(seen ? { seen } : {}) }),
    values: { text: '' },
    viewId,
    files: { field: 'files', picked },
  });
  // One that isn't answered in time is a result as well.
  const { body } = await sendSigned(app.eventsUrl, fields).catch((error: Error) => ({ body: error.message }));
  const shown = body.includes('Still working') ? await late : body;
  return shown.startsWith('{') || shown === '' ? shown : decodeURIComponent(shown.replaceAll('+', ' '));
}

function seenIn(shown: string): string {
  const seen = /seen\\*":\\*"([\w-]+)/.exec(shown)?.[1];
  if (seen === undefined) throw new Error(`This is no preview of an import: ${shown.slice(0, 2_000)}`);
  return seen;
}

interface Burst {
  readonly otherMs: number;
  readonly readMs: number;
  readonly peakMb: number;
  readonly shown: readonly string[];
}

/** All forms at once; somebody else asks for the cards of their team meanwhile. */
async function burst(scene: Scene, picked: readonly PickedFile[]): Promise<Burst> {
  const { app } = scene;
  let isOver = false;
  const beganMs = performance.now();
  const forms = Promise.all(
    Array.from({ length: FORMS }, (_, i) => imported(scene, { team: i + 1, picked })),
  ).finally(() => {
    isOver = true;
  });
  const othersMs: number[] = [];
  const others = (async () => {
    while (!isOver) {
      othersMs.push(await asked(scene, OTHERS_TEAM, 'cards'));
      await wait(ASK_EVERY_MS);
    }
  })();
  const shown = await forms;
  const readMs = performance.now() - beganMs;
  await others;
  return { otherMs: percentile(othersMs, 1), readMs, peakMb: await app.peakMb(), shown };
}

async function heldBy(scene: Scene, what: () => Promise<unknown>): Promise<LoopHeld> {
  await scene.app.loopHeld();
  await what();
  return scene.app.loopHeld();
}

function heldRow({ kind }: Scene, name: string, { delayMs, processorMs }: LoopHeld): BenchRow {
  return benchRow({
    name: `loop held at most by ${name}, ${kind}`,
    unit: 'ms',
    value: processorMs,
    baseline: 'the longest delay by the clock',
    baselineValue: delayMs,
    bound: { of: 'value', atMost: MOST_HELD_MS },
  });
}

/** @param makeDue lets the sprint of the second team close; undefined: none runs */
async function measured(scene: Scene, makeDue: (() => Promise<void>) | undefined): Promise<BenchRow[]> {
  const { app, platform, kind } = scene;
  const rows: BenchRow[] = [];
  const measure = async (name: string, what: () => Promise<unknown>): Promise<void> => {
    const row = heldRow(scene, name, await heldBy(scene, what));
    console.error(
      `  ${row.name}: ${row.value.toFixed(0)} ms, ${row.baselineValue.toFixed(0)} ms by the clock`,
    );
    rows.push(row);
  };
  const picked = kept(platform, largestImport());
  await asked(scene, OTHERS_TEAM, 'cards');
  const aloneMs = await asked(scene, OTHERS_TEAM, 'cards');
  if (makeDue) {
    await measure('a first chart', () =>
      asked(scene, OTHERS_TEAM, 'history', 'files.completeUploadExternal '),
    );
    await measure('a chart', () => asked(scene, OTHERS_TEAM, 'odds', 'files.completeUploadExternal '));
  }
  let seen = '';
  await measure('the preview of the largest import', async () => {
    seen = seenIn(await imported(scene, { team: 1, picked }));
  });
  await measure('the largest import', () => imported(scene, { team: 1, picked, seen }));
  await measure('the largest export', () => asked(scene, 1, 'export'));
  await measure('the privacy overview', () => asked(scene, 1, 'privacy'));
  const copy = () =>
    answered(scene, (responseUrl) =>
      pressFields(memberId(1, 1), channelId(1), ACTIONS.sendMyCopy, responseUrl),
    );
  await measure('a copy of what is stored about somebody', copy);
  await measure('the largest history', () => asked(scene, 1, 'history', 'files.completeUploadExternal '));
  await measure('a status after it', () => asked(scene, 1, 'status'));
  if (makeDue) {
    await measure('a verdict', async () => {
      const verdict = platform.arrival(`chat.postMessage ${channelId(2)}`, 120_000);
      await makeDue();
      await verdict;
    });
  }
  const { otherMs, readMs, peakMb, shown } = await burst(scene, picked);
  const previews = shown.filter((text) => text.includes('seen')).length;
  console.error(
    `  burst: ${previews} previews in ${(readMs / 1_000).toFixed(1)} s; others ${otherMs.toFixed(0)} ms; peak ${peakMb.toFixed(0)} MB`,
  );
  rows.push(
    heldRow(scene, `a burst of ${FORMS} large imports`, await app.loopHeld()),
    benchRow({
      name: `somebody else’s command meanwhile, longest, ${kind}`,
      unit: 'ms',
      value: otherMs,
      baseline: 'the same before',
      baselineValue: aloneMs,
      bound: { of: 'value', atMost: 1_000 },
    }),
    benchRow({
      name: `memory at its peak, ${kind}`,
      unit: 'MB',
      value: peakMb,
      baseline: 'what the deploy files allow',
      baselineValue: MEMORY[kind].allowedMb,
      bound: { of: 'value', atMost: MEMORY[kind].mostMb },
    }),
  );
  return rows;
}

async function onPostgres(platform: QuickPlatform): Promise<BenchRow[]> {
  const databases = await startBenchDatabases();
  let app: AppProcess | undefined;
  try {
    const databaseUrl = await databases.create();
    const database = await openDatabase({ databaseUrl });
    await fillTeams(databaseUrl, { ...FILLING, teams: OTHERS_TEAM });
    app = await startApp(MAIN, platform.url, { DATABASE_URL: databaseUrl, ...OF_THE_IMAGE }, true);
    const makeDue = async (): Promise<void> => {
      await database.session.execute(sql`update loadline.sprints set closes_at = now(), ends_on = current_date
        where id = ${sprintId(2)}`);
    };
    return await measured({ app, platform, kind: 'Postgres' }, makeDue).finally(() => database.close());
  } finally {
    await app?.stop();
    await databases.stop();
  }
}

/** Teams alone, without a sprint. */
async function onEmbedded(platform: QuickPlatform): Promise<BenchRow[]> {
  const dataFolder = await mkdtemp(join(tmpdir(), 'loadline-bench-'));
  let app: AppProcess | undefined;
  try {
    const { store, close } = await openDatabase({ dataFolder });
    await store.transaction(async (tx) => {
      for (let team = 1; team <= OTHERS_TEAM; team += 1) {
        const id = teamId(team);
        await tx.write.teams.save(aTeam({ id, workspaceId: WORKSPACE_ID, channelId: channelId(team) }));
        await tx.write.teams.saveMembers(id, [aMember({ userId: memberId(team, 1), isFacilitator: true })]);
      }
    });
    await close();
    app = await startApp(MAIN, platform.url, { LOADLINE_DATA_FOLDER: dataFolder }, true);
    return await measured({ app, platform, kind: 'embedded' }, undefined);
  } finally {
    await app?.stop();
    await rm(dataFolder, { recursive: true, force: true });
  }
}

export const loopBench: Bench = {
  name: 'loop',
  takesSeconds: 300,
  async run() {
    const platform = await startQuickPlatform();
    try {
      return [...(await onPostgres(platform)), ...(await onEmbedded(platform))];
    } finally {
      await platform.stop();
    }
  },
};
