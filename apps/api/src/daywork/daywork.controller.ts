import { Controller } from '@nestjs/common';
import { daywork as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { DayworkService } from './daywork.service.ts';

@Controller()
export class DayworkController {
  private readonly daywork: DayworkService;

  constructor(daywork: DayworkService) {
    this.daywork = daywork;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.daywork.list(actor, params.jobId);
  }

  @Route(api.record)
  record(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.record>) {
    return this.daywork.record(actor, params.jobId, body.entries);
  }
}
