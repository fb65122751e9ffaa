import { Controller, StreamableFile } from '@nestjs/common';
import { type InputOf, portal as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { PhotosService } from '../photos/photos.service.ts';
import { AcceptanceService } from './acceptance.service.ts';
import { jobOf } from './job.ts';
import { PortalService } from './portal.service.ts';

@Controller()
export class PortalController {
  private readonly portal: PortalService;
  private readonly acceptance: AcceptanceService;
  private readonly photos: PhotosService;

  constructor(portal: PortalService, acceptance: AcceptanceService, photos: PhotosService) {
    this.portal = portal;
    this.acceptance = acceptance;
    this.photos = photos;
  }

  @Route(api.read)
  read(@Who() actor: Actor) {
    return this.portal.read(actor);
  }

  @Route(api.offerBytes)
  offerBytes(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.offerBytes>) {
    return this.portal.offerText(actor, params.offerId);
  }

  @Route(api.accept)
  accept(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.accept>) {
    return this.acceptance.accept(actor, params.offerId, body);
  }

  @Route(api.photo)
  async photo(@Who() actor: Actor, @Input() { params }: InputOf<typeof api.photo>) {
    const { open, mediaType, length } = await this.photos.file(actor, jobOf(actor), params.photoId, 'view');
    return new StreamableFile(open(), { type: mediaType, length });
  }
}
