import { Controller } from '@nestjs/common';
import { type InputOf, rain as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { UploadedFile } from '../common/request.ts';
import { File, Input, Route, Who } from '../common/route.ts';
import { RainService } from './rain.service.ts';

@Controller()
export class RainController {
  private readonly rain: RainService;

  constructor(rain: RainService) {
    this.rain = rain;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.rain.list(actor, params.jobId);
  }

  @Route(api.upload)
  upload(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.upload>, @File() file: UploadedFile) {
    return this.rain.upload(actor, params.jobId, body, file);
  }

  @Route(api.type)
  type(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.type>) {
    return this.rain.type(actor, params.jobId, body);
  }

  @Route(api.storm)
  storm(@Who() actor: Actor, @Input() { params, query }: InputOf<typeof api.storm>) {
    return this.rain.storm(actor, params.jobId, params.tableId, query.returnPeriod);
  }
}
