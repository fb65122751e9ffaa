import type { Me } from '@yardfall/contracts';
import type { Response } from 'express';
import type { RequestInfo } from '../common/actor.ts';
import { setSessionCookie } from '../common/session.ts';
import type { Opened } from './sessions.service.ts';

/** The cookie goes with the answer; the browser keeps it exactly as long as the session lasts. */
export function admit(response: Response, caller: RequestInfo, opened: Opened): Me {
  setSessionCookie(response, opened.token, opened.expiresAt.getTime() - caller.at.getTime(), caller.origin.startsWith('https:'));
  return opened.me;
}
