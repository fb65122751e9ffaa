import type { Endpoint } from '@yardfall/contracts';
import express, { type Request, type RequestHandler, type Response } from 'express';
import multer from 'multer';
import { DomainError } from './errors.ts';
import { describe } from './log.ts';
import type { UploadedFile } from './request.ts';
import { tusBody } from './tus.ts';

const defaultLimit = 1_048_576;
const handlers = new Map<Endpoint, RequestHandler>();

/** Reads the body once the caller is known and allowed: nobody else makes the service hold bytes. */
export async function readBody(endpoint: Endpoint, request: Request, response: Response): Promise<{ body: unknown; file: UploadedFile | null }> {
  if (endpoint.tus !== undefined) return { body: tusBody(endpoint, request), file: null };
  if (endpoint.body === null && endpoint.upload === undefined) return { body: undefined, file: null };
  const isForm = endpoint.upload !== undefined;
  const empty = request.headers['content-length'] === '0' || (request.headers['content-length'] === undefined && request.headers['transfer-encoding'] === undefined);
  if (empty && !isForm) return { body: {}, file: null };
  if (!request.is(isForm ? 'multipart/form-data' : 'application/json')) throw new DomainError('request.unsupportedType');
  await run(handlerOf(endpoint), request, response);
  return isForm ? fromForm(endpoint, request) : { body: request.body as unknown, file: null };
}

function handlerOf(endpoint: Endpoint): RequestHandler {
  const made = handlers.get(endpoint) ?? (endpoint.upload === undefined ? json(endpoint) : form(endpoint.upload));
  handlers.set(endpoint, made);
  return made;
}

function json(endpoint: Endpoint): RequestHandler {
  return express.json({ limit: endpoint.maxBody ?? defaultLimit, strict: true });
}

function form(upload: NonNullable<Endpoint['upload']>): RequestHandler {
  const limits = { fileSize: upload.maxBytes, files: 1, fields: 1, fieldSize: 65_536, parts: 2, fieldNameSize: 20 };
  return multer({ storage: multer.memoryStorage(), limits }).single('file') as RequestHandler;
}

function fromForm(endpoint: Endpoint, request: Request): { body: unknown; file: UploadedFile } {
  const { file } = request;
  if (file === undefined) throw new DomainError('request.invalid', {}, [{ path: 'file', message: 'is missing' }]);
  if (!endpoint.upload?.types.includes(file.mimetype)) throw new DomainError('request.unsupportedType');
  const uploaded = { bytes: file.buffer, name: file.originalname.slice(0, 200), mediaType: file.mimetype };
  return { body: metaOf(request.body as unknown), file: uploaded };
}

function metaOf(fields: unknown): unknown {
  const meta = typeof fields === 'object' && fields !== null && 'meta' in fields ? fields.meta : undefined;
  if (meta === undefined) return {};
  try {
    return JSON.parse(typeof meta === 'string' ? meta : '') as unknown;
  } catch (error) {
    throw new DomainError('request.unreadable', {}, [{ path: 'meta', message: 'is not JSON' }], { cause: error });
  }
}

function run(handler: RequestHandler, request: Request, response: Response): Promise<void> {
  return new Promise((resolve, reject) => {
    void handler(request, response, (error?: unknown) => {
      if (error === undefined || error === null) resolve();
      else reject(error instanceof Error ? error : new Error(describe(error)));
    });
  });
}
