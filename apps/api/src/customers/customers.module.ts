import { Module } from '@nestjs/common';
import { CustomersService } from './customers.service.ts';

@Module({ providers: [CustomersService], exports: [CustomersService] })
export class CustomersModule {}
