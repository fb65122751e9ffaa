import { Module } from '@nestjs/common';
import { ProofModule } from '../proof/proof.module.ts';
import { HandoverController } from './handover.controller.ts';
import { HandoverService } from './handover.service.ts';

@Module({ imports: [ProofModule], controllers: [HandoverController], providers: [HandoverService], exports: [HandoverService] })
export class HandoverModule {}
