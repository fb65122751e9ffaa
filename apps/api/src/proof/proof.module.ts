import { Module } from '@nestjs/common';
import { ProofController } from './proof.controller.ts';
import { ProofService } from './proof.service.ts';

@Module({ controllers: [ProofController], providers: [ProofService], exports: [ProofService] })
export class ProofModule {}
