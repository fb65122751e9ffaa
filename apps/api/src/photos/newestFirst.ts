interface Running {
  readonly stop: AbortController;
  readonly done: Promise<unknown>;
}

/** One at a time for each key, and the newest goes first: a phone that comes back must not wait for its own dead connection. */
export class NewestFirst {
  private readonly running = new Map<string, Running>();

  async run<T>(key: string, work: (stopped: AbortSignal) => Promise<T>): Promise<T> {
    for (let before = this.running.get(key); before !== undefined; before = this.running.get(key)) {
      before.stop.abort();
      await before.done;
    }
    const stop = new AbortController();
    const result = work(stop.signal);
    const own: Running = { stop, done: result.then(() => undefined, () => undefined) };
    this.running.set(key, own);
    try {
      return await result;
    } finally {
      if (this.running.get(key) === own) this.running.delete(key);
    }
  }
}
