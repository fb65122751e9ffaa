import { startService } from './processes.ts';

/** One service with its own database and the demo company for all browser tests of the run. */
export default async function setup(): Promise<() => Promise<void>> {
  // A service that already runs, for trying one test again and again.
  if (process.env.E2E_DATA_DIR !== undefined) return () => Promise.resolve();
  const service = await startService({ port: Number(process.env.E2E_PORT) });
  // The workers read the sign-ins of the demo company there.
  process.env.E2E_DATA_DIR = service.dataDir;
  return () => service.remove();
}
