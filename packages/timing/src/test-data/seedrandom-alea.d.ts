declare module 'seedrandom/lib/alea' {
  function alea(seed: string): () => number;
  export = alea;
}
