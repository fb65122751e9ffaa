import { Controller } from '@nestjs/common';
import { type InputOf, permits as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { PermitsService } from './permits.service.ts';

@Controller()
export class PermitsController {
  private readonly permits: PermitsService;

  constructor(permits: PermitsService) {
    this.permits = permits;
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.permits.read(actor, params.jobId);
  }

  @Route(api.answer)
  answer(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.answer>) {
    return this.permits.answer(actor, params.jobId, body);
  }

  @Route(api.answerOutlet)
  answerOutlet(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.answerOutlet>) {
    return this.permits.answerOutlet(actor, params.jobId, body);
  }
}
