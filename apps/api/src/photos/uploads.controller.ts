import { Controller, Req, Res } from '@nestjs/common';
import { type InputOf, largestVideo, uploads as api, pathOf } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { tell } from './tusAnswer.ts';
import { UploadsService } from './uploads.service.ts';

@Controller()
export class UploadsController {
  private readonly uploads: UploadsService;

  constructor(uploads: UploadsService) {
    this.uploads = uploads;
  }

  @Route(api.capabilities)
  capabilities(@Res({ passthrough: true }) response: Response): void {
    response.setHeader('Tus-Max-Size', String(largestVideo));
  }

  @Route(api.create)
  async create(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.create>, @Res({ passthrough: true }) response: Response) {
    const state = tell(response, await this.uploads.create(actor, params.jobId, body));
    response.setHeader('Location', pathOf(api.read, { ...params, uploadId: state.id }));
    return state;
  }

  @Route(api.read)
  async read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>, @Res({ passthrough: true }) response: Response) {
    return tell(response, await this.uploads.read(actor, params.jobId, params.uploadId));
  }

  @Route(api.append)
  async append(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.append>, @Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<void> {
    tell(response, await this.uploads.append(actor, params.jobId, params.uploadId, body.offset, request));
  }

  @Route(api.stop)
  stop(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.stop>): Promise<void> {
    return this.uploads.stop(actor, params.jobId, params.uploadId);
  }
}
