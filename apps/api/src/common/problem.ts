import { errorCodes, type ErrorCode, type Problem } from '@yardfall/contracts';
import { isMessageCode, type Language, render } from '@yardfall/text';
import { MulterError } from 'multer';
import { DomainError } from './errors.ts';
import { prismaCodeOf, sqlStateOf } from './sqlState.ts';

const titles: Readonly<Record<number, string>> = {
  400: 'Bad Request', 401: 'Unauthorized', 403: 'Forbidden', 404: 'Not Found', 409: 'Conflict', 410: 'Gone', 412: 'Precondition Failed', 413: 'Content Too Large',
  415: 'Unsupported Media Type', 422: 'Unprocessable Content', 428: 'Precondition Required', 429: 'Too Many Requests', 500: 'Internal Server Error',
  503: 'Service Unavailable', 507: 'Insufficient Storage',
};

export function problemOf(error: DomainError, language: Language, requestId: string): Problem {
  const status = errorCodes[error.code];
  const detail = sentence(error.code, { ...error.params, requestId }, language);
  return { type: `urn:yardfall:problem:${error.code}`, title: titles[status] ?? 'Error', status, detail, code: error.code, params: { ...error.params }, issues: [...error.issues], requestId };
}

function sentence(code: ErrorCode, params: Problem['params'], language: Language): string {
  const key = `errors.${code}`;
  return isMessageCode(key) ? render(language, 'us', key, params) : code;
}

const bySqlState: Readonly<Record<string, ErrorCode>> = {
  '23505': 'conflict.duplicate', '23503': 'notFound', '40001': 'busy', '40P01': 'busy', '55P03': 'busy', '57P01': 'busy', '57P03': 'busy', '53300': 'busy', '53100': 'storage.full',
  'YF001': 'conflict.state', ECONNREFUSED: 'busy', ECONNRESET: 'busy',
};
const byPrisma: Readonly<Record<string, ErrorCode>> = { P2002: 'conflict.duplicate', P2003: 'notFound', P2025: 'notFound', P2024: 'busy', P2028: 'busy', P2034: 'busy', P1001: 'busy', P1017: 'busy' };
const byParser: Readonly<Record<string, ErrorCode>> = {
  'entity.too.large': 'request.tooLarge', 'entity.parse.failed': 'request.unreadable', 'encoding.unsupported': 'request.unsupportedType', 'charset.unsupported': 'request.unsupportedType',
  'request.aborted': 'request.unreadable', 'request.size.invalid': 'request.unreadable', 'entity.verify.failed': 'request.unreadable',
};

/** The one place where foreign errors become coded ones; null: nobody foresaw it. */
export function toDomainError(error: unknown): DomainError | null {
  if (error instanceof DomainError) return error;
  const code = codeFor(error);
  return code === null ? null : new DomainError(code, {}, [], { cause: error });
}

function codeFor(error: unknown): ErrorCode | null {
  if (error instanceof MulterError) return error.code === 'LIMIT_FILE_SIZE' ? 'request.tooLarge' : 'request.unreadable';
  const state = sqlStateOf(error);
  if (state !== null && bySqlState[state] !== undefined) return bySqlState[state];
  const prisma = prismaCodeOf(error);
  if (prisma !== null && byPrisma[prisma] !== undefined) return byPrisma[prisma];
  if (typeof error !== 'object' || error === null) return null;
  if ('type' in error && typeof error.type === 'string' && byParser[error.type] !== undefined) return byParser[error.type] ?? null;
  return byStatus(error);
}

function byStatus(error: object): ErrorCode | null {
  const status = 'status' in error ? error.status : undefined;
  if (status === 404) return 'notFound';
  if (status === 413) return 'request.tooLarge';
  if (status === 415) return 'request.unsupportedType';
  if (status === 400 || error instanceof URIError) return 'request.unreadable';
  return error instanceof Error && isLostConnection(error) ? 'busy' : null;
}

/** What the driver says without a SQLSTATE when the database went away under a request. */
function isLostConnection(error: Error): boolean {
  const code = 'code' in error ? error.code : undefined;
  return code === 'ECONNREFUSED' || code === 'ECONNRESET' || code === 'EPIPE'
    || /^(timeout exceeded when trying to connect|Connection terminated|Client has encountered a connection error)/.test(error.message);
}
