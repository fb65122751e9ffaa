import { Controller } from '@nestjs/common';
import { type InputOf, jobs as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { JobsService } from './jobs.service.ts';
import { ReferralService } from './referral.service.ts';
import { ReleaseService } from './release.service.ts';

@Controller()
export class JobsController {
  private readonly jobs: JobsService;
  private readonly releases: ReleaseService;
  private readonly referrals: ReferralService;

  constructor(jobs: JobsService, releases: ReleaseService, referrals: ReferralService) {
    this.jobs = jobs;
    this.releases = releases;
    this.referrals = referrals;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { query }: InputOf<typeof api.list>) {
    return this.jobs.list(actor, query);
  }

  @Route(api.create)
  create(@Who() actor: Actor, @Input() { body }: InputOf<typeof api.create>) {
    return this.jobs.create(actor, body);
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.jobs.read(actor, params.jobId);
  }

  @Route(api.update)
  update(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.update>) {
    return this.jobs.update(actor, params.jobId, body);
  }

  @Route(api.assign)
  assign(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.assign>) {
    return this.jobs.assign(actor, params.jobId, body);
  }

  @Route(api.moveStage)
  moveStage(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.moveStage>) {
    return this.jobs.moveStage(actor, params.jobId, body);
  }

  @Route(api.releaseCheck)
  releaseCheck(@Who() actor: Actor, @Input() { params, query }: InputOf<typeof api.releaseCheck>) {
    return this.releases.check(actor, params.jobId, query.offerId);
  }

  @Route(api.release)
  release(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.release>) {
    return this.releases.release(actor, params.jobId, body.offerId);
  }

  @Route(api.referralLetter)
  referralLetter(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.referralLetter>) {
    return this.referrals.read(actor, params.jobId);
  }
}
