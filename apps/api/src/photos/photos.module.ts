import { Module } from '@nestjs/common';
import { AdditionsService } from './additions.service.ts';
import { CopiesService } from './copies.service.ts';
import { PhotosController } from './photos.controller.ts';
import { PhotosService } from './photos.service.ts';
import { HeicPool } from './heic.pool.ts';
import { PartStore } from './partStore.ts';
import { PhotoStore } from './photoStore.ts';
import { UploadsController } from './uploads.controller.ts';
import { UploadsService } from './uploads.service.ts';
import { UploadSweep } from './uploadSweep.ts';

@Module({ controllers: [PhotosController, UploadsController], providers: [PhotosService, AdditionsService, CopiesService, PhotoStore, HeicPool, PartStore, UploadsService, UploadSweep], exports: [PhotosService, UploadsService] })
export class PhotosModule {}
