import { Injectable } from '@nestjs/common';

/** The only source of "now" in the services; tests and the demo give their own. */
@Injectable()
export class Clock {
  now(): Date {
    return new Date();
  }
}
