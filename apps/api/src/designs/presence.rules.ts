/** Whoever was not heard of for this long is gone [ms]: two and a half of the beats that an open page sends. */
export const presenceLasts = 75_000;
