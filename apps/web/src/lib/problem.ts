import { Problem, type ErrorCode } from '@yardfall/contracts';

export type ApiProblemCode = ErrorCode | 'offline' | 'unreadableAnswer' | 'phone.full';
type ProblemParams = Problem['params'];

/** What the office answered instead of the thing asked for, or that it could not be reached. */
export class ApiProblem extends Error {
  readonly code: ApiProblemCode;
  readonly status: number;
  readonly params: ProblemParams;
  readonly issues: Problem['issues'];
  readonly requestId: string;

  constructor(code: ApiProblemCode, details: Partial<Pick<Problem, 'status' | 'params' | 'issues' | 'requestId' | 'detail'>> = {}) {
    super(details.detail ?? code);
    this.name = 'ApiProblem';
    this.code = code;
    this.status = details.status ?? 0;
    this.params = details.params ?? {};
    this.issues = details.issues ?? [];
    this.requestId = details.requestId ?? '';
  }

  /** Worth asking again without a change: the office was busy or out of reach. */
  get passing(): boolean {
    return this.code === 'offline' || this.code === 'busy' || this.code === 'idempotency.inFlight';
  }
}

export async function problemOf(response: Response): Promise<ApiProblem> {
  const requestId = response.headers.get('x-request-id') ?? '';
  const body = await response.text();
  const parsed = Problem.safeParse(parseJson(body));
  if (parsed.success) return new ApiProblem(parsed.data.code, parsed.data);
  return new ApiProblem(response.status === 503 || response.status === 502 ? 'busy' : 'unreadableAnswer', { status: response.status, requestId });
}

function parseJson(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    return null;
  }
}
