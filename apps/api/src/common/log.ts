import { ConsoleLogger, type LoggerService } from '@nestjs/common';
import pino, { type Logger } from 'pino';

export const LOG = Symbol('log');
export type Log = Logger;

/** JSON lines. Bodies, cookies and tokens are never handed to it; the redaction is the second fence. */
export function createLog(level: string): Log {
  return pino({
    level,
    base: undefined,
    timestamp: pino.stdTimeFunctions.isoTime,
    redact: { paths: ['*.password', '*.token', '*.cookie', '*.authorization', 'headers'], remove: true },
  });
}

/** What was thrown, in a line. */
export function describe(error: unknown): string {
  if (error instanceof Error) return error.message;
  return typeof error === 'string' ? error : JSON.stringify(error ?? null);
}

/** Nest's own messages go where ours go. */
export class NestLog extends ConsoleLogger implements LoggerService {
  private readonly target: Log;

  constructor(target: Log) {
    super();
    this.target = target;
  }

  override log(message: unknown): void {
    this.target.debug({ from: 'nest' }, String(message));
  }

  override warn(message: unknown): void {
    this.target.warn({ from: 'nest' }, String(message));
  }

  override error(message: unknown, ...rest: unknown[]): void {
    this.target.error({ from: 'nest', rest: rest.map(String) }, String(message));
  }

  override debug(): void {}

  override verbose(): void {}
}
