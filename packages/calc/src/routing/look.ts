/** What is found at the levels of one moment. */
export class Look {
  /** Flow of each way [m3/s], and its slopes against the level that it leaves and that it enters [m2/s]. */
  readonly flows: Float64Array;
  readonly byFrom: Float64Array;
  readonly byTo: Float64Array;
  /** What each store gives by all of its ways [m3/s], and how that answers to the level of each [m2/s]. */
  readonly out: Float64Array;
  readonly answers: Float64Array;
  /** Volume [m3] and area [m2] of each store. */
  readonly volumes: Float64Array;
  readonly areas: Float64Array;

  constructor(stores: number, ways: number) {
    const numbers = (length: number): Float64Array => new Float64Array(length);
    this.flows = numbers(ways);
    this.byFrom = numbers(ways);
    this.byTo = numbers(ways);
    this.out = numbers(stores);
    this.answers = numbers(stores * stores);
    this.volumes = numbers(stores);
    this.areas = numbers(stores);
  }

  copy(from: Look): void {
    for (let k = 0; k < this.flows.length; k += 1) {
      this.flows[k] = from.flows[k]!;
      this.byFrom[k] = from.byFrom[k]!;
      this.byTo[k] = from.byTo[k]!;
    }
    for (let i = 0; i < this.out.length; i += 1) {
      this.out[i] = from.out[i]!;
      this.volumes[i] = from.volumes[i]!;
      this.areas[i] = from.areas[i]!;
    }
    for (let i = 0; i < this.answers.length; i += 1) this.answers[i] = from.answers[i]!;
  }
}
