import { Module } from '@nestjs/common';
import { CopiesService } from './copies.service.ts';
import { PhotosController } from './photos.controller.ts';
import { PhotosService } from './photos.service.ts';
import { PhotoStore } from './photoStore.ts';

@Module({ controllers: [PhotosController], providers: [PhotosService, CopiesService, PhotoStore], exports: [PhotosService] })
export class PhotosModule {}
