import { Module } from '@nestjs/common';
import { IdentityModule } from '../identity/identity.module.ts';
import { PhotosModule } from '../photos/photos.module.ts';
import { SendingController } from './sending.controller.ts';
import { SendingService } from './sending.service.ts';

@Module({ imports: [IdentityModule, PhotosModule], controllers: [SendingController], providers: [SendingService] })
export class SendingModule {}
