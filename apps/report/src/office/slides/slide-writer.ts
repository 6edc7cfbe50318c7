import { createRequire } from 'node:module';
import type Library from 'pptxgenjs';

type Writer = typeof Library.default;

/**
 * The library's form for `import` is not marked as such, so that some loaders take it for something else: it is
 * required, and is the class itself or a module that holds it.
 */
const required: Writer | { readonly default: Writer } = createRequire(import.meta.url)('pptxgenjs');

/** Writes slides (Office Open XML). */
export const SlideWriter: Writer = 'default' in required ? required.default : required;
export type SlideFile = Library.default;
export type Slide = Library.default.Slide;
export type SlideText = Library.default.TextProps;
export type SlideTextOptions = Library.default.TextPropsOptions;
export type SlideTableCell = Library.default.TableCell;
export type SlideBorder = Library.default.BorderProps;
