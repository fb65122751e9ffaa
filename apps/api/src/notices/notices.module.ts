import { Module } from '@nestjs/common';
import { Listener } from './listener.ts';
import { NoticesController } from './notices.controller.ts';
import { NoticesService } from './notices.service.ts';

@Module({ controllers: [NoticesController], providers: [Listener, NoticesService] })
export class NoticesModule {}
