import { z } from 'zod';

const flag = z.enum(['0', '1', 'true', 'false']).default('0').transform((value) => value === '1' || value === 'true');

const Env = z.object({
  /** The app role: owns nothing, cannot pass row security. */
  DATABASE_URL: z.url(),
  /** The owner: worker, sealing of the trail, queue tables. */
  MIGRATE_DATABASE_URL: z.url(),
  PORT: z.coerce.number().int().min(0).max(65_535).default(3000),
  HOST: z.string().min(1).default('127.0.0.1'),
  /** The address that people open; links are built on it. Without it the address of the request is used. */
  PUBLIC_URL: z.url().optional(),
  /** How many proxies stand in front; their X-Forwarded-* headers are believed. */
  TRUST_PROXY: z.coerce.number().int().min(0).max(5).default(0),
  WEB_DIST: z.string().optional(),
  DATA_DIR: z.string().min(1),
  /** Wraps the keys of customers; 32 bytes as hex or base64. Without it a key file of the data folder is made and used. */
  SECRET_KEY: z.string().optional(),
  DEMO: flag,
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'silent']).default('info'),
  POOL_SIZE: z.coerce.number().int().min(1).max(100).default(10),
  /** Threads that evaluate designs. */
  EVALUATE_THREADS: z.coerce.number().int().min(1).max(64).default(2),
  /** Longest evaluation that only answers, with its wait for a thread [ms]. */
  EVALUATE_LIMIT: z.coerce.number().int().min(100).max(600_000).default(10_000),
  /** Longest evaluation that is stored with its draft or revision [ms]: work would be lost, so a slow machine may take its time. */
  EVALUATE_STORED_LIMIT: z.coerce.number().int().min(100).max(600_000).default(60_000),
});
export type Env = z.infer<typeof Env>;

export const ENV = Symbol('env');

export function readEnv(source: NodeJS.ProcessEnv): Env {
  const result = Env.safeParse(source);
  if (result.success) return result.data;
  const lines = result.error.issues.map((issue) => `  ${issue.path.join('.')}: ${issue.message}`);
  throw new Error(`The environment is incomplete:\n${lines.join('\n')}`);
}
