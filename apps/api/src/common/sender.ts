import type { Request, Response } from 'express';
import type pg from 'pg';
import type { Actor, RequestInfo } from './actor.ts';
import { cookieOf, hashToken } from './session.ts';

const senderCookie = 'yardfall_sender';

interface LinkRow {
  readonly id: string;
  readonly company_id: string;
  readonly kind: string;
  readonly job_id: string | null;
  readonly expires_at: Date;
  readonly revoked_at: Date | null;
}

/** A cookie of its own: whoever opens such a link stays signed in with what they had. */
export function setSenderCookie(response: Response, token: string, maxAge: number, secure: boolean): void {
  response.cookie(senderCookie, token, { httpOnly: true, sameSite: 'lax', secure, path: '/', maxAge });
}

export function senderTokenOf(request: Request): string | null {
  return cookieOf(request, senderCookie);
}

/** Whoever holds an open link that takes photos; the link is looked up at every request, so that ending it ends them. */
export async function readSender(pool: pg.Pool, token: string, request: RequestInfo): Promise<Actor | null> {
  const { rows } = await pool.query<LinkRow>('SELECT * FROM look_up_link($1)', [Buffer.from(hashToken(token))]);
  const row = rows[0];
  if (row?.kind !== 'sending' || row.job_id === null || row.revoked_at !== null || row.expires_at <= request.at) return null;
  return { kind: 'sender', id: row.id, companyId: row.company_id, roles: ['sender'], jobId: row.job_id, language: request.language, units: 'us', sessionId: null, request };
}
