import type { LocateTicket } from '@yardfall/contracts';

export type Response = LocateTicket['responses'][number];

/** The latest answer of each utility, in the order in which they stand on the ticket. */
export function latestAnswers({ responses }: Pick<LocateTicket, 'responses'>): readonly Response[] {
  return [...new Map(responses.map((response) => [response.utility, response])).values()];
}

/** Names as typed, one a line or with commas between, each once. */
export function namesIn(typed: string): string[] {
  return [...new Set(typed.split(/[\n,;]/).map((name) => name.trim()).filter(Boolean))];
}
