import { Controller } from '@nestjs/common';
import { type InputOf, locates as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { LocatesService } from './locates.service.ts';
import { TicketLifeService } from './ticketLife.service.ts';

@Controller()
export class LocatesController {
  private readonly locates: LocatesService;
  private readonly life: TicketLifeService;

  constructor(locates: LocatesService, life: TicketLifeService) {
    this.locates = locates;
    this.life = life;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.locates.list(actor, params.jobId);
  }

  @Route(api.create)
  create(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.create>) {
    return this.locates.create(actor, params.jobId, body);
  }

  @Route(api.prepare)
  prepare(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.prepare>) {
    return this.locates.prepare(actor, params.jobId, body);
  }

  @Route(api.submit)
  submit(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.submit>) {
    return this.locates.submit(actor, params.jobId, params.ticketId, body);
  }

  @Route(api.give)
  give(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.give>) {
    return this.life.give(actor, params.jobId, params.ticketId, body);
  }

  @Route(api.event)
  event(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.event>) {
    return this.life.event(actor, params.jobId, params.ticketId, body);
  }

  @Route(api.answer)
  answer(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.answer>) {
    return this.life.answer(actor, params.jobId, params.ticketId, body);
  }

  @Route(api.close)
  close(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.close>) {
    return this.life.close(actor, params.jobId, params.ticketId);
  }
}
