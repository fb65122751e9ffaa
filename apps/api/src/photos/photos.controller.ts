import { Controller, Header, Req, Res } from '@nestjs/common';
import { type InputOf, photos as api } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import type { Actor } from '../common/actor.ts';
import type { UploadedFile } from '../common/request.ts';
import { File, Input, Route, Who } from '../common/route.ts';
import { AdditionsService } from './additions.service.ts';
import { fileAnswer } from './fileAnswer.ts';
import { PhotosService } from './photos.service.ts';

@Controller()
export class PhotosController {
  private readonly photos: PhotosService;
  private readonly additions: AdditionsService;

  constructor(photos: PhotosService, additions: AdditionsService) {
    this.photos = photos;
    this.additions = additions;
  }

  @Route(api.list)
  list(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.list>) {
    return this.photos.list(actor, params.jobId);
  }

  @Route(api.add)
  add(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.add>, @File() file: UploadedFile) {
    return this.photos.add(actor, params.jobId, body, file);
  }

  @Route(api.amend)
  amend(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.amend>) {
    return this.additions.amend(actor, params.jobId, params.photoId, body);
  }

  /** A copy never changes under its id, so the reader's own browser may keep it; nobody between may. */
  @Route(api.file)
  @Header('Cache-Control', 'private, max-age=31536000, immutable')
  async file(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.file>, @Req() request: Request, @Res({ passthrough: true }) response: Response) {
    return fileAnswer(request, response, await this.photos.file(actor, params.jobId, params.photoId, params.copy));
  }
}
