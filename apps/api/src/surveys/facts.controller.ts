import { Controller } from '@nestjs/common';
import { type InputOf, surveyFacts as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { SurveyFactsService } from './facts.service.ts';

@Controller()
export class SurveyFactsController {
  private readonly facts: SurveyFactsService;

  constructor(facts: SurveyFactsService) {
    this.facts = facts;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.facts.list(actor, params.jobId);
  }

  @Route(api.record)
  record(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.record>) {
    return this.facts.record(actor, params.jobId, body.facts);
  }
}
