import { Controller } from '@nestjs/common';
import { type InputOf, surveys as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { SurveysService } from './surveys.service.ts';

@Controller()
export class SurveysController {
  private readonly surveys: SurveysService;

  constructor(surveys: SurveysService) {
    this.surveys = surveys;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.surveys.list(actor, params.jobId);
  }

  @Route(api.create)
  create(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.create>) {
    return this.surveys.create(actor, params.jobId, body);
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.surveys.read(actor, params.jobId, params.surveyId);
  }

  @Route(api.replace)
  replace(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.replace>) {
    return this.surveys.replace(actor, params.jobId, params.surveyId, body);
  }
}
