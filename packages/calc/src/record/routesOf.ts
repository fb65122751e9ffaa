import type { InflowTargets } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import { NetworkRoute } from './networkRoute.ts';
import type { Route, RouteBooks, RouteInflow } from './route.ts';
import { isOneSpot } from './oneSpot.ts';
import { SpotRoute } from './spotRoute.ts';
import type { Watch } from './watch.ts';

/** Low spots that have nothing to do with each other, each on its own. */
class SeveralRoutes implements Route {
  readonly watches: readonly Watch[];
  private readonly routes: readonly { readonly route: Route; readonly basins: readonly number[] }[];

  constructor(routes: readonly { readonly route: Route; readonly basins: readonly number[] }[]) {
    this.routes = routes;
    this.watches = routes.flatMap(({ route }) => route.watches);
  }

  get books(): RouteBooks {
    const sum = { inflow: 0, outflow: 0, solved: 0, closed: 0 };
    for (const { route: { books } } of this.routes) {
      sum.inflow += books.inflow;
      sum.outflow += books.outflow;
      sum.solved += books.solved;
      sum.closed += books.closed;
    }
    return sum;
  }

  run(inflow: RouteInflow, end: number): void {
    this.routes.forEach(({ route, basins }, pond) => {
      route.run({ ...inflow, ponds: [inflow.ponds[pond]!], basins: basins.map((basin) => inflow.basins[basin]!) }, end);
    });
  }

  standing(pond: number): number {
    return this.routes[pond]!.route.standing(0);
  }

  massError(): number {
    return this.routes.reduce((worst, { route }) => Math.max(worst, route.massError()), 0);
  }
}

/** Each low spot with its basin as a model of its own, or null when two of them meet somewhere. */
function apart(model: RoutingModel): { readonly model: RoutingModel; readonly basins: readonly number[] }[] | null {
  const taken = new Set<number>();
  const parts = model.ponds.map((store, pond) => {
    const links = model.links.filter((link) => link.pond === pond);
    const basins = [...new Set(links.map((link) => link.basin).filter((basin) => basin >= 0))];
    for (const basin of basins) {
      if (taken.has(basin)) return null;
      taken.add(basin);
    }
    const own = links.map((link) => ({ ...link, pond: 0, basin: link.basin < 0 ? -1 : basins.indexOf(link.basin) }));
    return { model: { ...model, ponds: [store], basins: basins.map((basin) => model.basins[basin]!), links: own }, basins };
  });
  const whole = parts.filter((part) => part !== null);
  if (whole.length < parts.length || taken.size < model.basins.length) return null;
  return whole.every((part) => isOneSpot(part.model)) ? whole : null;
}

/** The quickest route that carries a network: one low spot at a time where that is the same, the storm routing minute by minute elsewhere. */
export function recordRoute(model: RoutingModel, watches: readonly Watch[], ground: InflowTargets): Route {
  const parts = apart(model);
  if (parts === null) return new NetworkRoute(model, watches, ground);
  const routes = parts.map((part, pond) => ({
    route: new SpotRoute(part.model, watches[pond]!, part.basins.reduce((sum, basin) => sum + (ground.basins[basin] ?? 0), 0)), basins: part.basins,
  }));
  return routes.length === 1 ? routes[0]!.route : new SeveralRoutes(routes);
}
