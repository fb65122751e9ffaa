import { randomUUID } from 'node:crypto';
import type { BodyInput, Endpoint, sending, uploads } from '@yardfall/contracts';
import type { Test } from 'supertest';
import type { Agent } from './builders.ts';
import type { Call } from './calls.ts';
import { sha256 } from './work.ts';

export type NewUpload = BodyInput<typeof uploads.create>;

export type NewSent = BodyInput<typeof sending.create>;

export const tusVersion = { 'Tus-Resumable': '1.0.0' };

export function newUpload(bytes: Buffer, meta: Partial<NewUpload['meta']> = {}): NewUpload {
  return { length: bytes.length, meta: { id: randomUUID(), sha256: sha256(bytes), takenAt: '2026-03-02T14:00:00Z', itemKey: null, part: null, note: '', forCustomer: false, ...meta } };
}

/** The same from a customer's phone. */
export function newSent(bytes: Buffer, meta: Partial<NewSent['meta']> = {}): NewSent {
  return { length: bytes.length, meta: { id: randomUUID(), sha256: sha256(bytes), takenAt: '2026-03-02T14:00:00Z', note: '', ...meta } };
}

/** The description as the protocol carries it. */
export function metadata(meta: unknown): string {
  return `meta ${Buffer.from(JSON.stringify(meta)).toString('base64')}`;
}

export function creationHeaders({ length, meta, ...rest }: Record<string, unknown>): Record<string, string> {
  const more = Object.entries(rest).map(([name, value]) => `,${name} ${Buffer.from(JSON.stringify(value)).toString('base64')}`);
  return { ...tusVersion, 'Upload-Length': String(length), 'Upload-Metadata': metadata(meta) + more.join('') };
}

export function beginUpload(agent: Agent, path: string, upload: NewUpload | NewSent): Test {
  return agent.post(`/api/v1${path}`).set(creationHeaders(upload));
}

export function append(agent: Agent, address: string, offset: number, bytes: Buffer): Test {
  return agent.patch(address).set({ ...tusVersion, 'Upload-Offset': String(offset), 'Content-Type': 'application/offset+octet-stream' }).send(bytes);
}

/** A sample call in the words of the protocol. */
export function tusRequest(request: Test, { tus }: Endpoint, { body = {}, file }: Call): Test {
  if (tus === 'creation') return request.set(creationHeaders(body as Record<string, unknown>));
  if (tus !== 'append') return request.set(tusVersion);
  const { offset } = body as { offset: number };
  return request.set({ ...tusVersion, 'Upload-Offset': String(offset), 'Content-Type': 'application/offset+octet-stream' }).send(file?.bytes ?? Buffer.alloc(0));
}
