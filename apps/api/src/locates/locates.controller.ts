import { Controller } from '@nestjs/common';
import { type InputOf, locates as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { LocatesService } from './locates.service.ts';

@Controller()
export class LocatesController {
  private readonly locates: LocatesService;

  constructor(locates: LocatesService) {
    this.locates = locates;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.locates.list(actor, params.jobId);
  }

  @Route(api.create)
  create(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.create>) {
    return this.locates.create(actor, params.jobId, body);
  }

  @Route(api.answer)
  answer(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.answer>) {
    return this.locates.answer(actor, params.jobId, params.ticketId, body);
  }

  @Route(api.close)
  close(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.close>) {
    return this.locates.close(actor, params.jobId, params.ticketId);
  }
}
