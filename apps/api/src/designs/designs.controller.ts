import { Controller, StreamableFile } from '@nestjs/common';
import { designs as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { DesignsService } from './designs.service.ts';
import { DraftsService } from './drafts.service.ts';
import { EditsService } from './edits.service.ts';
import { IssueService } from './issue.service.ts';
import { PresenceService } from './presence.service.ts';
import { PrintService } from './print/print.service.ts';

@Controller()
export class DesignsController {
  private readonly designs: DesignsService;
  private readonly drafts: DraftsService;
  private readonly edits: EditsService;
  private readonly issues: IssueService;
  private readonly prints: PrintService;
  private readonly presences: PresenceService;

  constructor(designs: DesignsService, drafts: DraftsService, edits: EditsService, issues: IssueService, prints: PrintService, presences: PresenceService) {
    this.designs = designs;
    this.drafts = drafts;
    this.edits = edits;
    this.issues = issues;
    this.prints = prints;
    this.presences = presences;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.designs.list(actor, params.jobId);
  }

  @Route(api.create)
  create(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.create>) {
    return this.designs.create(actor, params.jobId, body);
  }

  @Route(api.revise)
  revise(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.revise>) {
    return this.designs.revise(actor, params.jobId, params.designId, body.fromRevisionId);
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.designs.read(actor, params.jobId, params.revisionId);
  }

  @Route(api.operate)
  operate(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.operate>) {
    return this.drafts.operate(actor, params.jobId, params.revisionId, body);
  }

  @Route(api.history)
  history(@Who() actor: Actor, @Input() { params, query }: InputOf<typeof api.history>) {
    return this.edits.list(actor, params.jobId, params.revisionId, query);
  }

  @Route(api.moment)
  moment(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.moment>) {
    return this.edits.moment(actor, params.jobId, params.revisionId, params.seq);
  }

  @Route(api.print)
  async print(@Who() actor: Actor, @Input() { params, query }: InputOf<typeof api.print>) {
    const { bytes, name } = await this.prints.print(actor, params.jobId, params.revisionId, query);
    return new StreamableFile(bytes, { type: 'application/pdf', length: bytes.length, disposition: `inline; filename="${name}"` });
  }

  @Route(api.presence)
  presence(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.presence>) {
    return this.presences.put(actor, params.jobId, params.revisionId, body);
  }

  @Route(api.acknowledge)
  acknowledge(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.acknowledge>) {
    return this.drafts.acknowledge(actor, params.jobId, params.revisionId, body);
  }

  @Route(api.issue)
  issue(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.issue>) {
    return this.issues.issue(actor, params.jobId, params.revisionId);
  }
}
