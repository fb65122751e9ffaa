import type { Endpoint } from '@yardfall/contracts';
import type { Language } from '@yardfall/text';
import { z } from 'zod';
import { DomainError, type Issues } from './errors.ts';

type Part = 'params' | 'query' | 'body';
const nothing = z.strictObject({});
const sentences = { en: z.locales.en().localeError, es: z.locales.es().localeError };

/** The whole request against its contract: every bad field is named at once, in the reader's language. */
export function validate(endpoint: Endpoint, given: Record<Part, unknown>, language: Language): Record<Part, unknown> {
  const issues: { path: string; message: string }[] = [];
  const parsePart = (part: Part, schema: z.ZodType | null): unknown => {
    if (part === 'body' && schema === null) return undefined;
    const result = (schema ?? nothing).safeParse(given[part], { error: sentences[language] });
    if (result.success) return schema === null ? undefined : result.data;
    issues.push(...issuesOf(result.error, part));
    return undefined;
  };
  const parsed = { params: parsePart('params', endpoint.params), query: parsePart('query', endpoint.query), body: parsePart('body', endpoint.body) };
  if (issues.length > 0) throw new DomainError('request.invalid', {}, issues.slice(0, 50));
  return parsed;
}

function issuesOf(error: z.ZodError, part: Part): Issues {
  return error.issues.map((issue) => ({ path: [part, ...issue.path.map(String)].join('.'), message: issue.message }));
}
