/** The list that the home asks for; what is asked ahead and what was kept stand under the same. */
export const openJobs = { open: 'true', limit: 100 } as const;
