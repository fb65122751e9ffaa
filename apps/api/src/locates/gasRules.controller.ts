import { Controller } from '@nestjs/common';
import { gasRules as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { GasRulesService } from './gasRules.service.ts';

@Controller()
export class GasRulesController {
  private readonly rules: GasRulesService;

  constructor(rules: GasRulesService) {
    this.rules = rules;
  }

  @Route(api.list)
  list(@Who() actor: Actor) {
    return this.rules.list(actor);
  }

  @Route(api.enter)
  enter(@Who() actor: Actor, @Input() { body }: InputOf<typeof api.enter>) {
    return this.rules.enter(actor, body);
  }
}
