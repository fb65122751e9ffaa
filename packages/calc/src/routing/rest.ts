import { linkFlow } from './linkFlow.ts';
import type { Network } from './network.ts';
import type { RunMode } from './run.ts';

/**
 * Tells whether a step of a twin changes nothing: every low spot dry, every basin at its threshold,
 * the grates take what comes and the pump passes it on. Such a step needs no solving.
 */
export class RestTest {
  /** What each basin's pump passes on in the step that was last asked about [m3/s]. */
  readonly passing: Float64Array;
  private readonly network: Network;
  private readonly pondLimits: readonly number[];
  private readonly basinLimits: readonly number[];
  /** Basin that a low spot drains to, -1 for an outlet, -2 for several. */
  private readonly basinOfPond: readonly number[];

  constructor(network: Network, mode: RunMode) {
    const { ponds, basins, links } = network.model;
    const threshold = (basin: number): number => (mode === 'onTwin' ? basins[basin]!.onLevel : basins[basin]!.offLevel);
    this.network = network;
    this.passing = new Float64Array(basins.length);
    this.basinOfPond = ponds.map((_, index) => {
      const targets = [...new Set(links.filter((link) => link.pond === index).map((link) => link.basin))];
      return targets.length === 1 ? targets[0]! : -2;
    });
    this.pondLimits = ponds.map((pond, index) => {
      if (this.basinOfPond[index] === -2 || pond.loss > 0) return -1;
      const own = links.filter((link) => link.pond === index);
      return own.reduce((sum, link) => sum + linkFlow(link, pond.storage.bottom, link.basin < 0 ? -Infinity : threshold(link.basin)), 0);
    });
    this.basinLimits = basins.map((basin, index) => (basin.pump === null ? -1 : basin.pump.flow.flow(threshold(index))));
  }

  holds(): boolean {
    const { network, pondLimits, basinLimits, basinOfPond, passing } = this;
    for (let pond = 0; pond < pondLimits.length; pond += 1) {
      if (network.pondVolume[pond]! > 0 || network.pondInflow[pond]! > pondLimits[pond]!) return false;
    }
    for (let basin = 0; basin < basinLimits.length; basin += 1) {
      let into = network.basinInflow[basin]!;
      for (let pond = 0; pond < pondLimits.length; pond += 1) if (basinOfPond[pond] === basin) into += network.pondInflow[pond]!;
      const off = network.basinLevel[basin]! - network.pumpThreshold[basin]!;
      if (into > basinLimits[basin]! || off > 1e-9 || off < -1e-9) return false;
      passing[basin] = into;
    }
    return true;
  }
}
