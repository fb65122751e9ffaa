import { Controller } from '@nestjs/common';
import { type InputOf, privateLines as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { PrivateLinesService } from './privateLines.service.ts';

@Controller()
export class PrivateLinesController {
  private readonly lines: PrivateLinesService;

  constructor(lines: PrivateLinesService) {
    this.lines = lines;
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.lines.read(actor, params.jobId);
  }

  @Route(api.declare)
  declare(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.declare>) {
    return this.lines.declare(actor, params.jobId, body);
  }
}
