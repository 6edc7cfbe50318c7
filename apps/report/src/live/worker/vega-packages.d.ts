// Parts of vega that have no types of their own; of them only what `vega.ts` hands on.

declare module 'vega-dataflow' {
  export const transforms: Record<string, unknown>;
}

declare module 'vega-encode';
declare module 'vega-transforms';
declare module 'vega-view-transforms';
declare module 'vega-parser';
declare module 'vega-scenegraph';
declare module 'vega-view';
