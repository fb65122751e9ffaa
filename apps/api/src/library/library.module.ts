import { Module } from '@nestjs/common';
import { LibraryController } from './library.controller.ts';
import { LibraryService } from './library.service.ts';

@Module({ controllers: [LibraryController], providers: [LibraryService], exports: [LibraryService] })
export class LibraryModule {}
