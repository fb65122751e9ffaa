import { Controller } from '@nestjs/common';
import { handover as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { HandoverService } from './handover.service.ts';

@Controller()
export class HandoverController {
  private readonly handover: HandoverService;

  constructor(handover: HandoverService) {
    this.handover = handover;
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.handover.read(actor, params.jobId);
  }

  @Route(api.complete)
  complete(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.complete>) {
    return this.handover.complete(actor, params.jobId, body);
  }
}
