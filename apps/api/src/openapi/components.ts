import { z } from 'zod';

export type Json = Readonly<Record<string, unknown>>;
type Io = 'input' | 'output';

const local = '#/$defs/';
const shared = '#/components/schemas/';

/**
 * Zod schemas as JSON Schema 2020-12, the dialect of OpenAPI 3.1. Schemas with an id become components; one that differs
 * between what is sent and what is answered gets a second component with the ending Input.
 */
export class Components {
  private readonly found: Record<Io, Map<string, Json>> = { input: new Map(), output: new Map() };
  private readonly pending: { schema: Json; io: Io }[] = [];

  add(schema: z.ZodType, io: Io): Json {
    const { $schema: _dialect, $defs, ...own } = z.toJSONSchema(schema, { target: 'draft-2020-12', io, unrepresentable: 'any', reused: 'inline' }) as Json;
    for (const [name, definition] of Object.entries(($defs ?? {}) as Record<string, Json>)) this.found[io].set(name, definition);
    const id = schema.meta()?.id;
    const named = id === undefined ? own : { $ref: `${local}${id}` };
    if (id !== undefined) this.found[io].set(id, own);
    this.pending.push({ schema: named, io });
    return named;
  }

  /** Whatever was added, with its references pointing at components. */
  resolve(schema: unknown, io: Io): unknown {
    if (Array.isArray(schema)) return schema.map((entry) => this.resolve(entry, io));
    if (typeof schema !== 'object' || schema === null) return schema;
    return Object.fromEntries(Object.entries(schema).flatMap(([key, value]): [string, unknown][] => {
      if (key === '$ref' && typeof value === 'string' && value.startsWith(local)) return [['$ref', shared + this.nameOf(value.slice(local.length), io)]];
      return key === 'id' && typeof value === 'string' && this.found[io].has(value) ? [] : [[key, this.resolve(value, io)]];
    }));
  }

  all(): Json {
    const names: Record<string, unknown> = {};
    for (const io of ['output', 'input'] as const) {
      for (const [name, schema] of this.found[io]) names[this.nameOf(name, io)] = this.resolve(schema, io);
    }
    return Object.fromEntries(Object.entries(names).sort(([a], [b]) => (a < b ? -1 : 1)));
  }

  private nameOf(name: string, io: Io): string {
    if (io === 'output') return name;
    return this.differs(name, new Set()) ? `${name}Input` : name;
  }

  /** Also when something that it refers to differs. */
  private differs(name: string, seen: Set<string>): boolean {
    const [input, output] = [this.found.input.get(name), this.found.output.get(name)];
    if (input === undefined || output === undefined || seen.has(name)) return false;
    seen.add(name);
    if (JSON.stringify(input) !== JSON.stringify(output)) return true;
    return referencesOf(input).some((other) => this.differs(other, seen));
  }
}

function referencesOf(schema: unknown): string[] {
  if (Array.isArray(schema)) return schema.flatMap(referencesOf);
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) => (key === '$ref' && typeof value === 'string' && value.startsWith(local) ? [value.slice(local.length)] : referencesOf(value)));
}
