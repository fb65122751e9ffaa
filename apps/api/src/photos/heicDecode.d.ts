declare module 'heic-decode' {
  /** RGBA, four bytes for each pixel. */
  export default function decode(input: { readonly buffer: Uint8Array }): Promise<{ width: number; height: number; data: Uint8ClampedArray<ArrayBuffer> }>;
}
