import type { AddressInfo } from 'node:net';
import type { Server } from 'node:http';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { createApp } from './app.ts';
import { createLog, type Log } from './common/log.ts';
import { Worker } from './common/worker.ts';
import { readEnv } from './env.ts';
import { SetUpService } from './identity/setUp.service.ts';
import { loadDemo, withAddress } from './seed/demo.ts';

async function main(): Promise<void> {
  const env = readEnv(process.env);
  const log = createLog(env.LOG_LEVEL);
  const app = await createApp({ env, log });
  stopOnSignal(app, log);
  const demo = env.DEMO ? await loadDemo(app) : null; // whole before anybody is served
  const setUp = env.DEMO ? null : await app.get(SetUpService).offerLink();
  await app.get(Worker).start();
  await app.listen(env.PORT, env.HOST);
  const { port } = (app.getHttpServer() as Server).address() as AddressInfo;
  const address = env.PUBLIC_URL ?? `http://${env.HOST.includes(':') ? `[${env.HOST}]` : env.HOST}:${port}`;
  log.info({ port, host: env.HOST }, 'listening');
  if (demo !== null) log.info({ signIns: withAddress(demo, address) }, 'demo ready');
  if (setUp !== null) log.info({ url: address + setUp }, 'set-up link');
}

/** Stops accepting, lets requests and tasks end, then leaves; a second signal leaves at once. */
function stopOnSignal(app: NestExpressApplication, log: Log): void {
  let stopping = false;
  const stop = (signal: string): void => {
    if (stopping) process.exit(1);
    stopping = true;
    log.info({ signal }, 'stopping');
    app.close().then(
      () => {
        log.info('stopped');
        process.exit(0);
      },
      (error: unknown) => {
        log.error({ err: String(error) }, 'did not stop cleanly');
        process.exit(1);
      },
    );
  };
  process.on('SIGTERM', () => stop('SIGTERM'));
  process.on('SIGINT', () => stop('SIGINT'));
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  process.exit(1);
});
