import { Controller } from '@nestjs/common';
import { type InputOf, offers as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { OffersService } from './offers.service.ts';

@Controller()
export class OffersController {
  private readonly offers: OffersService;

  constructor(offers: OffersService) {
    this.offers = offers;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.offers.list(actor, params.jobId);
  }

  @Route(api.create)
  create(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.create>) {
    return this.offers.create(actor, params.jobId, body);
  }

  @Route(api.send)
  send(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.send>) {
    return this.offers.send(actor, params.jobId, params.offerId);
  }

  @Route(api.withdraw)
  withdraw(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.withdraw>) {
    return this.offers.withdraw(actor, params.jobId, params.offerId);
  }
}
