import { Controller } from '@nestjs/common';
import { found as api, type InputOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { FoundService } from './found.service.ts';
import { ReportsService } from './reports.service.ts';

@Controller()
export class FoundController {
  private readonly found: FoundService;
  private readonly reports: ReportsService;

  constructor(found: FoundService, reports: ReportsService) {
    this.found = found;
    this.reports = reports;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.found.list(actor, params.jobId);
  }

  @Route(api.report)
  report(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.report>) {
    return this.reports.report(actor, params.jobId, body);
  }

  @Route(api.amend)
  amend(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.amend>) {
    return this.reports.amend(actor, params.jobId, params.reportId, body);
  }

  @Route(api.draft)
  draft(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.draft>) {
    return this.found.openDraft(actor, params.jobId, params.reportId);
  }

  @Route(api.answer)
  answer(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.answer>) {
    return this.found.answer(actor, params.jobId, params.reportId, body.answer);
  }
}
