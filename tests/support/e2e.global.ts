import { startService } from './processes.ts';

/** A service with its own database and the demo company for each worker of the run. */
export default async function setup(): Promise<() => Promise<void>> {
  // A service that already runs, for trying one test again and again.
  if (process.env.E2E_DATA_DIR !== undefined) return () => Promise.resolve();
  const ports = (process.env.E2E_PORTS ?? '').split(' ').map(Number);
  const starts = await Promise.allSettled(ports.map((port) => startService({ port })));
  const services = starts.flatMap((start) => (start.status === 'fulfilled' ? [start.value] : []));
  const stop = async (): Promise<void> => { await Promise.all(services.map((service) => service.remove())); };
  for (const start of starts) {
    if (start.status === 'fulfilled') continue;
    await stop();
    throw start.reason;
  }
  // The workers read the sign-ins of their demo company there.
  process.env.E2E_DATA_DIRS = services.map(({ dataDir }) => dataDir).join('\n');
  return stop;
}
