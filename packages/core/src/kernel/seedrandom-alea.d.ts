declare module 'seedrandom/lib/alea.js' {
  interface AleaState {
    readonly c: number;
    readonly s0: number;
    readonly s1: number;
    readonly s2: number;
  }
  interface AleaGenerator {
    (): number;
    /** A multiple of 2^-32 in [0, 1). */
    quick: () => number;
    /** Only with the option `state`. */
    state: () => AleaState;
  }
  const alea: (seed: string, options?: { readonly state: boolean }) => AleaGenerator;
  export default alea;
}
