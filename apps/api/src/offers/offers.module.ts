import { Module } from '@nestjs/common';
import { CustomersModule } from '../customers/customers.module.ts';
import { IdentityModule } from '../identity/identity.module.ts';
import { PricesModule } from '../prices/prices.module.ts';
import { OffersController } from './offers.controller.ts';
import { OffersService } from './offers.service.ts';

@Module({ imports: [PricesModule, CustomersModule, IdentityModule], controllers: [OffersController], providers: [OffersService], exports: [OffersService] })
export class OffersModule {}
