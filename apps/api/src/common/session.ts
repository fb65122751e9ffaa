import { createHash, randomBytes } from 'node:crypto';
import type { MemberRole, Role } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import type pg from 'pg';
import type { Actor, RequestInfo } from './actor.ts';

export const sessionCookie = 'yardfall_session';

/** 256 bits, base64url: 43 characters. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** Only this is stored. */
export function hashToken(token: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(createHash('sha256').update(token).digest());
}

export function tokenOf(request: Request): string | null {
  return cookieOf(request, sessionCookie);
}

/** A token of 43 characters in the cookie of that name. */
export function cookieOf(request: Request, wanted: string): string | null {
  for (const part of (request.headers.cookie ?? '').split(';')) {
    const [name, value] = part.trim().split('=');
    if (name === wanted && value !== undefined && /^[A-Za-z0-9_-]{43}$/.test(value)) return value;
  }
  return null;
}

export function setSessionCookie(response: Response, token: string, maxAge: number, secure: boolean): void {
  response.cookie(sessionCookie, token, { httpOnly: true, sameSite: 'lax', secure, path: '/', maxAge });
}

export function clearSessionCookie(response: Response, secure: boolean): void {
  response.clearCookie(sessionCookie, { httpOnly: true, sameSite: 'lax', secure, path: '/' });
}

interface SessionRow {
  readonly id: string;
  readonly company_id: string;
  readonly member_id: string | null;
  readonly job_id: string | null;
  readonly customer_id: string | null;
  readonly expires_at: Date;
  readonly revoked_at: Date | null;
  readonly cut_off_at: Date | null;
  readonly active: boolean;
  readonly roles: Role[];
  readonly language: Actor['language'];
  readonly units: Actor['units'];
}

/** Runs before the company is known, so it goes through a function of the owner that returns one row. */
export async function readSession(pool: pg.Pool, token: string, request: RequestInfo): Promise<Actor | null> {
  const { rows } = await pool.query<SessionRow>('SELECT * FROM look_up_session($1)', [Buffer.from(hashToken(token))]);
  const row = rows[0];
  if (row === undefined || row.revoked_at !== null || row.expires_at <= request.at || !row.active) return null;
  const common = { companyId: row.company_id, language: row.language, units: row.units, sessionId: row.id, cutOff: row.cut_off_at !== null, request };
  if (row.member_id !== null) return { kind: 'member', id: row.member_id, roles: row.roles as MemberRole[], jobId: null, ...common };
  if (row.customer_id === null || row.job_id === null) return null;
  return { kind: 'customer', id: row.customer_id, roles: ['customer'], jobId: row.job_id, ...common };
}
