declare module 'seedrandom/lib/alea.js' {
  interface AleaGenerator {
    (): number;
    /** A multiple of 2^-32 in [0, 1). */
    quick: () => number;
  }
  const alea: (seed: string) => AleaGenerator;
  export default alea;
}
