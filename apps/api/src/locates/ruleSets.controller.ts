import { Controller } from '@nestjs/common';
import { type InputOf, locateRuleSets as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { RuleSetsService } from './ruleSets.service.ts';

@Controller()
export class RuleSetsController {
  private readonly rules: RuleSetsService;

  constructor(rules: RuleSetsService) {
    this.rules = rules;
  }

  @Route(api.list)
  list(@Who() actor: Actor) {
    return this.rules.list(actor);
  }

  @Route(api.sign)
  sign(@Who() actor: Actor, @Input() { body }: InputOf<typeof api.sign>) {
    return this.rules.sign(actor, body);
  }
}
