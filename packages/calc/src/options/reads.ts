import type { DesignDocument, Part } from '../document/document.ts';
import type { Digits, OptionSpace } from './space.ts';

/** Notes which choices a computation reads. Computations stand within each other: what an inner one reads, the outer ones have read too. */
export class Reads {
  private readonly open: number[][] = [];

  note(choice: number): void {
    for (const list of this.open) if (!list.includes(choice)) list.push(choice);
  }

  /** Runs a computation; its choices come in the order in which it first asked for them. */
  during<T>(run: () => T): { readonly value: T; readonly read: readonly number[] } {
    const read: number[] = [];
    this.open.push(read);
    try {
      return { value: run(), read };
    } finally {
      this.open.pop();
    }
  }
}

type Node<T> = { readonly choice: number; readonly next: (Node<T> | undefined)[] } | { readonly value: T };

/**
 * A value that follows from the digits of a combination, computed once for each of the choices that it reads and no other.
 * A computation that is told the same digits asks for the same choice next, so what it reads is a tree: at each node a choice, below it one
 * branch for each digit. Values are finished data: one that still reads from the document later would read the digits of another combination.
 */
export class Memo<T> {
  /** How often it was computed. */
  size = 0;
  private root: Node<T> | undefined;
  private readonly reads: Reads;
  private readonly make: (digits: Digits) => T;

  constructor(reads: Reads, make: (digits: Digits) => T) {
    this.reads = reads;
    this.make = make;
  }

  get(digits: Digits): T {
    let node = this.root;
    while (node !== undefined && 'choice' in node) {
      this.reads.note(node.choice);
      node = node.next[digits[node.choice]!];
    }
    return node === undefined ? this.add(digits) : node.value;
  }

  /** The value when it reads none of the open choices; `open` gives the first of those that it does read. */
  among(digits: Digits, open: readonly boolean[]): { readonly value: T } | { readonly open: number } {
    this.get(digits);
    let node = this.root!;
    while ('choice' in node) {
      if (open[node.choice] === true) return { open: node.choice };
      node = node.next[digits[node.choice]!]!;
    }
    return node;
  }

  private add(digits: Digits): T {
    const { value, read } = this.reads.during(() => this.make(digits));
    this.size += 1;
    let below: Node<T> = { value };
    // From the last choice up to the root, as far as no node stands there yet.
    const path: (Node<T> | undefined)[] = [];
    let node = this.root;
    for (const choice of read) {
      path.push(node);
      node = node !== undefined && 'choice' in node ? node.next[digits[choice]!] : undefined;
    }
    for (let i = read.length - 1; i >= 0; i -= 1) {
      const choice = read[i]!;
      const before = path[i];
      const next: (Node<T> | undefined)[] = before !== undefined && 'choice' in before ? before.next : [];
      next[digits[choice]!] = below;
      below = before ?? { choice, next };
    }
    this.root = below;
    return value;
  }
}

/**
 * Documents of combinations, which note every choice whose work is read: a field that alternatives set, where a catchment drains to,
 * and, with the list of parts, every choice that adds or removes one. All else is the same in every combination.
 * Nothing may be kept beside such a document from one computation to the next: it would be used again without being read.
 */
export class ReadDocuments {
  private readonly space: OptionSpace;
  private readonly reads: Reads;
  private last: { readonly digits: Digits; readonly document: DesignDocument } | null = null;

  constructor(space: OptionSpace, reads: Reads) {
    this.space = space;
    this.reads = reads;
  }

  of(digits: Digits): DesignDocument {
    if (this.last?.digits !== digits) this.last = { digits, document: this.make(digits) };
    return this.last.document;
  }

  private make(digits: Digits): DesignDocument {
    const document = this.space.documentOf(digits);
    const { sets, drains, lists } = this.space.touches;
    const parts = document.system.parts.map((part): Part => {
      const fields = sets.get(part.id);
      if (fields === undefined) return part;
      const copy = { ...part };
      for (const [field, choices] of fields) this.define(copy, field, (part as unknown as Record<string, unknown>)[field], choices);
      return copy;
    });
    const catchments = document.site.catchments.map((catchment) => {
      const choices = drains.get(catchment.id);
      return choices === undefined ? catchment : this.define({ ...catchment }, 'drainsTo', catchment.drainsTo, choices);
    });
    return { ...document, site: { ...document.site, catchments }, system: this.define({ ...document.system }, 'parts', parts, lists) };
  }

  private define<T extends object>(target: T, key: string, value: unknown, choices: readonly number[]): T {
    const get = (): unknown => {
      for (const choice of choices) this.reads.note(choice);
      return value;
    };
    return Object.defineProperty(target, key, { enumerable: true, configurable: true, get });
  }
}
