import { CalcProblem } from '../common/problem.ts';
import { atan } from '../math/atan.ts';
import { PI } from '../math/constants.ts';
import { cos, sin } from '../math/trig.ts';

/** Mean radius of the earth [m]. Source: IUGG, from memory. */
const EARTH_RADIUS = 6_371_008.8;

export interface Place {
  /** Degrees, north and east positive. */
  readonly latitude: number;
  readonly longitude: number;
}

function check(place: Place, path: string): void {
  const good = Math.abs(place.latitude) <= 90 && Math.abs(place.longitude) <= 360;
  if (!good) throw new CalcProblem('record.place', path, { latitude: String(place.latitude), longitude: String(place.longitude) });
}

/**
 * Distance between a gauge and a site along the ground [m], on a sphere.
 *
 *   h = sin^2(dlat/2) + cos(lat1) cos(lat2) sin^2(dlon/2);  d = 2 R atan(sqrt(h/(1 - h)))
 *
 * Limits: within 0.6 % of the true figure of the earth
 * Source: haversine form of spherical geometry
 * Checked against: one degree of a meridian, R*pi/180
 */
export function gaugeDistance(gauge: Place, site: Place): number {
  check(gauge, 'gauge');
  check(site, 'site');
  const radians = PI / 180;
  const north = sin(((site.latitude - gauge.latitude) * radians) / 2);
  const east = sin(((site.longitude - gauge.longitude) * radians) / 2);
  const h = Math.min(1, north * north + cos(site.latitude * radians) * cos(gauge.latitude * radians) * east * east);
  return 2 * EARTH_RADIUS * atan(Math.sqrt(h / (1 - h)));
}
