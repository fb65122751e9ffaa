import type { Endpoint } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import { DomainError } from './errors.ts';

/** https://tus.io/protocols/resumable-upload, version 1.0.0: core, creation, expiration, termination. */
export const tusVersion = '1.0.0';
const extensions = 'creation,expiration,termination';

/** On every answer of these endpoints, a problem too. The question what the service can do carries no version. */
export function speakTus(endpoint: Endpoint, request: Request, response: Response): void {
  if (endpoint.tus === undefined) return;
  response.setHeader('Tus-Resumable', tusVersion);
  response.setHeader('Cache-Control', 'no-store');
  if (endpoint.tus === 'capabilities') {
    response.setHeader('Tus-Version', tusVersion).setHeader('Tus-Extension', extensions);
    return;
  }
  if (request.get('tus-resumable') === tusVersion) return;
  response.setHeader('Tus-Version', tusVersion);
  throw new DomainError('upload.version', { version: tusVersion });
}

/** What the headers say, in place of a JSON body. The bytes of `append` stay in the request. */
export function tusBody(endpoint: Endpoint, request: Request): unknown {
  if (endpoint.tus === 'creation') return { length: wholeNumber(request.get('upload-length')), ...metadataOf(request.get('upload-metadata') ?? '') };
  if (endpoint.tus !== 'append') return undefined;
  if (!request.is('application/offset+octet-stream')) throw new DomainError('request.unsupportedType');
  return { offset: wholeNumber(request.get('upload-offset')) };
}

/** What is no number stays what it is, and the contract names the field. */
function wholeNumber(value: string | undefined): unknown {
  return value !== undefined && /^\d{1,15}$/.test(value) ? Number(value) : value;
}

function metadataOf(header: string): Record<string, unknown> {
  const pairs = header.split(',').filter((pair) => pair.trim() !== '').map((pair) => pair.trim().split(' '));
  return Object.fromEntries(pairs.map(([key = '', value = '']) => [key, jsonOf(key, value)]));
}

function jsonOf(key: string, base64: string): unknown {
  try {
    return JSON.parse(Buffer.from(base64, 'base64').toString('utf8')) as unknown;
  } catch (error) {
    throw new DomainError('request.unreadable', {}, [{ path: `headers.upload-metadata.${key}`, message: 'is not JSON in base64' }], { cause: error });
  }
}
