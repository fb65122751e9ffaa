import { Controller, Res } from '@nestjs/common';
import { identity as api, type InputOf } from '@yardfall/contracts';
import type { Response } from 'express';
import type { Actor, RequestInfo } from '../common/actor.ts';
import { Caller, Input, Route, Who } from '../common/route.ts';
import { admit } from './admit.ts';
import { DevicesService } from './devices.service.ts';
import { LinksService } from './links.service.ts';
import { MembersService } from './members.service.ts';
import { SetUpService } from './setUp.service.ts';

@Controller()
export class IdentityController {
  private readonly members: MembersService;
  private readonly links: LinksService;
  private readonly devices: DevicesService;
  private readonly setUps: SetUpService;

  constructor(members: MembersService, links: LinksService, devices: DevicesService, setUps: SetUpService) {
    this.members = members;
    this.links = links;
    this.devices = devices;
    this.setUps = setUps;
  }

  @Route(api.setUp)
  async setUp(@Caller() caller: RequestInfo, @Input() input: InputOf<typeof api.setUp>, @Res({ passthrough: true }) response: Response) {
    return admit(response, caller, await this.setUps.setUp(caller, input.body));
  }

  @Route(api.members)
  list(@Who() actor: Actor) {
    return this.members.list(actor);
  }

  @Route(api.invite)
  invite(@Who() actor: Actor, @Input() input: InputOf<typeof api.invite>) {
    return this.members.invite(actor, input.body);
  }

  @Route(api.updateMember)
  updateMember(@Who() actor: Actor, @Input() input: InputOf<typeof api.updateMember>) {
    return this.members.update(actor, input.params.memberId, input.body);
  }

  @Route(api.redeemInvitation)
  async redeem(@Caller() caller: RequestInfo, @Input() input: InputOf<typeof api.redeemInvitation>, @Res({ passthrough: true }) response: Response) {
    return admit(response, caller, await this.links.redeemInvitation(caller, input.body.token, input.body.password));
  }

  @Route(api.customerLink)
  customerLink(@Who() actor: Actor, @Input() input: InputOf<typeof api.customerLink>) {
    return this.links.customerLink(actor, input.params.jobId);
  }

  @Route(api.openCustomerLink)
  async openCustomerLink(@Caller() caller: RequestInfo, @Input() input: InputOf<typeof api.openCustomerLink>, @Res({ passthrough: true }) response: Response) {
    return admit(response, caller, await this.links.openCustomerLink(caller, input.body.token));
  }

  @Route(api.registerDevice)
  registerDevice(@Who() actor: Actor, @Input() input: InputOf<typeof api.registerDevice>) {
    return this.devices.register(actor, input.body.id, input.body.name);
  }

  @Route(api.phones)
  phones(@Who() actor: Actor) {
    return this.devices.signedIn(actor);
  }

  @Route(api.cutOffPhone)
  cutOffPhone(@Who() actor: Actor, @Input() input: InputOf<typeof api.cutOffPhone>) {
    return this.devices.cutOffSession(actor, input.params.sessionId);
  }

  @Route(api.cutOffDevice)
  cutOffDevice(@Who() actor: Actor, @Input() input: InputOf<typeof api.cutOffDevice>) {
    return this.devices.cutOff(actor, input.params.deviceId);
  }
}
