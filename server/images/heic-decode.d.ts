declare module 'heic-decode' {
  interface Decoded {
    readonly width: number;
    readonly height: number;
    /** Red, green, blue, alpha. */
    readonly data: Uint8ClampedArray;
  }
  export default function decode(file: { buffer: Uint8Array }): Promise<Decoded>;
}
