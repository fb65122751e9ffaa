import { Controller, Req, Res } from '@nestjs/common';
import { type InputOf, pathOf, sending as api } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import type { Actor, RequestInfo } from '../common/actor.ts';
import { found } from '../common/errors.ts';
import { Caller, Input, Route, Who } from '../common/route.ts';
import { setSenderCookie } from '../common/sender.ts';
import { tell } from '../photos/tusAnswer.ts';
import { UploadsService } from '../photos/uploads.service.ts';
import { photoOf, SendingService } from './sending.service.ts';

@Controller()
export class SendingController {
  private readonly sending: SendingService;
  private readonly uploads: UploadsService;

  constructor(sending: SendingService, uploads: UploadsService) {
    this.sending = sending;
    this.uploads = uploads;
  }

  @Route(api.link)
  link(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.link>) {
    return this.sending.mint(actor, params.jobId);
  }

  @Route(api.linkState)
  linkState(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.linkState>) {
    return this.sending.state(actor, params.jobId);
  }

  @Route(api.end)
  end(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.end>) {
    return this.sending.end(actor, params.jobId);
  }

  @Route(api.open)
  async open(@Caller() caller: RequestInfo, @Input() { body }: InputOf<typeof api.open>, @Res({ passthrough: true }) response: Response) {
    const page = await this.sending.enter(caller, body.token);
    setSenderCookie(response, body.token, Date.parse(page.expiresAt) - caller.at.getTime(), caller.origin.startsWith('https:'));
    return page;
  }

  @Route(api.read)
  read(@Who() actor: Actor) {
    return this.sending.read(actor);
  }

  @Route(api.create)
  async create(@Who() actor: Actor, @Input() { body }: InputOf<typeof api.create>, @Res({ passthrough: true }) response: Response) {
    const state = tell(response, await this.uploads.create(actor, found(actor.jobId), { length: body.length, meta: photoOf(body.meta) }));
    response.setHeader('Location', pathOf(api.state, { uploadId: state.id }));
    return state;
  }

  @Route(api.state)
  async state(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.state>, @Res({ passthrough: true }) response: Response) {
    return tell(response, await this.uploads.read(actor, found(actor.jobId), params.uploadId));
  }

  @Route(api.append)
  async append(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.append>, @Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<void> {
    tell(response, await this.uploads.append(actor, found(actor.jobId), params.uploadId, body.offset, request));
  }

  @Route(api.stop)
  stop(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.stop>): Promise<void> {
    return this.uploads.stop(actor, found(actor.jobId), params.uploadId);
  }
}
