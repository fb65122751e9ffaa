import { Controller } from '@nestjs/common';
import { audit as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { AuditService } from './audit.service.ts';

@Controller()
export class AuditController {
  private readonly trail: AuditService;

  constructor(trail: AuditService) {
    this.trail = trail;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() input: InputOf<typeof api.list>) {
    return this.trail.list(actor, input.query);
  }

  @Route(api.verify)
  verify(@Who() actor: Actor) {
    return this.trail.verify(actor);
  }
}
