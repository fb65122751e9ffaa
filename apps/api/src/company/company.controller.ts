import { Controller } from '@nestjs/common';
import { company as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { CompanyService } from './company.service.ts';

@Controller()
export class CompanyController {
  private readonly company: CompanyService;

  constructor(company: CompanyService) {
    this.company = company;
  }

  @Route(api.read)
  read(@Who() actor: Actor) {
    return this.company.read(actor);
  }

  @Route(api.update)
  update(@Who() actor: Actor, @Input() input: InputOf<typeof api.update>) {
    return this.company.update(actor, input.body);
  }
}
