import { startService } from './processes.ts';

/** One service with its own database and the demo company for all browser tests of the run. */
export default async function setup(): Promise<() => Promise<void>> {
  const service = await startService({ port: Number(process.env.E2E_PORT) });
  // The workers read the sign-ins of the demo company there.
  process.env.E2E_DATA_DIR = service.dataDir;
  return () => service.remove();
}
