import { Controller } from '@nestjs/common';
import { evaluation as api, type InputOf } from '@yardfall/contracts';
import { Input, Route } from '../common/route.ts';
import { EvaluateService } from './evaluate.service.ts';

@Controller()
export class EvaluateController {
  private readonly evaluations: EvaluateService;

  constructor(evaluations: EvaluateService) {
    this.evaluations = evaluations;
  }

  @Route(api.evaluate)
  evaluate(@Input() input: InputOf<typeof api.evaluate>) {
    return this.evaluations.run(input.body.document);
  }
}
