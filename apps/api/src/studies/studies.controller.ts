import { Controller } from '@nestjs/common';
import { type InputOf, studies as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { UploadedFile } from '../common/request.ts';
import { File, Input, Route, Who } from '../common/route.ts';
import { RecordsService } from './records.service.ts';
import { StudiesService } from './studies.service.ts';

@Controller()
export class StudiesController {
  private readonly studies: StudiesService;
  private readonly rainRecords: RecordsService;

  constructor(studies: StudiesService, rainRecords: RecordsService) {
    this.studies = studies;
    this.rainRecords = rainRecords;
  }

  @Route(api.records)
  records(@Who() actor: Actor) {
    return this.rainRecords.list(actor);
  }

  @Route(api.uploadRecord)
  uploadRecord(@Who() actor: Actor, @Input() { body }: InputOf<typeof api.uploadRecord>, @File() file: UploadedFile) {
    return this.rainRecords.upload(actor, body.name, file);
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.studies.list(actor, params.jobId, params.revisionId);
  }

  @Route(api.options)
  options(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.options>) {
    return this.studies.options(actor, params.jobId, params.revisionId, body);
  }

  @Route(api.record)
  record(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.record>) {
    return this.studies.record(actor, params.jobId, params.revisionId, body);
  }

  @Route(api.read)
  read(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.read>) {
    return this.studies.read(actor, params.jobId, params.studyId);
  }

  @Route(api.stop)
  stop(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.stop>) {
    return this.studies.stop(actor, params.jobId, params.studyId);
  }
}
