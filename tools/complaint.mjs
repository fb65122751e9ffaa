// @ts-check
/** Something that the person at the keyboard can mend: shown as one sentence, without a stack. */
export class Complaint extends Error {
  /** @param {string} sentence @param {ErrorOptions} [options] */
  constructor(sentence, options) {
    super(sentence, options);
    this.name = 'Complaint';
  }
}

/** @param {unknown} error @returns {string | undefined} the system's error code, such as ENOENT */
export function codeOf(error) {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}

/** @param {unknown} error @returns {string} */
export function messageOf(error) {
  if (error instanceof AggregateError && !error.message) return error.errors.map(messageOf).join('; ');
  return error instanceof Error ? error.message : String(error);
}

/** @param {string} [where] */
export function diskFull(where) {
  return new Complaint(`The disk${where ? ` that holds ${where}` : ''} is full: free some room and start again.`);
}

/** @param {unknown} error @returns {unknown} the same error, or the sentence for it */
export function asComplaint(error) {
  if (error instanceof Complaint) return error;
  if (codeOf(error) === 'ENOSPC' || /No space left on device|ENOSPC/.test(messageOf(error))) return diskFull();
  return error;
}

/**
 * Runs a command's body; a complaint ends it with its sentence, anything else with the stack.
 * @param {() => Promise<number | void>} body
 */
export async function run(body) {
  try {
    process.exitCode = (await body()) ?? process.exitCode ?? 0;
  } catch (thrown) {
    const error = asComplaint(thrown);
    console.error(error instanceof Complaint ? `\n${error.message}` : error);
    process.exitCode = 1;
  }
}
