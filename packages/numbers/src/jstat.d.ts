// jstat has no types of its own. Declared here is what this package takes from it and nothing else.
declare module 'jstat' {
  interface JStat {
    /** Inverse of the regularized lower incomplete gamma function. */
    gammapinv(probability: number, shape: number): number;
    /** Inverse of the regularized incomplete beta function. */
    ibetainv(probability: number, first: number, second: number): number;
    readonly studentt: { inv(probability: number, degreesOfFreedom: number): number };
  }
  const module: { readonly jStat: JStat };
  export = module;
}
