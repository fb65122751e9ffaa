import { Controller } from '@nestjs/common';
import { type InputOf, library as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Input, Route, Who } from '../common/route.ts';
import { LibraryService } from './library.service.ts';

@Controller()
export class LibraryController {
  private readonly library: LibraryService;

  constructor(library: LibraryService) {
    this.library = library;
  }

  @Route(api.list)
  list(@Who() actor: Actor) {
    return this.library.list(actor);
  }

  @Route(api.add)
  add(@Who() actor: Actor, @Input() { body }: InputOf<typeof api.add>) {
    return this.library.add(actor, body);
  }

  @Route(api.change)
  change(@Who() actor: Actor, @Input() { params, body }: InputOf<typeof api.change>) {
    return this.library.change(actor, params.entryId, body);
  }

  @Route(api.import)
  import(@Who() actor: Actor, @Input() { body }: InputOf<typeof api.import>) {
    return this.library.import(actor, body.entries);
  }
}
