/** A heap: the least item comes first. */
export class Queue<T> {
  readonly items: T[] = [];
  private readonly order: (a: T, b: T) => number;

  constructor(order: (a: T, b: T) => number) {
    this.order = order;
  }

  push(item: T): void {
    const { items } = this;
    items.push(item);
    let i = items.length - 1;
    while (i > 0) {
      const above = Math.floor((i - 1) / 2);
      if (this.order(items[above]!, items[i]!) <= 0) return;
      [items[above], items[i]] = [items[i]!, items[above]!];
      i = above;
    }
  }

  pop(): T | undefined {
    const { items } = this;
    const first = items[0];
    const last = items.pop();
    if (first === undefined || last === undefined || items.length === 0) return first;
    items[0] = last;
    this.sink();
    return first;
  }

  private sink(): void {
    const { items } = this;
    let i = 0;
    for (;;) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2]) if (child < items.length && this.order(items[child]!, items[least]!) < 0) least = child;
      if (least === i) return;
      [items[least], items[i]] = [items[i]!, items[least]!];
      i = least;
    }
  }
}
