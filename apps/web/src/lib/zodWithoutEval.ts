/**
 * The content policy forbids code made from strings; this tells zod not to try.
 * It must be the first import of the page and of every worker, because zod reads it when schemas are made.
 */
const shared = globalThis as typeof globalThis & { __zod_globalConfig?: { jitless?: boolean } };
shared.__zod_globalConfig = { ...shared.__zod_globalConfig, jitless: true };

export {};
