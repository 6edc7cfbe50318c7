import { transforms } from 'vega-dataflow';
import * as encode from 'vega-encode';
import * as basic from 'vega-transforms';
import * as layout from 'vega-view-transforms';

// What stands for the library in the bundle of the workers: without maps, trees, forces and the like, which no chart of
// ours has, it is a third smaller.
Object.assign(transforms, basic, layout, encode);

export { parse } from 'vega-parser';
export { resetSVGDefIds, SVGStringRenderer, textMetrics } from 'vega-scenegraph';
export * from 'vega-util';
export { View } from 'vega-view';
