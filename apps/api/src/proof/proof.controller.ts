import { Controller } from '@nestjs/common';
import { type InputOf, proof as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { ProofService } from './proof.service.ts';

@Controller()
export class ProofController {
  private readonly proof: ProofService;

  constructor(proof: ProofService) {
    this.proof = proof;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.proof.list(actor, params.jobId);
  }

  @Route(api.record)
  record(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.record>) {
    return this.proof.record(actor, params.jobId, body);
  }
}
