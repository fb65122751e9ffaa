import { Controller, Res } from '@nestjs/common';
import { identity as api, type InputOf } from '@yardfall/contracts';
import type { Response } from 'express';
import type { Actor, RequestInfo } from '../common/actor.ts';
import { Caller, Input, Route, Who } from '../common/route.ts';
import { clearSessionCookie } from '../common/session.ts';
import { admit } from './admit.ts';
import { SessionsService } from './sessions.service.ts';

@Controller()
export class SessionController {
  private readonly sessions: SessionsService;

  constructor(sessions: SessionsService) {
    this.sessions = sessions;
  }

  @Route(api.signIn)
  async signIn(@Caller() caller: RequestInfo, @Input() input: InputOf<typeof api.signIn>, @Res({ passthrough: true }) response: Response) {
    return admit(response, caller, await this.sessions.signIn(caller, input.body.email, input.body.password));
  }

  @Route(api.me)
  me(@Who() actor: Actor) {
    return this.sessions.me(actor);
  }

  @Route(api.signOut)
  async signOut(@Who() actor: Actor, @Res({ passthrough: true }) response: Response): Promise<void> {
    await this.sessions.signOut(actor);
    clearSessionCookie(response, actor.request.origin.startsWith('https:'));
  }

  @Route(api.updatePreferences)
  updatePreferences(@Who() actor: Actor, @Input() input: InputOf<typeof api.updatePreferences>) {
    return this.sessions.updatePreferences(actor, input.body);
  }
}
