import { Module } from '@nestjs/common';
import { CustomersModule } from '../customers/customers.module.ts';
import { PhotosModule } from '../photos/photos.module.ts';
import { AcceptanceService } from './acceptance.service.ts';
import { PortalController } from './portal.controller.ts';
import { PortalService } from './portal.service.ts';

@Module({ imports: [CustomersModule, PhotosModule], controllers: [PortalController], providers: [PortalService, AcceptanceService], exports: [PortalService, AcceptanceService] })
export class PortalModule {}
