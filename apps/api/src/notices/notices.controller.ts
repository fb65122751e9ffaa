import { Controller, Req, Res } from '@nestjs/common';
import { type InputOf, notices as api } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { NoticesService } from './notices.service.ts';

@Controller()
export class NoticesController {
  private readonly notices: NoticesService;

  constructor(notices: NoticesService) {
    this.notices = notices;
  }

  @Route(api.stream)
  stream(@Who() actor: Actor, @Input() input: InputOf<typeof api.stream>, @Req() request: Request, @Res() response: Response) {
    return this.notices.open(actor, request.get('last-event-id') ?? input.query.after, response);
  }
}
