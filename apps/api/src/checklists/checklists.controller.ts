import { Controller } from '@nestjs/common';
import { checklists as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { AsBuiltService } from './asBuilt.service.ts';
import { ChecklistsService } from './checklists.service.ts';
import { FactsService } from './facts.service.ts';

@Controller()
export class ChecklistsController {
  private readonly checklists: ChecklistsService;
  private readonly facts: FactsService;
  private readonly built: AsBuiltService;

  constructor(checklists: ChecklistsService, facts: FactsService, built: AsBuiltService) {
    this.checklists = checklists;
    this.facts = facts;
    this.built = built;
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.checklists.read(actor, params.jobId);
  }

  @Route(api.asBuilt)
  asBuilt(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.asBuilt>) {
    return this.built.read(actor, params.jobId);
  }

  @Route(api.record)
  record(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.record>) {
    return this.facts.record(actor, params.jobId, body.facts, body.sentAt ?? null);
  }

  @Route(api.begin)
  begin(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.begin>) {
    return this.checklists.begin(actor, params.jobId, params.itemKey);
  }

  @Route(api.waive)
  waive(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.waive>) {
    return this.checklists.waive(actor, params.jobId, params.itemKey, body.reason);
  }
}
