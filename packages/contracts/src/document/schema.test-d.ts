import type { DesignDocument } from '@yardfall/calc';
import type { z } from 'zod';
import type { DesignDocumentSchema } from './schema.ts';

/** Proves at compile time that what the schema accepts and what the engine takes are the same type, both ways. */
type Mutable<T> = T extends object ? { -readonly [K in keyof T]: Mutable<T[K]> } : T;
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;

type FromSchema = Mutable<z.infer<typeof DesignDocumentSchema>>;
type FromEngine = Mutable<DesignDocument>;
export const sameForward: FromEngine extends FromSchema ? true : false = true;
export const sameBackward: FromSchema extends FromEngine ? true : false = true;
export const sameKeys: Same<keyof FromSchema, keyof FromEngine> = true;
