/** Wiring, start and graceful stop. Only `main.js` imports this. */
import { setTimeout as wait } from 'node:timers/promises';
import packageJson from '../package.json' with { type: 'json' };
import { runDueWork } from './app/clock/ask-members.ts';
import { takeOutLeftImports } from './app/import/import-sprints.ts';
import type { AppDependencies } from './app/ports/app-dependencies.ts';
import { deliverPost } from './app/posting/deliver.ts';
import type { Post } from './app/posting/posts.ts';
import { letGoOfOld } from './app/privacy/ended-teams.ts';
import { removeMessages } from './app/privacy/remove-messages.ts';
import { type NoteSecurity, notingStore, notingUseCases } from './app/security-events.ts';
import { bindUseCases } from './app/use-cases.ts';
import { homesTouchedBy } from './app/watching/homes-touched.ts';
import { writtenOnce } from './app/written-once.ts';
import { calendars } from './calendars/calendars.ts';
import { charts } from './charts/charts.ts';
import { type Config, ConfigError, type Distribution, readConfig, unknownSettings } from './config.ts';
import { firstCodeOf } from './error-chain.ts';
import { onceADay, startClock } from './jobs/clock.ts';
import { watchDatabase } from './jobs/database-watch.ts';
import { deliveryHandler } from './jobs/deliveries.ts';
import { startWatchdog } from './jobs/watchdog.ts';
import { createLogger, type Logger, noteSecurity } from './logger.ts';
import { meteredMessenger, meteredStore } from './metrics/metered-ports.ts';
import { fileReading } from './reading/file-reading.ts';
import { withoutReference } from './reference.ts';
import { readSecretFiles } from './secret-files.ts';
import { createMessenger } from './slack/sending/messenger.ts';
import { createSlackApp, PlatformStartError } from './slack/slack-app.ts';
import {
  ConnectionRefused,
  connectMany,
  connectOne,
  endFormerInstallation,
} from './slack/workspaces/connect.ts';
import { createDirectory } from './slack/workspaces/directory.ts';
import { isLostConnection } from './store/connection-error.ts';
import type { Database } from './store/database.ts';
import { openDatabase } from './store/open-database.ts';
import { openQueue } from './store/queue/delivery-queue.ts';
import { queueState } from './store/queue/queue-state.ts';
import { StoreError } from './store/store-error.ts';
import { say, sayCode } from './words/say.ts';

/** Longest that a stop may take before the process ends regardless. */
const STOP_LIMIT_MS = 30_000;

/** Starts everything. @returns what stops it again, in the order in which work can be finished */
async function start(config: Config, logger: Logger): Promise<() => Promise<void>> {
  const { access } = config;
  // Before the database, so that a wrong token shows at once.
  const one = access.kind === 'one-workspace' ? await connectOne(access.botToken, config, logger) : undefined;
  const onBackgroundError = (err: Error): void =>
    withoutReference(() =>
      logger.warn({ err, reason: firstCodeOf(err) }, 'database trouble in the background'),
    );
  const database = await openDatabase({
    databaseUrl: config.databaseUrl,
    databaseCa: config.databaseCa,
    dataFolder: config.dataFolder,
    onBackgroundError,
  });
  const metering = await startMetering(config, database, logger);
  const { metrics } = metering;
  const watch = watchDatabase(database.state, logger, undefined, metrics?.databaseLooked);
  const note: NoteSecurity = (event) => noteSecurity(logger, event);
  const store = notingStore(database.store, note);
  const bulkStore = notingStore(database.bulkStore, note);
  if (one) await endFormerInstallation(store, one.workspaceId);
  const queue = await openQueue(database);
  const clock = { now: () => new Date() };
  const { workspaces, bulkWorkspaces, distribution, workspaceName } =
    one ?? (await connectMany(access as Distribution, config, { store, bulkStore, clock }, logger));
  const directory = createDirectory({ workspaces, nowMs: Date.now });
  const messenger = createMessenger({ workspaces: bulkWorkspaces, logger, wait });
  const deps: AppDependencies = {
    store: writtenOnce(metrics ? meteredStore(store, metrics) : store, clock),
    clock,
    directory,
    calendars,
    files: fileReading,
    charts,
    messenger: metrics ? meteredMessenger(messenger, metrics, clock) : messenger,
    setUpUsers: config.setUpUsers,
  };
  const app = createSlackApp({
    config,
    workspaces,
    distribution,
    deps,
    useCases: notingUseCases(bindUseCases(deps), note),
    logger,
    meter: metrics,
    readiness: watch.problems,
  });
  const { port, healthPort } = await app.start();
  const bulk: AppDependencies = { ...deps, store: metrics ? meteredStore(bulkStore, metrics) : bulkStore };
  // Nobody waits for it, and nothing is lost when it fails: a page is made again when it is opened.
  const refreshHomes = (post: Post): void =>
    void homesTouchedBy(bulk, post).then(app.refreshHomes, (error: unknown) =>
      logger.info({ err: error }, 'Home pages were not brought up to date.'),
    );
  const deliver = (postId: string, isLast: boolean) => deliverPost(bulk, postId, isLast, refreshHomes);
  await queue.work(deliveryHandler(deliver, logger, metrics));
  const passedOver = (id: string, err: unknown): void => {
    logger.error({ err, id }, 'passed over, for what was due fails there; the next tick tries again');
    metrics?.passedOver();
  };
  const takeOutDaily = onceADay(clock.now, () => takeOutLeftImports(bulk, passedOver));
  const letGoDaily = onceADay(clock.now, () => letGoOfOld(bulk, passedOver));
  const ticking = startClock(
    async () => {
      await watch.look();
      const served = await runDueWork(bulk, passedOver);
      await removeMessages(bulk);
      const removed = (await letGoDaily()) + (await takeOutDaily());
      if (removed > 0) logger.info({ removed }, 'old records removed');
      return served;
    },
    logger,
    metrics,
  );
  logger.info(
    {
      mode: config.transport.mode,
      port,
      healthPort,
      metricsPort: metering.port,
      database: database.kind,
      databaseEncryption: database.encryption,
      workspaceName,
    },
    'Loadline is running',
  );
  return async () => {
    // First nothing new comes in, then the work in hand is finished or handed back.
    await app.stop();
    await ticking.stop();
    await queue.stop({ graceful: true });
    await metering.stop();
    await database.close();
  };
}

/** Keeps and serves metrics when the settings ask for them. */
async function startMetering(config: Config, database: Database, logger: Logger) {
  if (!config.metrics) return { metrics: undefined, port: undefined, stop: async () => undefined };
  // Only now, since it loads a package of many files.
  const [{ createMetrics }, { startMetricsServer }, { watchQueue }] = await Promise.all([
    import('./metrics/metrics.ts'),
    import('./metrics/metrics-server.ts'),
    import('./metrics/queue-gauges.ts'),
  ]);
  const metrics = createMetrics({
    version: packageJson.version,
    nodeVersion: process.version,
    database: database.kind,
  });
  watchQueue(metrics.register, () => queueState(database.session));
  const server = await startMetricsServer({
    ...config.metrics,
    register: metrics.register,
    onError: (err) => logger.error({ err }, 'the metrics could not be read'),
  });
  return { metrics, port: server.port, stop: () => server.stop() };
}

/** Stops once, in order, and ends the process; a second signal does not hurry it. */
function stopOnSignal(stop: () => Promise<void>, logger: Logger): void {
  let isStopping = false;
  const end = (exitCode: number, details: Record<string, unknown>): void => {
    if (isStopping) return;
    isStopping = true;
    logger.info(details, 'stopping');
    setTimeout(() => process.exit(1), STOP_LIMIT_MS).unref();
    stop().then(
      () => {
        logger.info({}, 'stopped');
        process.exit(exitCode);
      },
      (err: unknown) => {
        logger.error({ err }, 'the stop failed');
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => end(0, { signal }));
  // For instance a socket that can't be opened again: the service manager or container engine restarts the process.
  process.on('unhandledRejection', (err) => {
    // Code that waited for the database got the error; the driver also fails in places where nothing waits.
    if (isLostConnection(err))
      return logger.warn({ err }, 'a connection was lost that nobody was waiting for');
    logger.fatal({ err }, 'something failed that nobody was waiting for');
    end(1, {});
  });
}

/** What the operator reads when a start fails for a known reason; undefined for a defect. */
function startProblems(error: unknown, config: Config | undefined): readonly string[] | undefined {
  if (error instanceof ConfigError) return error.problems.map((problem) => sayCode('start', problem));
  if (error instanceof ConnectionRefused) return error.problems.map((problem) => sayCode('start', problem));
  if (error instanceof StoreError) return [sayCode('start', error.problem)];
  if (error instanceof PlatformStartError) return [sayCode('start', error.problem)];
  const port = config && portProblem(error, config);
  return port === undefined ? undefined : [port];
}

const WHY_NOT_OPENED = new Map([
  ['EADDRINUSE', 'in-use'],
  ['EADDRNOTAVAIL', 'no-such-address'],
  ['ENOTFOUND', 'no-such-address'],
  ['EACCES', 'not-allowed'],
] as const);

/** Why a port could not be opened, and by which setting it is chosen; undefined when it is something else. */
function portProblem(error: unknown, { healthPort, metrics }: Config): string | undefined {
  const { syscall, code, port, address, hostname } = error as NodeJS.ErrnoException & {
    readonly port?: number;
    readonly address?: string;
    readonly hostname?: string;
  };
  // A host that is a name is looked up first; only that of the metrics may be one.
  const isOfMetrics =
    hostname === undefined ? port !== undefined && port === metrics?.port : hostname === metrics?.host;
  if (syscall !== 'listen' && !(syscall === 'getaddrinfo' && isOfMetrics)) return undefined;
  const reason = String(code);
  return say('start-port-refused', {
    why: WHY_NOT_OPENED.get(reason as 'EACCES') ?? 'refused',
    reason,
    port: String(port),
    address: address ?? hostname ?? '',
    setting: isOfMetrics ? 'LOADLINE_METRICS_PORT' : port === healthPort ? 'LOADLINE_HEALTH_PORT' : 'PORT',
    hostSetting: isOfMetrics ? 'LOADLINE_METRICS_HOST' : 'LOADLINE_HOST',
  });
}

/** Starts the bot and lets it run until a signal stops it. Ends the process when it can't be started. */
export async function runBot(): Promise<void> {
  let config: Config | undefined;
  try {
    config = readConfig(readSecretFiles(process.env));
    const logger = createLogger({ level: config.logLevel });
    const unknown = unknownSettings(process.env);
    if (unknown.length > 0) logger.warn({ settings: unknown }, 'settings that are none, so they do nothing');
    startWatchdog();
    stopOnSignal(await start(config, logger), logger);
  } catch (error) {
    const problems = startProblems(error, config);
    if (!problems) throw error;
    console.error([say('start-refused'), ...problems.map((problem) => `- ${problem}`)].join('\n'));
    process.exit(1);
  }
}
