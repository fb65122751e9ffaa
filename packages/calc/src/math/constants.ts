export const PI = 3.141592653589793;
